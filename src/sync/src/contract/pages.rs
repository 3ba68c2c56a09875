//! What is read of logs is in order, of one device, and no more than was asked for.

use super::sample::{Sample, append, kept};
use super::{Breach, promise};
use crate::storage::Storage;
use std::ops::Range;

cases! {
    a_page_has_no_more_than_was_asked_for,
    a_page_begins_where_it_was_asked_to,
    the_last_page_has_what_is_left,
    nothing_comes_after_the_last_page,
    a_page_of_no_frames_is_empty,
    a_page_from_0_begins_at_the_first_frame,
    a_page_from_the_greatest_number_is_empty,
    a_page_is_of_one_device,
    a_page_of_an_unknown_device_is_empty,
    a_long_log_is_in_order,
    an_unknown_device_has_no_head,
    the_vector_has_every_log_in_order,
}

/// All of the first log is kept, and a page of it has just the frames in this range.
async fn page<S: Storage>(
    s: &S,
    sample: &Sample,
    (from, limit): (u64, usize),
    frames: Range<usize>,
) -> Result<(), Breach> {
    s.append(append(&sample.log, None)).await?;
    let page = s.page(sample.device(), from, limit).await?;
    promise(page == kept(&sample.log[frames]))
}

async fn a_page_has_no_more_than_was_asked_for<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    page(s, sample, (1, 3), 0..3).await
}

async fn a_page_begins_where_it_was_asked_to<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    page(s, sample, (4, 3), 3..6).await
}

async fn the_last_page_has_what_is_left<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    page(s, sample, (7, 3), 6..7).await
}

async fn nothing_comes_after_the_last_page<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    page(s, sample, (8, 3), 0..0).await
}

async fn a_page_of_no_frames_is_empty<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    page(s, sample, (1, 0), 0..0).await
}

async fn a_page_from_0_begins_at_the_first_frame<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    page(s, sample, (0, 2), 0..2).await
}

async fn a_page_from_the_greatest_number_is_empty<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    page(s, sample, (u64::MAX, 10), 0..0).await
}

/// The two logs that every vault of two devices has.
async fn two_logs<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    s.append(append(&sample.log, None)).await?;
    Ok(s.append(append(&sample.other, None)).await?)
}

async fn a_page_is_of_one_device<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    two_logs(s, sample).await?;
    promise(
        s.page(sample.device(), 1, 100).await? == kept(&sample.log)
            && s.page(sample.other[0].device(), 1, 100).await? == kept(&sample.other),
    )
}

async fn a_page_of_an_unknown_device_is_empty<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    two_logs(s, sample).await?;
    promise(s.page(sample.long[0].device(), 1, 100).await?.is_empty())
}

async fn a_long_log_is_in_order<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    let device = sample.long[0].device();
    s.append(append(&sample.long, None)).await?;
    promise(
        s.page(device, 1, 1000).await? == kept(&sample.long)
            && s.page(device, 250, 20).await? == kept(&sample.long[249..269]),
    )
}

async fn an_unknown_device_has_no_head<S: Storage>(s: &S, sample: &Sample) -> Result<(), Breach> {
    two_logs(s, sample).await?;
    promise(s.head(sample.long[0].device()).await?.is_none())
}

async fn the_vector_has_every_log_in_order<S: Storage>(
    s: &S,
    sample: &Sample,
) -> Result<(), Breach> {
    two_logs(s, sample).await?;
    s.append(append(&sample.large, None)).await?;
    let newest = [&sample.log[6], &sample.other[1], &sample.large[1]];
    let mut heads = newest.map(|frame| (frame.device(), frame.head()));
    heads.sort_by_key(|(device, _)| *device);
    promise(s.vector().await? == heads)
}
