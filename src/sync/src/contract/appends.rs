//! A log grows at its head and nowhere else, and drafts go in the same step.

use super::sample::{FORKED, Sample, append, kept, name};
use super::{Breach, promise};
use crate::storage::{Append, Storage, StorageError};
use vault::Head;

cases! {
    the_head_is_the_newest_frame,
    an_append_moves_the_head,
    frames_come_back_as_they_were,
    several_appends_make_one_log,
    an_append_leaves_other_logs,
    the_largest_frame_is_kept_whole,
    an_append_to_a_log_that_is_not_there_is_refused,
    an_append_that_expects_no_log_is_refused,
    an_append_after_an_older_head_is_refused,
    an_append_after_a_later_head_is_refused,
    an_append_after_a_fork_is_refused,
    a_refused_append_leaves_the_head,
    a_refused_append_leaves_the_frames,
    of_two_appends_at_once_one_is_kept,
    an_append_drops_the_drafts_that_it_names,
    an_append_leaves_the_other_drafts,
    an_append_may_name_a_draft_that_is_not_there,
    a_refused_append_drops_no_draft,
    an_append_of_no_frames_drops_drafts,
    an_append_of_no_frames_leaves_the_head,
    an_append_of_no_frames_is_refused_at_another_head,
}

async fn the_head_is_the_newest_frame<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    s.append(append(&sample.log[..3], None)).await?;
    promise(s.head(sample.device()).await? == sample.head(3))
}

async fn an_append_moves_the_head<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    s.append(append(&sample.log[..3], None)).await?;
    s.append(append(&sample.log[3..], sample.head(3))).await?;
    promise(s.head(sample.device()).await? == sample.head(7))
}

async fn frames_come_back_as_they_were<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    s.append(append(&sample.log, None)).await?;
    promise(s.page(sample.device(), 1, 100).await? == kept(&sample.log))
}

async fn several_appends_make_one_log<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    for at in 0..sample.log.len() {
        s.append(append(&sample.log[at..=at], sample.head(at)))
            .await?;
    }
    promise(s.page(sample.device(), 1, 100).await? == kept(&sample.log))
}

async fn an_append_leaves_other_logs<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    let other = sample.other[0].device();
    s.append(append(&sample.other, None)).await?;
    s.append(append(&sample.log, None)).await?;
    promise(
        s.head(other).await? == Some(sample.other[1].head())
            && s.page(other, 1, 100).await? == kept(&sample.other),
    )
}

async fn the_largest_frame_is_kept_whole<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    s.append(append(&sample.large, None)).await?;
    promise(s.page(sample.large[0].device(), 1, 100).await? == kept(&sample.large))
}

async fn an_append_to_a_log_that_is_not_there_is_refused<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    let refused = s.append(append(&sample.log[1..], sample.head(1))).await;
    promise(refused == Err(StorageError::Moved { head: None }))
}

/// Two frames are there, and the third comes after another head than theirs.
async fn refused<S: Storage>(s: &S, sample: &Sample, expected: Option<Head>) -> Result<(), Breach> {
    s.append(append(&sample.log[..2], None)).await?;
    let ended = s.append(append(&sample.log[2..3], expected)).await;
    let head = sample.head(2);
    promise(ended == Err(StorageError::Moved { head }))
}

async fn an_append_that_expects_no_log_is_refused<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    refused(s, sample, None).await
}

async fn an_append_after_an_older_head_is_refused<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    refused(s, sample, sample.head(1)).await
}

async fn an_append_after_a_later_head_is_refused<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    refused(s, sample, sample.head(3)).await
}

async fn an_append_after_a_fork_is_refused<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    refused(s, sample, Some(FORKED)).await
}

async fn a_refused_append_leaves_the_head<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    refused(s, sample, Some(FORKED)).await?;
    promise(s.head(sample.device()).await? == sample.head(2))
}

async fn a_refused_append_leaves_the_frames<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    refused(s, sample, Some(FORKED)).await?;
    promise(s.page(sample.device(), 1, 100).await? == kept(&sample.log[..2]))
}

async fn of_two_appends_at_once_one_is_kept<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    s.append(append(&sample.log[..2], None)).await?;
    let one = s.append(append(&sample.log[2..3], sample.head(2)));
    let other = s.append(append(&sample.log[2..5], sample.head(2)));
    let (one, other) = futures::future::join(one, other).await;
    let (frames, refused) = if one.is_ok() { (3, other) } else { (5, one) };
    let head = sample.head(frames);
    promise(
        refused == Err(StorageError::Moved { head })
            && s.page(sample.device(), 1, 100).await? == kept(&sample.log[..frames]),
    )
}

/// Two drafts are kept, and an append drops the first and one that isn't there.
async fn dropped<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    s.put_draft(name(1), b"one").await?;
    s.put_draft(name(2), b"two").await?;
    let append = Append {
        drop_drafts: &[name(1), name(3)],
        ..append(&sample.log, None)
    };
    Ok(s.append(append).await?)
}

async fn an_append_drops_the_drafts_that_it_names<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    dropped(s, sample).await?;
    promise(s.draft(name(1)).await?.is_none())
}

async fn an_append_leaves_the_other_drafts<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    dropped(s, sample).await?;
    promise(s.draft(name(2)).await?.as_deref() == Some(b"two"))
}

async fn an_append_may_name_a_draft_that_is_not_there<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    dropped(s, sample).await?;
    promise(s.head(sample.device()).await? == sample.head(7))
}

async fn a_refused_append_drops_no_draft<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    s.put_draft(name(1), b"one").await?;
    let wrong = Append {
        drop_drafts: &[name(1)],
        ..append(&sample.log[1..], sample.head(1))
    };
    let refused = s.append(wrong).await;
    promise(refused.is_err() && s.draft(name(1)).await?.is_some())
}

/// An append that only drops a draft.
async fn of_no_frames<S: Storage>(
    s: &S,
    sample: &Sample,
    expected: Option<Head>,
) -> Result<Result<(), StorageError>, Breach> {
    s.append(append(&sample.log[..2], None)).await?;
    s.put_draft(name(1), b"one").await?;
    let append = Append {
        device: sample.device(),
        expected,
        frames: &[],
        drop_drafts: &[name(1)],
    };
    Ok(s.append(append).await)
}

async fn an_append_of_no_frames_drops_drafts<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    of_no_frames(s, sample, sample.head(2)).await??;
    promise(s.draft(name(1)).await?.is_none())
}

async fn an_append_of_no_frames_leaves_the_head<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    of_no_frames(s, sample, sample.head(2)).await??;
    promise(s.head(sample.device()).await? == sample.head(2))
}

async fn an_append_of_no_frames_is_refused_at_another_head<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    let refused = of_no_frames(s, sample, sample.head(1)).await?;
    let head = sample.head(2);
    promise(refused == Err(StorageError::Moved { head }) && s.draft(name(1)).await?.is_some())
}
