//! A round over a [`Storage`] and whatever reaches a relay.

use super::{Answer, Effect, Event, Exchange, Failure, MOST_FRAMES, Notice, Request, Run, Vector};
use crate::storage::{Append, Storage, StorageError};
use std::collections::VecDeque;
use vault::{DeviceId, Frame};

/// What a round needs beside a storage.
#[allow(async_fn_in_trait, reason = "a browser's futures are never Send")]
pub trait Host {
    /// Sends a request and waits for the answer.
    async fn ask(&self, request: Request) -> Result<Answer, Failure>;

    /// A random number.
    fn random(&self) -> u32;

    /// Keeps what the relay is known to have held, durably.
    async fn remember(&self, seen: &Vector);

    /// Shows something.
    fn tell(&self, notice: Notice);
}

/// Exchanges everything once. Gives the milliseconds after which to try again where that failed; `None` where all is well.
///
/// The frames are kept as they come. What is made of them (the open [`crate::Ledger`]) is read again by the caller.
///
/// # Errors
///
/// The storage can't say how far its logs go.
pub async fn round<S: Storage, H: Host>(
    exchange: &mut Exchange,
    storage: &S,
    host: &H,
) -> Result<Option<u64>, StorageError> {
    let have = vector(storage).await?;
    let mut effects = VecDeque::from(exchange.handle(Event::Wanted { have }));
    let mut wait = None;
    while let Some(effect) = effects.pop_front() {
        let event = match effect {
            Effect::Ask(request) => asked(host, request).await,
            Effect::Load { device, from } => loaded(storage, host, device, from).await,
            Effect::Store(run) => stored(storage, host, &run).await,
            Effect::Remember(seen) => {
                host.remember(&seen).await;
                continue;
            }
            Effect::Wait { millis } => {
                wait = Some(millis);
                continue;
            }
            Effect::Tell(notice) => {
                if exchange.is_copy(&notice) {
                    storage.mark_copy().await?;
                }
                host.tell(notice);
                continue;
            }
        };
        effects.extend(exchange.handle(event));
    }
    Ok(wait)
}

async fn vector<S: Storage>(storage: &S) -> Result<Vector, StorageError> {
    Ok(storage.vector().await?.into_iter().collect())
}

async fn asked<H: Host>(host: &H, request: Request) -> Event {
    let random = host.random();
    match host.ask(request).await {
        Ok(answer) => Event::Answered { answer, random },
        Err(failure) => Event::Failed { failure, random },
    }
}

async fn loaded<S: Storage, H: Host>(storage: &S, host: &H, device: DeviceId, from: u64) -> Event {
    match storage.page(device, from, MOST_FRAMES).await {
        Ok(page) => {
            let numbered = (from..).zip(page);
            let sound = numbered.map_while(|(number, kept)| {
                let frame = Frame::parse(kept.bytes).ok()?;
                (kept.sequence == number && frame.sequence() == number).then_some(frame)
            });
            Event::Loaded(sound.collect())
        }
        Err(error) => failed(host, error),
    }
}

async fn stored<S: Storage, H: Host>(storage: &S, host: &H, run: &Run) -> Event {
    let append = Append {
        device: run.device(),
        expected: run.before(),
        frames: run.frames(),
        drop_drafts: &[],
    };
    match storage.append(append).await {
        Ok(()) => Event::Stored,
        Err(StorageError::Moved { .. }) => match vector(storage).await {
            Ok(have) => Event::Moved { have },
            Err(error) => failed(host, error),
        },
        Err(error) => failed(host, error),
    }
}

fn failed<H: Host>(host: &H, error: StorageError) -> Event {
    Event::Failed {
        failure: Failure::Storage(error),
        random: host.random(),
    }
}
