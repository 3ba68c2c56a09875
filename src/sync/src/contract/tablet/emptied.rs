//! What stays of erased frames takes their places in all logs at once, and the checkpoint goes.

use super::sample::{Sample, append, kept, name};
use super::{Breach, promise};
use crate::storage::{Storage, StoredFrame};
use vault::Frame;

cases! {
    frames_of_several_logs_are_emptied_in_one_step,
    nothing_is_put_where_no_frame_was,
    emptying_drops_the_checkpoint,
    emptying_leaves_the_drafts,
}

/// Six frames of the first log with a draft and a checkpoint; the third and the last are emptied, and so are one that is not
/// there and the first of another device.
async fn emptied<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    s.append(append(&sample.log[..6], None)).await?;
    s.put_draft(name(1), b"draft").await?;
    s.put_checkpoint(&[vec![1]]).await?;
    Ok(s.empty(&gone(sample)).await?)
}

fn gone(sample: &Sample) -> [Frame; 4] {
    [
        &sample.log[2],
        &sample.log[5],
        &sample.log[6],
        &sample.other[0],
    ]
    .map(Frame::emptied)
}

/// The six, as they then are.
fn left(sample: &Sample) -> Vec<StoredFrame> {
    let [third, sixth, ..] = gone(sample);
    let mut left = sample.log[..6].to_vec();
    left[2] = third;
    left[5] = sixth;
    kept(&left)
}

async fn frames_of_several_logs_are_emptied_in_one_step<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    let other = &sample.other;
    s.append(append(other, None)).await?;
    emptied(s, sample).await?;
    promise(
        s.page(sample.device(), 1, 6).await? == left(sample)
            && s.page(other[0].device(), 1, 9).await?
                == kept(&[other[0].emptied(), other[1].clone()]),
    )
}

async fn nothing_is_put_where_no_frame_was<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    emptied(s, sample).await?;
    promise(
        s.page(sample.device(), 7, 10).await?.is_empty()
            && s.page(sample.other[0].device(), 1, 10).await?.is_empty(),
    )
}

async fn emptying_drops_the_checkpoint<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    emptied(s, sample).await?;
    promise(s.checkpoint().await?.is_empty())
}

async fn emptying_leaves_the_drafts<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    emptied(s, sample).await?;
    promise(s.draft(name(1)).await?.is_some())
}
