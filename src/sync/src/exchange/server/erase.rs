//! Erasing a person: what a lead's word takes away goes from the relay as well.
//!
//! A lead's word is a frame like any other that the relay carries, and an open one, so the relay can follow it without any key
//! ([`Erasure::read`]). It stays a frame of its log, so a relay that is put back from an older copy hears it again.

use crate::exchange::{FrameStore, MOST_BYTES, MOST_FRAMES, Run, StoreError};
use vault::{DeviceId, ErasedKey, Erasure, Frame, Head, Purpose, VaultId};

/// Frames that were set aside, looked at at a time: each may be large.
const ASIDE: usize = 16;

/// Carries out what these frames, of which each was found to count, say of erased people. Doing so twice does no more than doing
/// it once.
pub fn carry_out<S: FrameStore + ?Sized>(store: &S, run: &Run) -> Result<(), StoreError> {
    let frames = run.frames().iter();
    let words = frames.filter(|frame| frame.header().purpose == Purpose::Erasure);
    // What makes no sense is a later version's business, and is carried as it is.
    let erased: Vec<ErasedKey> = words
        .filter_map(|frame| Erasure::read(frame).ok())
        .flat_map(|erasure| erasure.keys)
        .collect();
    if erased.is_empty() {
        return Ok(());
    }
    let vault = run.vault();
    store.remember_erased(vault, &erased)?;
    for (device, _) in store.vector(vault)?.iter() {
        log(store, vault, device, &erased)?;
    }
    aside(store, vault, &erased)
}

fn log<S: FrameStore + ?Sized>(
    store: &S,
    vault: VaultId,
    device: DeviceId,
    erased: &[ErasedKey],
) -> Result<(), StoreError> {
    let mut next = 1_u64;
    loop {
        let page = store.range(vault, device, next, MOST_FRAMES, MOST_BYTES)?;
        if page.is_empty() {
            return Ok(());
        }
        next += page.len() as u64;
        let gone = gone(page, erased);
        if !gone.is_empty() {
            store.empty(&gone)?;
        }
    }
}

fn aside<S: FrameStore + ?Sized>(
    store: &S,
    vault: VaultId,
    erased: &[ErasedKey],
) -> Result<(), StoreError> {
    let mut after: Option<(DeviceId, Head)> = None;
    loop {
        let page = store.aside(vault, after, ASIDE)?;
        let frames = page.into_iter().map(|(_, bytes)| bytes);
        let frames: Vec<Vec<u8>> = frames.collect();
        let mut readable = frames.iter().rev().cloned().map(Frame::parse);
        let Some(last) = readable.find_map(Result::ok) else {
            return Ok(());
        };
        after = Some((last.device(), last.head()));
        for frame in gone(frames, erased) {
            store.empty(&[frame])?;
        }
    }
}

/// Those of these frames that are to be emptied. What can't be read is damage, which `verify` tells of.
fn gone(frames: Vec<Vec<u8>>, erased: &[ErasedKey]) -> Vec<Frame> {
    let frames = frames
        .into_iter()
        .filter_map(|bytes| Frame::parse(bytes).ok());
    let gone = |frame: &Frame| erased.iter().any(|key| key.covers(frame));
    frames
        .filter(|frame| !frame.is_emptied() && gone(frame))
        .collect()
}
