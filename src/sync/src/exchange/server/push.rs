//! A run that is to be kept.

use super::erase;
use super::{Quota, Refusal};
use crate::exchange::{Appended, FrameStore, Pushed, Run, StoreError, Why};
use vault::roll::Verdict;
use vault::{Frame, Head, Roll};

/// How often an append is tried again after another one came first. Each time the other one has got further.
const TRIES: usize = 5;

/// Keeps a run if it continues its log, wherever it comes from: a tablet, or a backup.
///
/// # Errors
///
/// A frame that the roll doesn't allow; no room; the store.
pub fn push<S: FrameStore + ?Sized>(
    store: &S,
    roll: &Roll,
    quota: Quota,
    run: &Run,
) -> Result<Pushed, Refusal> {
    let last = judge(roll, run)?;
    let after_removal = last.and_then(|last| run.after(last));
    let room = quota.bytes.saturating_sub(store.size(run.vault())?);
    if let Some(aside) = &after_removal {
        if aside.bytes() as u64 > room {
            return Err(Refusal::Full);
        }
        for frame in aside.frames() {
            store.set_aside(frame, Why::AfterRemoval)?;
        }
    }
    let counting = last.map_or_else(|| Some(run.clone()), |last| run.through(last));
    let pushed = match counting {
        Some(run) => keep(store, room, &run)?,
        None => Pushed::Aside {
            head: store.head(run.vault(), run.device())?,
        },
    };
    Ok(match (pushed, after_removal) {
        (Pushed::Kept { head }, Some(_)) => Pushed::Aside { head: Some(head) },
        (pushed, _) => pushed,
    })
}

/// The number after which the frames no longer count, where there is one.
fn judge(roll: &Roll, run: &Run) -> Result<Option<u64>, Refusal> {
    if run.vault() != roll.vault() {
        return Err(Refusal::OtherVault);
    }
    for frame in run.frames() {
        if roll.judge(frame) == Verdict::Refused {
            return Err(Refusal::NotAllowed {
                sequence: frame.sequence(),
            });
        }
    }
    Ok(roll
        .standing(run.device())
        .and_then(|standing| standing.removed_after))
}

fn keep<S: FrameStore + ?Sized>(store: &S, room: u64, run: &Run) -> Result<Pushed, Refusal> {
    for _ in 0..TRIES {
        let head = store.head(run.vault(), run.device())?;
        let new = match place(store, room, head, run)? {
            Place::New(new) => new,
            Place::Answered(pushed) => return Ok(pushed),
        };
        if new.bytes() as u64 > room {
            return Err(Refusal::Full);
        }
        // Before its word is kept: whoever is cut off in between hears nothing, and says it again.
        erase::carry_out(store, &new)?;
        if store.append(&new)? == Appended::Kept {
            return Ok(Pushed::Kept { head: new.head() });
        }
    }
    let busy = format!("log {} of vault {}", run.device(), run.vault());
    Err(StoreError::Busy(busy).into())
}

/// Where a run stands to the log that is there.
enum Place {
    /// These of its frames come next.
    New(Run),
    /// None does.
    Answered(Pushed),
}

fn place<S: FrameStore + ?Sized>(
    store: &S,
    room: u64,
    head: Option<Head>,
    run: &Run,
) -> Result<Place, StoreError> {
    let sequence = head.map_or(0, |head| head.sequence);
    let first = run.first().sequence();
    if first > sequence.saturating_add(1) {
        return Ok(Place::Answered(Pushed::Gap { head }));
    }
    // A run that begins right after the head but names another frame before it: the fork is at the head.
    if first == sequence + 1 && run.before() != head {
        return fork(store, room, run.first(), sequence);
    }
    if first == sequence + 1 {
        return Ok(Place::New(run.clone()));
    }
    let kept = store.hashes(run.vault(), run.device(), first, run.frames().len())?;
    let mut both = run.frames().iter().zip(&kept);
    if let Some((other, _)) = both.find(|(frame, kept)| frame.hash() != **kept) {
        return fork(store, room, other, other.sequence());
    }
    Ok(match (run.after(sequence), head) {
        (Some(new), _) => Place::New(new),
        (None, Some(head)) => Place::Answered(Pushed::Kept { head }),
        (None, None) => Place::Answered(Pushed::Gap { head }),
    })
}

/// Evidence is kept as long as there is room: nobody fills a disk with forks of their own log.
fn fork<S: FrameStore + ?Sized>(
    store: &S,
    room: u64,
    evidence: &Frame,
    sequence: u64,
) -> Result<Place, StoreError> {
    if evidence.bytes().len() as u64 <= room {
        store.set_aside(evidence, Why::Fork)?;
    }
    Ok(Place::Answered(Pushed::Fork { sequence }))
}
