//! A carry file of what a relay keeps: for whoever has lost every tablet, and has the recovery sheet.

use super::export::{sealed, write_log};
use super::{CarryError, Exported};
use crate::exchange::{FrameStore, MOST_BYTES, MOST_FRAMES, StoreError};
use crate::storage::StorageError;
use vault::frame::PublicKey;
use vault::{DeviceId, Frame, FrameHash, Head, Roll, VaultId};

/// Before the first frame of a log.
const BEGINNING: Head = Head {
    sequence: 0,
    hash: FrameHash::NONE,
};

/// Writes everything that counts in a vault, and its roll. A log in which something is damaged is in it up to there.
///
/// # Errors
///
/// There is nothing of the vault, its roll doesn't hold together, or the store fails.
pub fn relayed<S: FrameStore + ?Sized>(store: &S, vault: VaultId) -> Result<Exported, CarryError> {
    let statements = store.roll(vault).map_err(other)?;
    let roll = Roll::read(vault, &statements).map_err(other)?;
    let heads = store.vector(vault).map_err(other)?;
    let mut exported = Exported {
        bytes: Vec::new(),
        frames: 0,
        left_out: Vec::new(),
    };
    let mut logs: u16 = 0;
    for (device, standing) in roll.devices() {
        let frames = sound(store, vault, device, &standing.key).map_err(other)?;
        let through = frames.len() as u64;
        if through > 0 {
            // A roll has fewer devices than that.
            logs = logs.saturating_add(1);
            write_log(&mut exported.bytes, &standing.key, &frames);
            exported.frames += through;
        }
        if through < heads.sequence(device) {
            exported.left_out.push((device, through + 1));
        }
    }
    if logs == 0 {
        return Err(CarryError::Nothing);
    }
    let roll: Vec<Vec<u8>> = statements
        .iter()
        .map(|statement| statement.bytes().to_vec())
        .collect();
    exported.bytes = sealed(vault, logs, &exported.bytes, &roll)?;
    Ok(exported)
}

/// A log from its beginning to its end, or to the first frame that isn't what it should be.
fn sound<S: FrameStore + ?Sized>(
    store: &S,
    vault: VaultId,
    device: DeviceId,
    key: &PublicKey,
) -> Result<Vec<Frame>, StoreError> {
    let (mut frames, mut end) = (Vec::new(), BEGINNING);
    loop {
        let page = store.range(vault, device, end.sequence + 1, MOST_FRAMES, MOST_BYTES)?;
        if page.is_empty() {
            return Ok(frames);
        }
        for bytes in page {
            let follows = |frame: &Frame| {
                frame.sequence() == end.sequence + 1
                    && frame.header().previous == end.hash
                    && frame.verify(key).is_ok()
            };
            let Some(frame) = Frame::parse(bytes).ok().filter(follows) else {
                return Ok(frames);
            };
            end = frame.head();
            frames.push(frame);
        }
    }
}

fn other(error: impl std::fmt::Display) -> CarryError {
    StorageError::Other(error.to_string()).into()
}
