//! Promises about the checkpoint, the roll and frames whose content was dropped.

use super::sample::{Sample, append};
use super::{Breach, promise};
use crate::storage::{Storage, StoredFrame};
use vault::{DraftName, Frame};

pub async fn replaces_the_checkpoint<S: Storage>(
    storage: S,
    sample: &Sample,
) -> Result<(), Breach> {
    storage.append(append(&sample.log, None)).await?;
    // More pieces than digits sort by, and then fewer.
    let long: Vec<Vec<u8>> = (0..12).map(|piece| vec![piece; 300]).collect();
    storage.put_checkpoint(&long).await?;
    promise(
        storage.checkpoint().await? == long,
        "a checkpoint's pieces come back in order",
    )?;
    storage.put_checkpoint(&long[3..5]).await?;
    promise(
        storage.checkpoint().await? == long[3..5],
        "a checkpoint replaces all of the one before",
    )?;
    storage.put_checkpoint(&[]).await?;
    promise(
        storage.checkpoint().await?.is_empty(),
        "a checkpoint of no pieces is none",
    )?;
    promise(
        storage.head(sample.device()).await? == Some(sample.log[6].head()),
        "a checkpoint changes no log",
    )
}

pub async fn replaces_the_roll<S: Storage>(storage: S, sample: &Sample) -> Result<(), Breach> {
    let roll: Vec<Vec<u8>> = (0..12).map(|number| vec![number; 195]).collect();
    storage.put_roll(&roll[..11]).await?;
    storage.put_roll(&roll).await?;
    promise(
        storage.roll().await? == roll,
        "a roll's statements come back in order",
    )?;
    // A roll may be there before the vault is: nothing of a vault is lost by that.
    storage
        .found(&sample.key_file.to_bytes(), &sample.log[0])
        .await?;
    storage.put_roll(&roll[..2]).await?;
    promise(
        storage.roll().await? == roll[..2],
        "a roll replaces all of the one before",
    )
}

pub async fn empties_frames_in_their_places<S: Storage>(
    storage: S,
    sample: &Sample,
) -> Result<(), Breach> {
    let name = DraftName::from_bytes([1; 16]);
    storage.append(append(&sample.log[..6], None)).await?;
    storage.put_draft(name, b"draft").await?;
    storage.put_checkpoint(&[vec![1]]).await?;
    let gone = [
        &sample.log[2],
        &sample.log[5],
        &sample.log[6],
        &sample.other[0],
    ];
    let emptied = gone.map(Frame::emptied);
    storage.empty(&emptied).await?;
    let expected = sample.log[..6].iter().map(|frame| {
        let stays = emptied.iter().find(|one| one.hash() == frame.hash());
        StoredFrame {
            sequence: frame.sequence(),
            bytes: stays.unwrap_or(frame).bytes().to_vec(),
        }
    });
    promise(
        storage.page(sample.device(), 1, 100).await? == expected.collect::<Vec<_>>(),
        "what stays of a frame stands in its place, and only where there was one",
    )?;
    promise(
        storage.vector().await? == [(sample.device(), sample.log[5].head())],
        "emptying frames leaves the heads",
    )?;
    promise(
        storage.checkpoint().await?.is_empty(),
        "emptying frames drops the checkpoint",
    )?;
    promise(
        storage.draft(name).await?.is_some(),
        "emptying frames leaves the drafts",
    )
}
