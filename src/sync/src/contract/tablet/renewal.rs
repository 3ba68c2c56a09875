//! A device takes another identity in one step.

use super::sample::{Sample, append, kept, name};
use super::{Breach, promise};
use crate::storage::{Renewal, Storage, StorageError};
use vault::Head;

cases! {
    another_identity_has_its_key_file,
    another_identity_begins_its_log,
    the_old_log_ends_where_it_should,
    the_old_log_may_stay_whole,
    the_old_log_may_go_whole,
    another_identity_is_no_copy,
    another_identity_has_no_checkpoint_yet,
    another_identity_keeps_the_drafts,
    another_identity_keeps_the_roll,
    another_identity_goes_on_with_its_log,
    another_identity_is_refused_at_another_head,
    a_refused_identity_leaves_the_key_file,
    a_refused_identity_leaves_the_logs,
    a_refused_identity_leaves_the_mark_of_a_copy,
}

const KEY_FILE: &[u8] = b"another key file";

/// The sample's other log takes the place of the first one, of which what is after `keep` goes.
fn renewal(sample: &Sample, expected: Option<Head>, keep: Option<Head>) -> Renewal<'_> {
    Renewal {
        key_file: KEY_FILE,
        frames: &sample.other,
        old: sample.device(),
        expected,
        keep,
    }
}

/// A device that was found to be a copy, with something of everything.
async fn copied<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    sample.found(s, 7).await?;
    s.put_checkpoint(&[vec![1]]).await?;
    s.put_roll(&[vec![1; 195]]).await?;
    s.put_draft(name(1), b"draft").await?;
    Ok(s.mark_copy().await?)
}

/// The same after it took another identity; of its old log so many frames stay.
async fn renewed<S: Storage>(s: &S, sample: &Sample, keep: usize) -> Result<(), Breach> {
    copied(s, sample).await?;
    let renewal = renewal(sample, sample.head(7), sample.head(keep));
    Ok(s.renew(renewal).await?)
}

/// The old log has so many frames, and its head is the last of them.
async fn ends_after<S: Storage>(s: &S, sample: &Sample, frames: usize) -> Result<(), Breach> {
    promise(
        s.head(sample.device()).await? == sample.head(frames)
            && s.page(sample.device(), 1, 100).await? == kept(&sample.log[..frames]),
    )
}

async fn another_identity_has_its_key_file<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    renewed(s, sample, 4).await?;
    promise(s.key_file().await?.as_deref() == Some(KEY_FILE))
}

async fn another_identity_begins_its_log<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    renewed(s, sample, 4).await?;
    let device = sample.other[0].device();
    promise(
        s.head(device).await? == Some(sample.other[1].head())
            && s.page(device, 1, 100).await? == kept(&sample.other),
    )
}

async fn the_old_log_ends_where_it_should<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    renewed(s, sample, 4).await?;
    ends_after(s, sample, 4).await
}

async fn the_old_log_may_stay_whole<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    renewed(s, sample, 7).await?;
    ends_after(s, sample, 7).await
}

async fn the_old_log_may_go_whole<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    renewed(s, sample, 0).await?;
    ends_after(s, sample, 0).await
}

async fn another_identity_is_no_copy<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    renewed(s, sample, 4).await?;
    promise(!s.is_copy().await?)
}

async fn another_identity_has_no_checkpoint_yet<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    renewed(s, sample, 4).await?;
    promise(s.checkpoint().await?.is_empty())
}

async fn another_identity_keeps_the_drafts<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    renewed(s, sample, 4).await?;
    promise(s.draft(name(1)).await?.as_deref() == Some(b"draft"))
}

async fn another_identity_keeps_the_roll<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    renewed(s, sample, 4).await?;
    promise(s.roll().await? == [vec![1; 195]])
}

async fn another_identity_goes_on_with_its_log<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    copied(s, sample).await?;
    let (first, rest) = sample.other.split_at(1);
    let renewal = Renewal {
        frames: first,
        ..renewal(sample, sample.head(7), sample.head(4))
    };
    s.renew(renewal).await?;
    s.append(append(rest, Some(first[0].head()))).await?;
    promise(s.page(first[0].device(), 1, 100).await? == kept(&sample.other))
}

/// It was refused, since the old log has another head than was thought.
async fn refused<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    copied(s, sample).await?;
    let ended = s.renew(renewal(sample, sample.head(6), None)).await;
    let head = sample.head(7);
    promise(ended == Err(StorageError::Moved { head }))
}

async fn another_identity_is_refused_at_another_head<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    refused(s, sample).await
}

async fn a_refused_identity_leaves_the_key_file<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    refused(s, sample).await?;
    promise(s.key_file().await?.as_ref() == Some(&sample.key_file))
}

async fn a_refused_identity_leaves_the_logs<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    refused(s, sample).await?;
    promise(s.vector().await?.len() == 1)?;
    ends_after(s, sample, 7).await
}

async fn a_refused_identity_leaves_the_mark_of_a_copy<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    refused(s, sample).await?;
    promise(s.is_copy().await? && s.checkpoint().await? == [vec![1]])
}
