//! Live updates: a stream of events that says that there is something new in a vault, and nothing else.
//!
//! ```text
//! GET /relay/v1/vaults/{vault}/news
//! ```
//!
//! Who listens is told once at the beginning, for nobody knows what came before, and then whenever a head or the roll has
//! moved; what it is, they pull. For each vault to which anybody listens, the relay looks at the heads every few seconds,
//! once for all who listen: so it hears as well of what came through another relay before the same database.

use super::answer::at_store;
use super::ask::signed;
use super::refused::Refused;
use super::{Carrying, Parts};
use axum::extract::{Path, Request as Http, State};
use axum::response::sse::{Event, KeepAlive, Sse};
use axum::response::{IntoResponse, Response};
use futures::stream;
use std::collections::{BTreeSet, HashMap};
use std::convert::Infallible;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Duration;
use sync::exchange::{self, Request, StoreError, Vector};
use tokio::sync::{Notify, oneshot, watch};
use tokio::time::{Instant, sleep_until, timeout};
use vault::{DeviceId, Roll, Statement, VaultId};

/// How often the relay looks by itself. What came through it, it looks for at once.
const EVERY: Duration = Duration::from_secs(2);
/// A relay looks no oftener than this for all vaults together, however many there are: then each waits longer for its turn.
const A_LOOK: Duration = Duration::from_millis(5);
/// After this a stream ends, and whoever wants more asks again: so nobody listens for ever by one signature.
const LASTS: Duration = Duration::from_mins(15);
/// How often something is said where nothing is new, so that nothing in between takes the line for dead.
const STILL_HERE: Duration = Duration::from_secs(25);
/// How many may listen, as a part of all connections: the others stay free for requests.
const PART_OF_CONNECTIONS: u32 = 2;

/// What a vault's listeners are told of.
#[derive(Clone, Debug, Default, PartialEq)]
struct Seen {
    heads: Vector,
    last: Option<Statement>,
    members: BTreeSet<DeviceId>,
}

/// A vault to which somebody listens.
#[derive(Default)]
struct Watched {
    seen: watch::Sender<Seen>,
    look: Notify,
}

/// Everybody who listens.
#[derive(Default)]
pub struct News {
    vaults: Mutex<HashMap<VaultId, Arc<Watched>>>,
    /// One stream a device: dropping the sender ends it.
    listening: Mutex<HashMap<DeviceId, oneshot::Sender<()>>>,
    ended: watch::Sender<bool>,
}

fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

impl News {
    /// Something came through this relay: its listeners need not wait.
    pub fn look(&self, vault: VaultId) {
        if let Some(watched) = lock(&self.vaults).get(&vault) {
            watched.look.notify_one();
        }
    }

    /// Ends all streams, because the relay stops.
    pub fn end(&self) {
        self.ended.send_replace(true);
    }

    /// Takes the place of a listener; the same device's stream from before ends.
    fn enter(&self, device: DeviceId, most: usize) -> Result<oneshot::Receiver<()>, Refused> {
        let mut listening = lock(&self.listening);
        listening.retain(|_, stream| !stream.is_closed());
        if listening.len() >= most && !listening.contains_key(&device) {
            let full = StoreError::Busy("too many listen".to_owned());
            return Err(Refused::Store(full));
        }
        let (ends, replaced) = oneshot::channel();
        listening.insert(device, ends);
        Ok(replaced)
    }
}

/// Answers with a stream.
pub async fn listen(
    State(carrying): State<Carrying>,
    Path(vault): Path<String>,
    http: Http,
) -> Response {
    let begun = begin(&carrying, &vault, http).await;
    begun.map_or_else(
        |refused| refused.into_response(&carrying.0),
        |listening| {
            let events = stream::unfold(listening, Listening::next);
            let keep = KeepAlive::new().interval(STILL_HERE).text("still here");
            // A proxy that gathers what it passes on would keep the news to itself.
            let unbuffered = [("x-accel-buffering", "no")];
            (unbuffered, Sse::new(events).keep_alive(keep)).into_response()
        },
    )
}

async fn begin(carrying: &Carrying, vault: &str, http: Http) -> Result<Listening, Refused> {
    let signed = signed(&carrying.0, vault, http).await?;
    let (vault, asker) = (signed.vault, signed.asker);
    let first = at_store(carrying, move |parts| {
        let quota = parts.limits.quota;
        exchange::answer(parts.store.as_ref(), vault, asker, quota, Request::Heads)?;
        look(parts, vault, &Seen::default())
    });
    let first = first.await?;
    carrying.0.buckets.know(asker);
    let most = carrying.0.limits.connections / PART_OF_CONNECTIONS;
    let news = &carrying.0.news;
    let replaced = news.enter(asker, most.max(1) as usize)?;
    Ok(Listening {
        asker,
        seen: watched(carrying, vault, first),
        replaced,
        ended: news.ended.subscribe(),
        until: Instant::now() + LASTS,
        told: false,
    })
}

/// Listens to a vault; the first who does sets somebody to look at it.
fn watched(carrying: &Carrying, vault: VaultId, first: Seen) -> watch::Receiver<Seen> {
    let mut vaults = lock(&carrying.0.news.vaults);
    if let Some(watched) = vaults.get(&vault) {
        return watched.seen.subscribe();
    }
    let watched = Arc::new(Watched::default());
    watched.seen.send_replace(first);
    vaults.insert(vault, Arc::clone(&watched));
    let seen = watched.seen.subscribe();
    tokio::spawn(keep_looking(carrying.clone(), vault, watched));
    seen
}

/// Looks for as long as anybody listens.
async fn keep_looking(carrying: Carrying, vault: VaultId, watched: Arc<Watched>) {
    loop {
        let vaults = lock(&carrying.0.news.vaults).len() as u32;
        let every = EVERY.max(A_LOOK * vaults);
        // Whether the time was up or something came: look.
        let _ = timeout(every, watched.look.notified()).await;
        {
            let mut vaults = lock(&carrying.0.news.vaults);
            if watched.seen.receiver_count() == 0 {
                vaults.remove(&vault);
                return;
            }
        }
        let before = watched.seen.borrow().clone();
        let now = at_store(&carrying, move |parts| look(parts, vault, &before));
        // A store that can't be reached now is looked at again; requests tell of it.
        if let Ok(now) = now.await {
            watched.seen.send_if_modified(|seen| {
                let new = *seen != now;
                *seen = now;
                new
            });
        }
    }
}

/// How a vault stands. A roll that didn't grow is not read anew.
fn look(parts: &Parts, vault: VaultId, before: &Seen) -> Result<Seen, Refused> {
    let store = parts.store.as_ref();
    let heads = store.vector(vault)?;
    let statements = store.roll(vault)?;
    let last = statements.last().copied();
    let members = if last == before.last {
        before.members.clone()
    } else {
        let roll = Roll::reread(vault, &statements);
        let roll = roll.map_err(|error| StoreError::Damaged(error.to_string()))?;
        let devices = roll.devices().map(|(device, _)| device);
        devices
            .filter(|device| roll.role(*device).is_some())
            .collect()
    };
    Ok(Seen {
        heads,
        last,
        members,
    })
}

/// One stream.
struct Listening {
    asker: DeviceId,
    seen: watch::Receiver<Seen>,
    replaced: oneshot::Receiver<()>,
    ended: watch::Receiver<bool>,
    until: Instant,
    told: bool,
}

impl Listening {
    /// Waits for something new. Who is not on the roll any more hears nothing more.
    async fn next(mut self) -> Option<(Result<Event, Infallible>, Self)> {
        if self.told {
            tokio::select! {
                changed = self.seen.changed() => changed.ok()?,
                _ = &mut self.replaced => return None,
                _ = self.ended.changed() => return None,
                () = sleep_until(self.until) => return None,
            }
            let here = self.seen.borrow_and_update().members.contains(&self.asker);
            here.then_some(())?;
        }
        self.told = true;
        Some((Ok(Event::default().event("new").data("new")), self))
    }
}
