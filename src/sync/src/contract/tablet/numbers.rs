//! Frames come back with the numbers that they are kept under.

use super::sample::{Sample, append, kept};
use super::{Breach, promise};
use crate::storage::Storage;
use vault::Frame;

cases! {
    frames_come_back_with_their_numbers,
    a_page_within_a_log_has_its_own_numbers,
    emptied_frames_come_back_with_their_numbers,
}

async fn frames_come_back_with_their_numbers<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    s.append(append(&sample.log, None)).await?;
    promise(s.page(sample.device(), 1, 100).await? == kept(&sample.log))
}

async fn a_page_within_a_log_has_its_own_numbers<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    s.append(append(&sample.long, None)).await?;
    let page = s.page(sample.long[0].device(), 250, 20).await?;
    promise(page == kept(&sample.long[249..269]))
}

async fn emptied_frames_come_back_with_their_numbers<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    s.append(append(&sample.log, None)).await?;
    let emptied: Vec<_> = sample.log.iter().map(Frame::emptied).collect();
    s.empty(&emptied).await?;
    promise(s.page(sample.device(), 1, 100).await? == kept(&emptied))
}
