//! Reading a vault: every device's log from its first frame on, and later what has come to the others' logs since.

use super::reader::{Found, Reader};
use super::reading::Reading;
use super::resume::{due, resume};
use super::{LedgerError, Refusal};
use crate::checkpoint::{Due, Resumed};
use crate::storage::{Storage, StoredFrame};
use std::collections::VecDeque;
use vault::{DeviceId, Head, KeyFile, Keys, Proven, Roll};

/// Frames read at a time.
const PAGE: usize = 500;

/// Everything that came of reading.
pub struct Replayed {
    pub found: Found,
    pub reading: Reading,
    pub proven: Result<Proven, Refusal>,
    pub resumed: Resumed,
    pub due: Option<Due>,
    /// Whether something is still kept that somebody's erasure takes away.
    pub to_empty: bool,
}

/// What a log has that was not read yet.
pub struct Rest {
    device: DeviceId,
    head: Head,
    frames: Vec<StoredFrame>,
}

/// Reads everything that is kept: after the checkpoint, if there is one to go by and it may be used, or else all of it.
pub async fn replay<S: Storage>(
    storage: &S,
    keys: &Keys,
    roll: Option<Roll>,
    afresh: bool,
) -> Result<Replayed, LedgerError> {
    check_vault(storage, keys).await?;
    let mut reading = Reading::going_by(roll);
    let (resumed, resumption) = if afresh {
        (Resumed::Nowhere, None)
    } else {
        resume(storage, keys, &mut reading).await?
    };
    let mut reader = Reader::new(keys, &mut reading);
    if let Some(resumption) = resumption {
        reader.resume(resumption);
    }
    let vector = storage.vector().await?;
    let mut logs: VecDeque<(DeviceId, Head)> = vector.iter().copied().collect();
    // How many logs in a row had to be put off: if all that are left, they are read as they are.
    let mut put_off = 0;
    while let Some((device, head)) = logs.pop_front() {
        let first = storage.page(device, 1, 1).await?;
        if put_off < logs.len() && !reader.can_begin(device, first.first()) {
            put_off += 1;
            logs.push_back((device, head));
            continue;
        }
        put_off = 0;
        read_log(storage, &mut reader, device, head).await?;
    }
    let (found, own) = reader.finish();
    let proven = own.prove(keys);
    let to_empty = own.to_empty;
    let due = due(storage, &reading, &vector, &found.damage, own, resumed).await?;
    Ok(Replayed {
        found,
        reading,
        proven,
        resumed,
        due,
        to_empty,
    })
}

async fn read_log<S: Storage>(
    storage: &S,
    reader: &mut Reader<'_>,
    device: DeviceId,
    head: Head,
) -> Result<(), LedgerError> {
    let mut part = reader.begin(device);
    let mut next = Some(part.next());
    while let Some(from) = next {
        let page = storage.page(device, from, PAGE).await?;
        next = page.last().and_then(|last| last.sequence.checked_add(1));
        for kept in page {
            reader.read(&mut part, kept);
        }
    }
    if reader.is_covered_to(&part, head) {
        let newest = storage.page(device, head.sequence, 1).await?;
        part.newest_is(newest.into_iter().next(), head);
    }
    reader.end(part, head);
    Ok(())
}

/// Fetches what has come to the other devices' logs since they were read.
pub async fn rest<S: Storage>(
    storage: &S,
    keys: &Keys,
    reading: &Reading,
) -> Result<Vec<Rest>, LedgerError> {
    let mut rest = Vec::new();
    for (device, head) in storage.vector().await? {
        let read = reading.next(device);
        if device == keys.device() || read > head.sequence {
            continue;
        }
        let (mut frames, mut next) = (Vec::new(), Some(read));
        while let Some(from) = next {
            let page = storage.page(device, from, PAGE).await?;
            next = page.last().and_then(|last| last.sequence.checked_add(1));
            frames.extend(page);
        }
        rest.push(Rest {
            device,
            head,
            frames,
        });
    }
    Ok(rest)
}

/// Reads on, and says whether something is kept that somebody's erasure takes away. Nothing here waits or fails, so that
/// whatever is read is also told.
pub fn read_on(keys: &Keys, reading: &mut Reading, rest: Vec<Rest>) -> (Found, bool) {
    let mut reader = Reader::new(keys, reading);
    let mut rest: VecDeque<Rest> = rest.into();
    let mut put_off = 0;
    while let Some(log) = rest.pop_front() {
        if !reader.can_begin(log.device, log.frames.first()) {
            // What no key is here for, is read once there is one.
            if put_off < rest.len() {
                put_off += 1;
                rest.push_back(log);
            }
            continue;
        }
        put_off = 0;
        let mut part = reader.begin(log.device);
        for kept in log.frames {
            reader.read(&mut part, kept);
        }
        reader.end(part, log.head);
    }
    let (found, own) = reader.finish();
    (found, own.to_empty)
}

/// Keys of another vault would find nothing but damage: better said at once.
async fn check_vault<S: Storage>(storage: &S, keys: &Keys) -> Result<(), LedgerError> {
    let kept = storage
        .key_file()
        .await?
        .and_then(|bytes| KeyFile::from_bytes(&bytes).ok());
    match kept {
        Some(file) if file.vault() != keys.vault() || file.device() != keys.device() => {
            Err(LedgerError::OtherVault)
        }
        _ => Ok(()),
    }
}
