//! Where counts are told: at an address of its own, so that only whoever may reach that learns how busy a clinic is.

use crate::carry::Carrying;
use axum::Router;
use axum::extract::State;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::response::IntoResponse;
use axum::routing::get;

/// Answers `GET /metrics` in the text format that Prometheus reads.
pub fn router(carrying: &Carrying) -> Router {
    Router::new()
        .route("/metrics", get(told))
        .with_state(carrying.clone())
}

async fn told(State(carrying): State<Carrying>) -> impl IntoResponse {
    let fields = [
        (CONTENT_TYPE, "text/plain; version=0.0.4; charset=utf-8"),
        (CACHE_CONTROL, "no-store"),
    ];
    (fields, carrying.told())
}
