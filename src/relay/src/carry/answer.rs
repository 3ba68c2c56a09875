//! Requests at the store, and what is said of them.

use super::ask::{Genuine, genuine};
use super::refused::Refused;
use super::{Carrying, Parts};
use crate::store::{Desk, Opening};
use axum::extract::{Path, Request as Http, State};
use axum::http::StatusCode;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::response::{IntoResponse, Response};
use std::sync::Arc;
use std::time::Duration;
use sync::exchange::{self, Answer, Pushed, Request, StoreError};
use vault::{Invitation, Role, RollError, Statement};

/// How long a request may wait for its turn at the store.
const TURN: Duration = Duration::from_secs(10);

/// Answers any request about a vault.
pub async fn answer(
    State(carrying): State<Carrying>,
    Path((vault, what)): Path<(String, String)>,
    http: Http,
) -> Response {
    let answered = match genuine(&carrying.0, &vault, &what, http).await {
        Ok(genuine) => {
            let (asker, vault) = (genuine.asker, genuine.vault);
            let changes = matches!(genuine.request, Request::Push(_) | Request::State(_));
            let answered = at_store(&carrying, move |parts| done(parts, genuine)).await;
            answered.inspect(|_| {
                carrying.0.buckets.know(asker);
                if changes {
                    carrying.0.news.look(vault);
                }
            })
        }
        Err(refused) => Err(refused),
    };
    answered.map_or_else(
        |refused| refused.into_response(&carrying.0),
        |answer| said(&answer),
    )
}

/// Whether the store can be reached.
pub async fn ready(State(carrying): State<Carrying>) -> Response {
    let ready = at_store(&carrying, |parts| Ok(parts.store.ready()?)).await;
    match ready {
        Ok(()) => ([(CACHE_CONTROL, "no-store")], "ready\n").into_response(),
        Err(refused) => refused.into_response(&carrying.0),
    }
}

/// Does work that waits for the store, where waiting holds nobody up.
pub(super) async fn at_store<T: Send + 'static>(
    carrying: &Carrying,
    work: impl FnOnce(&Parts) -> Result<T, Refused> + Send + 'static,
) -> Result<T, Refused> {
    let busy = |what: &str| Refused::Store(StoreError::Busy(what.to_owned()));
    let turn = tokio::time::timeout(TURN, Arc::clone(&carrying.0.places).acquire_owned());
    let Ok(Ok(place)) = turn.await else {
        return Err(busy("too many requests at the store"));
    };
    let parts = Arc::clone(&carrying.0);
    let work = move || {
        // The place is taken until the work is done, even if nobody waits for it any more.
        let _place = place;
        work(&parts)
    };
    tokio::task::spawn_blocking(work)
        .await
        .unwrap_or_else(|error| Err(Refused::Store(StoreError::Failed(error.to_string()))))
}

fn done(parts: &Parts, genuine: Genuine) -> Result<Answer, Refused> {
    let Genuine {
        asker,
        vault,
        request,
        ..
    } = genuine;
    if let Request::Open { code, first } = &request {
        if first.vault != vault || first.by.device() != asker {
            return Err(Refused::Address);
        }
        open(parts.store.as_ref(), (parts.clock)(), code, first)?;
    }
    let quota = parts.limits.quota;
    Ok(exchange::answer(
        parts.store.as_ref(),
        vault,
        asker,
        quota,
        request,
    )?)
}

fn open(store: &dyn Desk, now: u64, code: &Invitation, first: &Statement) -> Result<(), Refused> {
    let mut roll = vault::Roll::new(first.vault);
    roll.add(first)?;
    debug_assert_eq!(roll.role(first.about.device()), Some(Role::Lead));
    match store.open_vault(code.hash(), now, first)? {
        Opening::Opened => Ok(()),
        Opening::NoInvitation => Err(Refused::NoInvitation),
        Opening::Taken => Err(RollError::OutOfPlace { expected: 2 }.into()),
    }
}

fn said(answer: &Answer) -> Response {
    let status = match answer {
        Answer::Pushed(Pushed::Gap { .. } | Pushed::Fork { .. }) => StatusCode::CONFLICT,
        Answer::Pushed(Pushed::Aside { .. }) => StatusCode::ACCEPTED,
        _ => StatusCode::OK,
    };
    let fields = [
        (CONTENT_TYPE, "application/cbor"),
        (CACHE_CONTROL, "no-store"),
    ];
    (status, fields, answer.to_bytes()).into_response()
}
