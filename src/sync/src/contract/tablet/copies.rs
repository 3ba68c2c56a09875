//! The mark of a device that is a copy of another.

use super::sample::Sample;
use super::{Breach, promise};
use crate::storage::Storage;

cases! {
    what_is_marked_as_a_copy_stays_so,
    marking_twice_is_no_error,
    a_mark_leaves_the_key_file,
}

async fn what_is_marked_as_a_copy_stays_so<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    sample.found(s, 2).await?;
    s.mark_copy().await?;
    promise(s.is_copy().await?)
}

async fn marking_twice_is_no_error<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    what_is_marked_as_a_copy_stays_so(s, sample).await?;
    s.mark_copy().await?;
    promise(s.is_copy().await?)
}

async fn a_mark_leaves_the_key_file<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    what_is_marked_as_a_copy_stays_so(s, sample).await?;
    promise(s.key_file().await?.as_ref() == Some(&sample.key_file))
}
