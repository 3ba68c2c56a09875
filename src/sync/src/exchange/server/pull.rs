//! Ranges for one who says what it has.

use super::{Refusal, shown};
use crate::exchange::{FrameStore, MOST_BYTES, MOST_FRAMES, Page, Run, StoreError, Vector};
use vault::{DeviceId, Frame, Head, Roll, VaultId};

/// As much of what is beyond `have` as goes into one page.
pub fn page<S: FrameStore + ?Sized>(
    store: &S,
    roll: &Roll,
    have: &Vector,
) -> Result<Page, Refusal> {
    let vault = roll.vault();
    let mut page = Page {
        heads: shown(store, roll)?,
        runs: Vec::new(),
        forks: Vector::new(),
        more: false,
    };
    let mut room = MOST_BYTES;
    for at in 0..page.heads.len() {
        let (device, head) = (page.heads[at].key.device(), page.heads[at].head);
        let theirs = have.head(device);
        if let Some(ours) = differing(store, vault, device, theirs, head)? {
            page.forks.set(device, Some(ours));
            continue;
        }
        let from = theirs.map_or(1, |theirs| theirs.sequence.saturating_add(1));
        if from > head.sequence {
            continue;
        }
        let bytes = store.range(vault, device, from, MOST_FRAMES, room)?;
        let Some(run) = sound(vault, device, bytes)? else {
            page.more = true;
            continue;
        };
        room -= run.bytes();
        page.more |= run.head().sequence < head.sequence;
        page.runs.push(run);
    }
    Ok(page)
}

/// The relay's own head at the asker's number, where that is another frame.
fn differing<S: FrameStore + ?Sized>(
    store: &S,
    vault: VaultId,
    device: DeviceId,
    theirs: Option<Head>,
    head: Head,
) -> Result<Option<Head>, StoreError> {
    let Some(theirs) = theirs.filter(|theirs| theirs.sequence <= head.sequence && *theirs != head)
    else {
        return Ok(None);
    };
    let hash = store.hashes(vault, device, theirs.sequence, 1)?;
    let ours = hash.first().map(|hash| Head {
        sequence: theirs.sequence,
        hash: *hash,
    });
    Ok(ours.filter(|ours| *ours != theirs))
}

/// What the store gave, as a run; none where nothing fitted.
fn sound(vault: VaultId, device: DeviceId, bytes: Vec<Vec<u8>>) -> Result<Option<Run>, StoreError> {
    if bytes.is_empty() {
        return Ok(None);
    }
    let damaged = |error: String| StoreError::Damaged(format!("log {device} of {vault}: {error}"));
    let frames = bytes
        .into_iter()
        .map(Frame::parse)
        .collect::<Result<Vec<_>, _>>()
        .map_err(|error| damaged(error.to_string()))?;
    Run::new(frames)
        .map(Some)
        .map_err(|error| damaged(error.to_string()))
}
