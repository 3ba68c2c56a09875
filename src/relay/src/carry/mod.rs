//! Carrying frames over HTTP.
//!
//! ```text
//! POST /relay/v1/vaults/{vault}/heads | pull | push | roll | state | open | aside
//! GET  /relay/v1/vaults/{vault}/news
//! ```
//!
//! `{vault}` is the vault's id in base 16, the last part names the kind of request in the body, and both bodies are those
//! of [`sync::exchange::wire`]. Who asks stands in the `authorization` field ([`vault::request`]). There are no sessions:
//! any number of relays may stand before one database. `news` has no body and is answered by a stream that says when there
//! is something new.
//!
//! | status | when                                                                                            |
//! |--------|-------------------------------------------------------------------------------------------------|
//! | 200    | done                                                                                            |
//! | 202    | frames of a removed device were set aside                                                       |
//! | 400    | the body or the address makes no sense                                                          |
//! | 401    | no signature, or not over this request, too old, or used before; `lightround-time` says the time |
//! | 403    | a removed device, a frame that its device may not write, a roll that only leads change           |
//! | 404    | no such vault, or none for this device, or no such invitation                                    |
//! | 408    | the body didn't come                                                                            |
//! | 409    | a gap or a fork, told in the body; a change of the roll that came too late                       |
//! | 413    | the body is longer than any request                                                             |
//! | 429    | too many requests; `retry-after`                                                                |
//! | 503    | the store can't be reached; `retry-after`                                                       |
//! | 507    | the vault's room is full                                                                        |
//!
//! An answer of type `application/cbor` is a message whatever its status; any other body is one sentence.

mod answer;
mod ask;
mod counts;
mod journal;
mod news;
mod nonces;
mod rate;
mod refused;

pub(crate) use ask::vault_id;
pub use journal::{Journal, Line};
pub use rate::Rate;

use crate::paths;
use crate::store::Desk;
use axum::extract::DefaultBodyLimit;
use axum::routing::{get, post};
use axum::{Router, middleware};
use counts::Counts;
use news::News;
use nonces::Nonces;
use rate::Buckets;
use std::sync::Arc;
use std::time::{Duration, SystemTime, UNIX_EPOCH};
use sync::exchange::Quota;
use tokio::sync::Semaphore;

/// Requests that are at the store at a time; others wait.
const AT_ONCE: usize = 16;

/// What limits those who ask.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limits {
    /// How much a vault may take.
    pub quota: Quota,
    /// How often a device may ask.
    pub rate: Rate,
    /// How long a handshake, a request's head and its body may take to come, each.
    pub patience: Duration,
    /// The most connections that are open at a time.
    pub connections: u32,
}

impl Default for Limits {
    /// 4 GiB a vault, 20 requests a second after the first 200, half a minute, 1024 connections.
    fn default() -> Self {
        Self {
            quota: Quota { bytes: 4 << 30 },
            rate: Rate {
                burst: 200,
                each_second: 20,
            },
            patience: Duration::from_secs(30),
            connections: 1024,
        }
    }
}

/// Milliseconds since 1970.
pub type Clock = Arc<dyn Fn() -> u64 + Send + Sync>;

/// Everything that carrying needs. Clones share it.
#[derive(Clone)]
pub struct Carrying(Arc<Parts>);

struct Parts {
    store: Arc<dyn Desk>,
    limits: Limits,
    clock: Clock,
    journal: Journal,
    counts: Counts,
    buckets: Buckets,
    nonces: Nonces,
    news: News,
    places: Arc<Semaphore>,
}

impl Carrying {
    /// Carries over this store, by the system's clock, and writes what it does to `journal`.
    pub fn new(store: Arc<dyn Desk>, limits: Limits, journal: Journal) -> Self {
        Self::with_clock(store, limits, journal, Arc::new(now))
    }

    /// The same by another clock.
    pub fn with_clock(
        store: Arc<dyn Desk>,
        limits: Limits,
        journal: Journal,
        clock: Clock,
    ) -> Self {
        Self(Arc::new(Parts {
            store,
            limits,
            clock,
            journal,
            counts: Counts::default(),
            buckets: Buckets::new(limits.rate),
            nonces: Nonces::default(),
            news: News::default(),
            places: Arc::new(Semaphore::new(AT_ONCE)),
        }))
    }

    /// All counts as Prometheus reads them.
    pub(crate) fn told(&self) -> String {
        let busy = AT_ONCE - self.0.places.available_permits();
        let at_the_store = "# HELP lightround_at_the_store Requests that are at the store now.\n\
                            # TYPE lightround_at_the_store gauge\n";
        format!(
            "{}{at_the_store}lightround_at_the_store {busy}\n",
            self.0.counts
        )
    }

    /// Ends what would not end by itself, because the relay stops.
    pub fn end(&self) {
        self.0.news.end();
    }

    /// The routes, to be merged into the relay's.
    pub(crate) fn routes(self) -> Router {
        Router::new()
            .route(paths::VAULTS, post(answer::answer))
            .route(paths::NEWS, get(news::listen))
            .route(paths::READY, get(answer::ready))
            // The body is counted where it is read.
            .layer(DefaultBodyLimit::disable())
            .layer(middleware::from_fn_with_state(
                self.clone(),
                journal::write_down,
            ))
            .with_state(self)
    }
}

/// Milliseconds since 1970 by the system's clock.
pub fn now() -> u64 {
    let since = SystemTime::now().duration_since(UNIX_EPOCH);
    since.map_or(0, |since| since.as_millis() as u64)
}
