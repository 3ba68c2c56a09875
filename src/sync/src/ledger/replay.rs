//! Reading a vault: every device's log from its first frame on, and later what has come to the others' logs since.

use super::reader::{Found, Reader, Reading};
use super::{LedgerError, Refusal};
use crate::storage::{Storage, StoredFrame};
use vault::{DeviceId, Head, KeyFile, Keys, Proven, Roll};

/// Frames read at a time.
const PAGE: usize = 500;

/// Everything that came of reading.
pub struct Replayed {
    pub found: Found,
    pub reading: Reading,
    pub proven: Result<Proven, Refusal>,
}

/// What a log has that was not read yet.
pub struct Rest {
    device: DeviceId,
    head: Head,
    frames: Vec<StoredFrame>,
}

/// Reads everything that is kept.
pub async fn replay<S: Storage>(
    storage: &S,
    keys: &Keys,
    roll: Option<Roll>,
) -> Result<Replayed, LedgerError> {
    check_vault(storage, keys).await?;
    let mut reading = Reading::going_by(roll);
    let mut reader = Reader::new(keys, &mut reading);
    for (device, head) in storage.vector().await? {
        let mut part = reader.begin(device);
        let mut next = Some(1);
        while let Some(from) = next {
            let page = storage.page(device, from, PAGE).await?;
            next = page.last().and_then(|last| last.sequence.checked_add(1));
            for kept in page {
                reader.read(&mut part, kept);
            }
        }
        reader.end(part, head);
    }
    let (found, own) = reader.finish();
    Ok(Replayed {
        proven: own.prove(keys),
        found,
        reading,
    })
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

/// Reads on. Nothing here waits or fails, so that whatever is read is also told.
pub fn read_on(keys: &Keys, reading: &mut Reading, rest: Vec<Rest>) -> Found {
    let mut reader = Reader::new(keys, reading);
    for Rest {
        device,
        head,
        frames,
    } in rest
    {
        let mut part = reader.begin(device);
        for kept in frames {
            reader.read(&mut part, kept);
        }
        reader.end(part, head);
    }
    reader.finish().0
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
