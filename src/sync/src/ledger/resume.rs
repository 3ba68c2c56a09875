//! Beginning where a checkpoint was made, and making one.

use super::Read;
use super::reader::{Own, Resumption};
use super::reading::Reading;
use crate::checkpoint::{Content, Covered, Due, Ignored, Resumed, is_due, read};
use crate::damage::Damage;
use crate::storage::{Storage, StorageError};
use std::collections::BTreeMap;
use vault::{DeviceId, Frame, Head, Keys};

/// Takes up the checkpoint that is kept, if it is one to go by.
pub async fn resume<S: Storage>(
    storage: &S,
    keys: &Keys,
    reading: &mut Reading,
) -> Result<(Resumed, Option<Resumption>), StorageError> {
    let pieces = storage.checkpoint().await?;
    if pieces.is_empty() {
        return Ok((Resumed::Nowhere, None));
    }
    let opened = open(keys, &pieces, reading);
    drop(pieces);
    let (content, entries) = match opened {
        Ok(opened) => opened,
        Err(ignored) => return Ok((Resumed::Ignored(ignored), None)),
    };
    let Some(witness) = fits(storage, keys, &content).await? else {
        return Ok((Resumed::Ignored(Ignored::NotAPrefix), None));
    };
    let frames = content.frames();
    reading.resume(keys, content.logs);
    let resumption = Resumption {
        entries,
        anew: content.anew,
        witness,
    };
    Ok((Resumed::After(frames), Some(resumption)))
}

fn open(
    keys: &Keys,
    pieces: &[Vec<u8>],
    reading: &Reading,
) -> Result<(Content, Vec<Read>), Ignored> {
    let plain = keys.open_checkpoint(pieces)?;
    let (content, entries) = read(&plain)?;
    if content.roll == reading.roll_mark() {
        Ok((content, entries))
    } else {
        Err(Ignored::OtherRoll)
    }
}

/// Whether every log that is kept begins with the part that the checkpoint covers; then gives the frame by which the keys
/// are proven.
async fn fits<S: Storage>(
    storage: &S,
    keys: &Keys,
    content: &Content,
) -> Result<Option<Option<Frame>>, StorageError> {
    for Covered { key, head, .. } in &content.logs {
        let newest = storage.head(key.device()).await?;
        let kept = frame(storage, key.device(), head.sequence).await?;
        let reaches = newest.is_some_and(|newest| newest.sequence >= head.sequence);
        if !reaches || kept.map(|frame| frame.head()) != Some(*head) {
            return Ok(None);
        }
    }
    if content.witness == 0 {
        return Ok(Some(None));
    }
    let witness = frame(storage, keys.device(), content.witness).await?;
    Ok(witness.map(Some))
}

/// A checkpoint of what was read, if one is worth writing.
pub async fn due<S: Storage>(
    storage: &S,
    reading: &Reading,
    vector: &[(DeviceId, Head)],
    damage: &[Damage],
    own: Own,
    resumed: Resumed,
) -> Result<Option<Due>, StorageError> {
    let mut logs = Vec::new();
    for (device, head) in vector {
        let through = first_damaged(damage, *device).map_or(head.sequence, |first| first - 1);
        let head = match through {
            0 => None,
            through if through == head.sequence => Some(*head),
            through => frame(storage, *device, through)
                .await?
                .map(|frame| frame.head()),
        };
        logs.extend(head.and_then(|head| reading.covered(*device, head)));
    }
    let last: BTreeMap<DeviceId, u64> = logs
        .iter()
        .map(|log: &Covered| (log.device(), log.head.sequence))
        .collect();
    let is_covered = |frame: &Frame| {
        last.get(&frame.device())
            .is_some_and(|last| frame.sequence() <= *last)
    };
    let witness = own.witness();
    let mut anew = own.anew;
    anew.retain(is_covered);
    let content = Content {
        roll: reading.roll_mark(),
        logs,
        witness,
        anew,
    };
    let due = is_due(resumed, content.frames());
    Ok(due.then_some(Due {
        content,
        erasures: reading.erasures.len(),
    }))
}

fn first_damaged(damage: &[Damage], device: DeviceId) -> Option<u64> {
    let of_device = damage.iter().filter(|damage| damage.device == device);
    of_device.map(|damage| damage.sequence).min()
}

/// The frame that is kept under a number; none where there is none or it is damaged.
async fn frame<S: Storage>(
    storage: &S,
    device: DeviceId,
    sequence: u64,
) -> Result<Option<Frame>, StorageError> {
    let page = storage.page(device, sequence, 1).await?;
    let kept = page.into_iter().find(|kept| kept.sequence == sequence);
    Ok(kept.and_then(|kept| Frame::parse(kept.bytes).ok()))
}
