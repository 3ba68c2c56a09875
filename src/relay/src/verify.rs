//! Walking everything that is kept, as a device would that believes nothing.

use crate::store::Desk;
use std::fmt;
use sync::exchange::{MOST_BYTES, MOST_FRAMES, StoreError};
use vault::roll::Verdict;
use vault::{DeviceId, Frame, FrameHash, Head, Roll, VaultId};

/// What a walk found.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Verified {
    /// Vaults that were walked.
    pub vaults: u64,
    /// Frames that are whole, signed and in their place.
    pub frames: u64,
    /// What is wrong, a sentence each.
    pub wrong: Vec<String>,
}

/// Walks all rolls and all logs of a store.
///
/// # Errors
///
/// The list of vaults can't be read. What is wrong further down is part of the answer.
pub fn verify(store: &dyn Desk) -> Result<Verified, StoreError> {
    let mut verified = Verified::default();
    for line in store.vaults()? {
        verified.vaults += 1;
        if let Err(wrong) = vault(store, line.vault, &mut verified) {
            verified
                .wrong
                .push(format!("vault {}: {wrong}", line.vault));
        }
    }
    Ok(verified)
}

fn vault(store: &dyn Desk, vault: VaultId, verified: &mut Verified) -> Result<(), String> {
    let said = |error: StoreError| error.to_string();
    let statements = store.roll(vault).map_err(said)?;
    let roll = Roll::read(vault, &statements).map_err(|error| format!("its roll: {error}"))?;
    for (device, head) in store.vector(vault).map_err(said)?.iter() {
        if let Err(wrong) = log(store, &roll, device, head, &mut verified.frames) {
            verified
                .wrong
                .push(format!("vault {vault}, log {device}: {wrong}"));
        }
    }
    Ok(())
}

/// Every frame from the first to the head.
fn log(
    store: &dyn Desk,
    roll: &Roll,
    device: DeviceId,
    head: Head,
    count: &mut u64,
) -> Result<(), String> {
    let mut place = Head {
        sequence: 0,
        hash: FrameHash::NONE,
    };
    while place.sequence < head.sequence {
        let from = place.sequence + 1;
        let range = store
            .range(roll.vault(), device, from, MOST_FRAMES, MOST_BYTES)
            .map_err(|error| error.to_string())?;
        if range.is_empty() {
            return Err(format!("entry {from} is missing"));
        }
        for bytes in range {
            place = next(roll, device, place, bytes)?;
            *count += 1;
        }
    }
    if place == head {
        Ok(())
    } else {
        Err(format!(
            "it should end with entry {} and does with another",
            head.sequence
        ))
    }
}

fn next(roll: &Roll, device: DeviceId, place: Head, bytes: Vec<u8>) -> Result<Head, String> {
    let number = place.sequence + 1;
    let frame = Frame::parse(bytes).map_err(|error| format!("entry {number}: {error}"))?;
    if frame.device() != device
        || frame.sequence() != number
        || frame.header().previous != place.hash
    {
        return Err(format!("entry {number} doesn't follow the one before it"));
    }
    if roll.judge(&frame) == Verdict::Refused {
        return Err(format!(
            "entry {number} isn't signed by its tablet, or not one that it may write"
        ));
    }
    Ok(frame.head())
}

impl fmt::Display for Verified {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        for wrong in &self.wrong {
            writeln!(out, "{wrong}")?;
        }
        write!(
            out,
            "{} vaults, {} entries sound, {} things wrong",
            self.vaults,
            self.frames,
            self.wrong.len()
        )
    }
}
