//! What the cases ask again and again.

use super::keeper::Keeps;
use super::sample::{Device, head};
use crate::contract::{Breach, Ended, promise};
use crate::exchange::{Appended, Run};
use vault::{Frame, Head};

/// More frames than any case keeps.
pub const ALL: usize = 100_000;

/// What became of frames that were handed over as one run.
pub async fn append(k: &impl Keeps, frames: &[Frame]) -> Result<Appended, Breach> {
    let run = Run::new(frames.to_vec())?;
    k.append(&run).await
}

/// They are kept.
pub async fn keep(k: &impl Keeps, frames: &[Frame]) -> Ended {
    promise(append(k, frames).await? == Appended::Kept)
}

/// They are refused, since the log ends here.
pub async fn refuse(k: &impl Keeps, frames: &[Frame], head: Option<Head>) -> Ended {
    promise(append(k, frames).await? == Appended::Moved { head })
}

/// The device's log has these frames and no others.
pub async fn holds(k: &impl Keeps, device: Device, log: &[Frame]) -> Ended {
    promise(k.head(device.id).await? == head(log))?;
    page(k, device, (1, ALL), log).await
}

/// A page from a number on, of at most so many, has these frames.
pub async fn page(
    k: &impl Keeps,
    device: Device,
    (from, limit): (u64, usize),
    frames: &[Frame],
) -> Ended {
    promise(k.page(device.id, from, limit).await? == bytes(frames))
}

fn bytes(frames: &[Frame]) -> Vec<Vec<u8>> {
    frames.iter().map(|frame| frame.bytes().to_vec()).collect()
}
