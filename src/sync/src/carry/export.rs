//! Writing a carry file.

use super::{CarryError, FORMAT, MAGIC, WITH_ROLL};
use crate::exchange::Vector;
use crate::storage::{Storage, StorageError};
use std::fmt;
use vault::frame::PublicKey;
use vault::{DeviceId, Frame, Keys, VaultId, carry_sum};

/// Frames read at a time.
const PAGE: usize = 500;

/// A carry file, and what is in it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Exported {
    /// The file.
    pub bytes: Vec<u8>,
    /// How many frames are in it.
    pub frames: u64,
    /// Logs that are not wholly in it, because something in them can't be read here, with the number of the first entry
    /// that isn't.
    pub left_out: Vec<(DeviceId, u64)>,
}

impl fmt::Display for Exported {
    /// A plain sentence without its point.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let entries = if self.frames == 1 { "entry" } else { "entries" };
        let kilobytes = self.bytes.len().div_ceil(1000);
        write!(out, "{} {entries}, {kilobytes} kB", self.frames)?;
        self.left_out.iter().try_for_each(|(device, from)| {
            let device = device.to_string();
            write!(
                out,
                "; of tablet {} nothing from entry {from} on, because that can\u{2019}t be read here",
                &device[..8]
            )
        })
    }
}

/// Writes what is beyond `theirs`, or everything where that is empty, and the roll that is kept, if any. What the other side has at least,
/// [`super::CarryFile::vector`] tells of a file that came from there.
///
/// # Errors
///
/// There is nothing to write; the storage fails.
pub async fn export<S: Storage>(
    storage: &S,
    keys: &Keys,
    theirs: &Vector,
) -> Result<Exported, CarryError> {
    let have: Vector = storage.vector().await?.into_iter().collect();
    let mut exported = Exported {
        bytes: Vec::new(),
        frames: 0,
        left_out: Vec::new(),
    };
    let mut logs: u16 = 0;
    for device in have.beyond(theirs) {
        let from = theirs.sequence(device) + 1;
        let frames = match key(storage, keys, device).await? {
            Some(key) => sound(storage, device, from, &key)
                .await?
                .map(|frames| (key, frames)),
            None => None,
        };
        let through = match frames {
            Some((key, frames)) => {
                logs = logs.checked_add(1).ok_or_else(too_many)?;
                write_log(&mut exported.bytes, &key, &frames);
                exported.frames += frames.len() as u64;
                from - 1 + frames.len() as u64
            }
            None => from - 1,
        };
        if through < have.sequence(device) {
            exported.left_out.push((device, through + 1));
        }
    }
    if logs == 0 {
        return Err(CarryError::Nothing);
    }
    let roll = storage.roll().await?;
    exported.bytes = sealed(keys.vault(), logs, &exported.bytes, &roll)?;
    Ok(exported)
}

fn too_many() -> CarryError {
    StorageError::Other("there are more tablets than a carry file can hold".into()).into()
}

/// A device's key, from its introduction.
async fn key<S: Storage>(
    storage: &S,
    keys: &Keys,
    device: DeviceId,
) -> Result<Option<PublicKey>, StorageError> {
    if device == keys.device() {
        return Ok(Some(keys.public()));
    }
    let first = storage.page(device, 1, 1).await?.pop();
    Ok(first.and_then(|kept| {
        let frame = Frame::parse(kept.bytes).ok()?;
        let introduction = keys.open_introduction(&frame).ok()?;
        (introduction.signing.device() == device).then_some(introduction.signing)
    }))
}

/// The frames of a log from a number on, up to the first that is missing or damaged; none where that is the first.
async fn sound<S: Storage>(
    storage: &S,
    device: DeviceId,
    from: u64,
    key: &PublicKey,
) -> Result<Option<Vec<Frame>>, StorageError> {
    let mut frames: Vec<Frame> = Vec::new();
    loop {
        let next = from + frames.len() as u64;
        let page = storage.page(device, next, PAGE).await?;
        let kept = page.len();
        let before = frames.len();
        for (number, stored) in (next..).zip(page) {
            let frame = Frame::parse(stored.bytes)
                .ok()
                .filter(|frame| frame.sequence() == number && frame.verify(key).is_ok());
            let follows = |frame: &Frame| {
                frames
                    .last()
                    .is_none_or(|last| last.hash() == frame.header().previous)
            };
            match frame.filter(follows) {
                Some(frame) => frames.push(frame),
                None => break,
            }
        }
        if kept < PAGE || frames.len() < before + kept {
            return Ok((!frames.is_empty()).then_some(frames));
        }
    }
}

pub(super) fn write_log(bytes: &mut Vec<u8>, key: &PublicKey, frames: &[Frame]) {
    bytes.extend_from_slice(&key.bytes());
    bytes.extend_from_slice(&(frames.len() as u32).to_be_bytes());
    for frame in frames {
        bytes.extend_from_slice(&(frame.bytes().len() as u32).to_be_bytes());
        bytes.extend_from_slice(frame.bytes());
    }
}

pub(super) fn sealed(
    vault: VaultId,
    logs: u16,
    written: &[u8],
    roll: &[Vec<u8>],
) -> Result<Vec<u8>, CarryError> {
    let mut bytes = MAGIC.to_vec();
    bytes.push(if roll.is_empty() { FORMAT } else { WITH_ROLL });
    bytes.extend_from_slice(vault.as_bytes());
    bytes.extend_from_slice(&logs.to_be_bytes());
    bytes.extend_from_slice(written);
    if !roll.is_empty() {
        let count = u16::try_from(roll.len()).map_err(|_| too_many())?;
        bytes.extend_from_slice(&count.to_be_bytes());
        bytes.extend_from_slice(&roll.concat());
    }
    let sum = carry_sum(&bytes);
    bytes.extend_from_slice(&sum);
    Ok(bytes)
}
