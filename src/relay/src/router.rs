//! Which request gets which answer.

use crate::answer;
use crate::app::{App, PAGE};
use crate::carry::Carrying;
use crate::kind::is_page;
use crate::paths;
use axum::Router;
use axum::extract::State;
use axum::http::header::{ALLOW, CACHE_CONTROL, CONTENT_TYPE};
use axum::http::{HeaderMap, Method, StatusCode, Uri};
use axum::middleware::map_response_with_state;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use std::sync::Arc;

/// The whole relay: its own address under `/relay/`, the app under everything else. Without anything to carry with it
/// serves the app alone.
pub fn router(app: App, carrying: Option<Carrying>) -> Router {
    let app = Arc::new(app);
    let served = Router::new()
        .route(paths::HEALTH, get(health))
        .route(paths::OPENAPI, get(openapi))
        .fallback(serve)
        .with_state(Arc::clone(&app));
    carrying
        .map_or_else(Router::new, Carrying::routes)
        .merge(served)
        .layer(map_response_with_state(app, carry_policy))
}

async fn health() -> impl IntoResponse {
    ([(CACHE_CONTROL, "no-store")], "well\n")
}

/// What the relay answers, for programs: tested against what it does answer.
async fn openapi() -> impl IntoResponse {
    let fields = [
        (CACHE_CONTROL, "no-cache"),
        (CONTENT_TYPE, "application/json"),
    ];
    (fields, include_str!("../openapi.json"))
}

async fn serve(
    State(app): State<Arc<App>>,
    method: Method,
    uri: Uri,
    asked: HeaderMap,
) -> Response {
    if method != Method::GET && method != Method::HEAD {
        return (StatusCode::METHOD_NOT_ALLOWED, [(ALLOW, "GET, HEAD")]).into_response();
    }
    let path = uri.path();
    let found = app
        .file(path)
        .or_else(|| opens_the_page(path).then(|| app.file(PAGE)).flatten());
    match found {
        Some((path, file)) => answer::with_file(path, file, &asked),
        None => (
            StatusCode::NOT_FOUND,
            [(CACHE_CONTROL, "no-store")],
            "There is nothing at this address.\n",
        )
            .into_response(),
    }
}

/// The app finds its own way among its pages; the relay's address space is not theirs.
fn opens_the_page(path: &str) -> bool {
    is_page(path) && path != "/relay" && !path.starts_with("/relay/")
}

async fn carry_policy(State(app): State<Arc<App>>, mut response: Response) -> Response {
    response.headers_mut().extend(app.policy().iter().cloned());
    response
}
