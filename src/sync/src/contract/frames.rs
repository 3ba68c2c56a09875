//! Promises about logs.

use super::sample::{Sample, append};
use super::{Breach, promise};
use crate::storage::{Append, Storage, StorageError, StoredFrame};
use vault::{DraftName, Frame, FrameHash, Head};

pub async fn appends_at_the_head<S: Storage>(storage: S, sample: &Sample) -> Result<(), Breach> {
    let (one, rest) = sample.log.split_at(1);
    storage.append(append(one, None)).await?;
    promise(
        storage.head(sample.device()).await? == Some(one[0].head()),
        "the head is the newest frame",
    )?;
    storage.append(append(rest, Some(one[0].head()))).await?;
    promise(
        storage.head(sample.device()).await? == Some(sample.log[6].head()),
        "the head moves with an append",
    )?;
    promise(
        storage.page(sample.device(), 1, 100).await? == kept(&sample.log),
        "frames come back as they were",
    )
}

pub async fn refuses_any_other_head<S: Storage>(storage: S, sample: &Sample) -> Result<(), Breach> {
    let log = &sample.log;
    storage.append(append(&log[..2], None)).await?;
    let head = Some(log[1].head());
    let forked = Head {
        sequence: 2,
        hash: FrameHash::NONE,
    };
    for expected in [None, Some(log[0].head()), Some(log[2].head()), Some(forked)] {
        let refused = storage.append(append(&log[2..3], expected)).await;
        promise(
            refused == Err(StorageError::Moved { head }),
            "an append at another head is refused with the head",
        )?;
    }
    promise(
        storage.head(sample.device()).await? == head,
        "a refused append leaves the head",
    )?;
    promise(
        storage.page(sample.device(), 1, 100).await? == kept(&log[..2]),
        "a refused append leaves the frames",
    )
}

pub async fn drops_drafts_with_the_append<S: Storage>(
    storage: S,
    sample: &Sample,
) -> Result<(), Breach> {
    let [one, two, gone] = [1, 2, 3].map(|byte| DraftName::from_bytes([byte; 16]));
    storage.put_draft(one, b"one").await?;
    storage.put_draft(two, b"two").await?;
    storage
        .append(Append {
            drop_drafts: &[one, gone],
            ..append(&sample.log, None)
        })
        .await?;
    promise(
        storage.draft(one).await?.is_none(),
        "an append drops the drafts that it names",
    )?;
    promise(
        storage.draft(two).await?.is_some(),
        "an append leaves the other drafts",
    )
}

pub async fn drops_nothing_with_a_refused_append<S: Storage>(
    storage: S,
    sample: &Sample,
) -> Result<(), Breach> {
    let name = DraftName::from_bytes([1; 16]);
    storage.put_draft(name, b"one").await?;
    let wrong = Some(sample.log[0].head());
    let refused = storage
        .append(Append {
            drop_drafts: &[name],
            ..append(&sample.log[1..], wrong)
        })
        .await;
    promise(
        refused == Err(StorageError::Moved { head: None }),
        "an append to a log that isn't there is refused",
    )?;
    promise(
        storage.draft(name).await?.is_some(),
        "a refused append drops no draft",
    )
}

pub async fn pages_in_order<S: Storage>(storage: S, sample: &Sample) -> Result<(), Breach> {
    let (log, device) = (&sample.log, sample.device());
    storage.append(append(log, None)).await?;
    promise(
        storage.page(device, 1, 3).await? == kept(&log[..3]),
        "a page has no more than was asked for",
    )?;
    promise(
        storage.page(device, 4, 3).await? == kept(&log[3..6]),
        "a page begins where it was asked to",
    )?;
    promise(
        storage.page(device, 7, 3).await? == kept(&log[6..]),
        "the last page has what is left",
    )?;
    promise(
        storage.page(device, 8, 3).await?.is_empty(),
        "there is nothing after the last page",
    )
}

pub async fn keeps_devices_apart<S: Storage>(storage: S, sample: &Sample) -> Result<(), Breach> {
    storage.append(append(&sample.log, None)).await?;
    storage.append(append(&sample.other, None)).await?;
    let other = sample.other[0].device();
    promise(
        storage.page(sample.device(), 1, 100).await? == kept(&sample.log),
        "a page is of one device",
    )?;
    promise(
        storage.page(other, 1, 100).await? == kept(&sample.other),
        "a page is of one device",
    )?;
    let mut heads = vec![
        (sample.device(), sample.log[6].head()),
        (other, sample.other[1].head()),
    ];
    heads.sort_by_key(|(device, _)| *device);
    promise(
        storage.vector().await? == heads,
        "the vector has every device's head, in order",
    )
}

fn kept(frames: &[Frame]) -> Vec<StoredFrame> {
    frames
        .iter()
        .map(|frame| StoredFrame {
            sequence: frame.sequence(),
            bytes: frame.bytes().to_vec(),
        })
        .collect()
}
