//! The head that is expected is the caller's word, any number of frames come at once, and drafts go in the same step.

use super::sample::{FORKED, Sample, append, kept, name};
use super::{Breach, promise};
use crate::exchange::MOST_FRAMES;
use crate::storage::{Append, Storage, StorageError};
use vault::Head;

cases! {
    more_frames_than_a_run_are_kept_whole,
    an_append_that_expects_no_log_is_refused,
    an_append_after_an_older_head_is_refused,
    an_append_after_a_later_head_is_refused,
    an_append_after_a_fork_is_refused,
    a_refused_append_leaves_the_frames,
    an_append_drops_the_drafts_that_it_names,
    an_append_leaves_the_other_drafts,
    an_append_may_name_a_draft_that_is_not_there,
    a_refused_append_drops_no_draft,
    an_append_of_no_frames_drops_drafts,
    an_append_of_no_frames_leaves_the_head,
    an_append_of_no_frames_is_refused_at_another_head,
}

async fn more_frames_than_a_run_are_kept_whole<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    s.append(append(&sample.long, None)).await?;
    promise(
        sample.long.len() > MOST_FRAMES
            && s.page(sample.long[0].device(), 1, 1000).await? == kept(&sample.long),
    )
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

async fn a_refused_append_leaves_the_frames<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    refused(s, sample, Some(FORKED)).await?;
    promise(s.page(sample.device(), 1, 100).await? == kept(&sample.log[..2]))
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
