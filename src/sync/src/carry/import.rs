//! Taking a carry file in.

use super::{Apart, CarriedLog, CarryError, CarryFile, Report};
use crate::exchange::Run;
use crate::storage::{Append, Storage, StorageError};
use vault::{DeviceId, Frame, Head, Keys};

/// Frames compared at a time.
const PAGE: usize = 500;

/// Takes in what is new. Everything is checked first; then each log is written in runs, so that an import that breaks off
/// has taken whole runs, and the same import again takes the rest.
///
/// # Errors
///
/// The file is damaged, foreign or not genuine (nothing was changed then), or the storage fails.
pub async fn import<S: Storage>(
    storage: &S,
    keys: &Keys,
    bytes: &[u8],
) -> Result<Report, CarryError> {
    let file = CarryFile::parse(bytes)?;
    if file.vault != keys.vault() {
        return Err(CarryError::OtherVault);
    }
    for log in &file.logs {
        if !belongs(storage, keys, log).await? {
            return Err(CarryError::Stranger(log.device()));
        }
    }
    let mut report = Report {
        tablets: file.logs.len(),
        ..Report::default()
    };
    for log in file.logs {
        take(storage, log, &mut report).await?;
    }
    Ok(report)
}

/// Whether the log's device holds a key of the vault: its introduction, in the file or here, opens and names its key.
async fn belongs<S: Storage>(
    storage: &S,
    keys: &Keys,
    log: &CarriedLog,
) -> Result<bool, StorageError> {
    let carried = log.frames.first().filter(|first| first.sequence() == 1);
    let introduction = if let Some(first) = carried {
        Some(first.clone())
    } else {
        let kept = storage.page(log.device(), 1, 1).await?.pop();
        kept.and_then(|kept| Frame::parse(kept.bytes).ok())
    };
    let Some(introduction) = introduction else {
        // Neither here nor there: it will be told as a gap.
        return Ok(true);
    };
    let opened = keys.open_introduction(&introduction);
    Ok(opened.is_ok_and(|introduction| introduction.signing == log.key))
}

async fn take<S: Storage>(
    storage: &S,
    log: CarriedLog,
    report: &mut Report,
) -> Result<(), StorageError> {
    let device = log.device();
    let head = storage.head(device).await?;
    let here = head.map_or(0, |head| head.sequence);
    if log.first() > here.saturating_add(1) {
        report.apart.push(Apart::Gap {
            device,
            from: here + 1,
            through: log.first() - 1,
        });
        return Ok(());
    }
    if let Some(sequence) = fork(storage, device, head, &log.frames).await? {
        report.apart.push(Apart::Fork { device, sequence });
        return Ok(());
    }
    let (known, new): (Vec<Frame>, Vec<Frame>) = log
        .frames
        .into_iter()
        .partition(|frame| frame.sequence() <= here);
    report.known += known.len() as u64;
    write(storage, device, new, report).await
}

/// The first number under which another frame is kept here than in the file.
async fn fork<S: Storage>(
    storage: &S,
    device: DeviceId,
    head: Option<Head>,
    frames: &[Frame],
) -> Result<Option<u64>, StorageError> {
    let Some(head) = head else {
        return Ok(None);
    };
    let known = frames
        .iter()
        .filter(|frame| frame.sequence() <= head.sequence);
    for page in known.collect::<Vec<_>>().chunks(PAGE) {
        let kept = storage.page(device, page[0].sequence(), page.len()).await?;
        let differs = |frame: &&&Frame| {
            let same = |kept: &crate::StoredFrame| {
                // What is damaged here is no other frame.
                Frame::parse(kept.bytes.clone()).map_or(true, |kept| kept.hash() == frame.hash())
            };
            let mut there = kept.iter().filter(|kept| kept.sequence == frame.sequence());
            !there.all(same)
        };
        if let Some(frame) = page.iter().find(differs) {
            return Ok(Some(frame.sequence()));
        }
    }
    let next = frames
        .iter()
        .find(|frame| frame.sequence() == head.sequence + 1);
    let off = next.is_some_and(|next| next.header().previous != head.hash);
    Ok(off.then_some(head.sequence))
}

async fn write<S: Storage>(
    storage: &S,
    device: DeviceId,
    mut frames: Vec<Frame>,
    report: &mut Report,
) -> Result<(), StorageError> {
    while let Some(run) = Run::beginning(frames.clone()) {
        let append = Append {
            device,
            expected: run.before(),
            frames: run.frames(),
            drop_drafts: &[],
        };
        storage.append(append).await?;
        frames.drain(..run.frames().len());
        report.new += run.frames().len() as u64;
    }
    Ok(())
}
