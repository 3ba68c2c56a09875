//! What was set aside, for a lead to look at.

use super::Refusal;
use crate::exchange::{Asides, FrameStore, MOST_BYTES, MOST_FRAMES, StoreError};
use vault::{DeviceId, Frame, Head, VaultId};

/// Frames read at a time: they may be large, and what doesn't fit into the page is read in vain.
const AT_A_TIME: usize = 16;

/// As much of what comes after `after` as goes into one page.
pub fn page<S: FrameStore + ?Sized>(
    store: &S,
    vault: VaultId,
    mut after: Option<(DeviceId, Head)>,
) -> Result<Asides, Refusal> {
    let (mut page, mut room) = (Asides::default(), MOST_BYTES);
    loop {
        let kept = store.aside(vault, after, AT_A_TIME)?;
        let last = kept.len() < AT_A_TIME;
        for (why, bytes) in kept {
            if bytes.len() > room || page.frames.len() == MOST_FRAMES {
                page.more = true;
                return Ok(page);
            }
            room -= bytes.len();
            let frame = Frame::parse(bytes).map_err(|error| {
                StoreError::Damaged(format!("what vault {vault} has aside: {error}"))
            })?;
            after = Some((frame.device(), frame.head()));
            page.frames.push((why, frame));
        }
        if last {
            return Ok(page);
        }
    }
}
