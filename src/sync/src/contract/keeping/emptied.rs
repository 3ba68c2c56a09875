//! What stays of erased frames takes their places.

use super::asking::{ALL, holds, keep, page, refuse};
use super::keeper::Keeps;
use super::sample::{SMALLEST, Vault, head};
use crate::contract::{Breach, Ended, promise};
use std::ops::Range;
use vault::Frame;
use vault::frame::SHORTEST;

cases! {
    what_stays_of_a_frame_stands_in_its_place,
    what_was_in_it_is_gone,
    the_first_and_the_newest_can_be_emptied,
    a_whole_log_can_be_emptied,
    emptying_leaves_the_heads,
    emptying_leaves_other_logs,
    emptying_twice_is_emptying_once,
    emptying_one_by_one_is_emptying_all,
    emptying_nothing_changes_nothing,
    nothing_is_put_beyond_the_end,
    nothing_is_put_where_no_log_is,
    a_log_may_begin_where_nothing_was_put,
    a_log_goes_on_after_an_emptied_frame,
    a_log_with_emptied_frames_goes_on,
    emptied_frames_are_appended_as_any,
    a_log_of_emptied_frames_alone_is_a_log,
    an_emptied_frame_is_not_filled_again,
    emptied_frames_count_in_a_page,
}

/// What stays of these.
fn left(frames: &[Frame]) -> Vec<Frame> {
    frames.iter().map(Frame::emptied).collect()
}

/// The log with what stays of those in this range.
fn left_in(log: &[Frame], gone: Range<usize>) -> Vec<Frame> {
    let (before, rest) = log.split_at(gone.start);
    let (gone, after) = rest.split_at(gone.len());
    [before, &left(gone), after].concat()
}

/// A log is kept, and those in this range are emptied. The log as it then is.
async fn emptied(k: &impl Keeps, log: &[Frame], gone: Range<usize>) -> Result<Vec<Frame>, Breach> {
    keep(k, log).await?;
    k.empty(&left(&log[gone.clone()])).await?;
    Ok(left_in(log, gone))
}

async fn what_stays_of_a_frame_stands_in_its_place(k: &impl Keeps, v: Vault) -> Ended {
    let log = emptied(k, &v.device(1).log(6), 2..4).await?;
    holds(k, v.device(1), &log).await
}

/// More of it than the signature, which stays, is looked for in what comes back; and that is shorter than any frame.
async fn what_was_in_it_is_gone(k: &impl Keeps, v: Vault) -> Ended {
    let frame = v.device(1).frame(None, SMALLEST << 8, 0xb7);
    emptied(k, &[frame], 0..1).await?;
    let back = k.page(v.device(1).id, 1, 1).await?.concat();
    let within = back.windows(65).any(|bytes| bytes == [0xb7; 65].as_slice());
    promise(!back.is_empty() && back.len() < SHORTEST && !within)
}

async fn the_first_and_the_newest_can_be_emptied(k: &impl Keeps, v: Vault) -> Ended {
    let log = emptied(k, &v.device(1).log(5), 0..1).await?;
    k.empty(&left(&log[4..])).await?;
    holds(k, v.device(1), &left_in(&log, 4..5)).await
}

async fn a_whole_log_can_be_emptied(k: &impl Keeps, v: Vault) -> Ended {
    let log = emptied(k, &v.device(1).log(120), 0..120).await?;
    holds(k, v.device(1), &log).await
}

async fn emptying_leaves_the_heads(k: &impl Keeps, v: Vault) -> Ended {
    keep(k, &v.device(2).log(2)).await?;
    let log = v.device(1).log(4);
    keep(k, &log).await?;
    let before = k.heads().await?;
    k.empty(&left(&log[1..])).await?;
    promise(k.heads().await? == before)
}

async fn emptying_leaves_other_logs(k: &impl Keeps, v: Vault) -> Ended {
    let other = v.device(2).log(4);
    keep(k, &other).await?;
    emptied(k, &v.device(1).log(4), 0..4).await?;
    holds(k, v.device(2), &other).await
}

async fn emptying_twice_is_emptying_once(k: &impl Keeps, v: Vault) -> Ended {
    let log = emptied(k, &v.device(1).log(5), 1..3).await?;
    k.empty(&log[1..3]).await?;
    holds(k, v.device(1), &log).await
}

async fn emptying_one_by_one_is_emptying_all(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(6);
    keep(k, &log).await?;
    for at in [3, 1, 2] {
        k.empty(&left(&log[at..=at])).await?;
    }
    holds(k, v.device(1), &left_in(&log, 1..4)).await
}

async fn emptying_nothing_changes_nothing(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(3);
    keep(k, &log).await?;
    k.empty(&[]).await?;
    holds(k, v.device(1), &log).await
}

async fn nothing_is_put_beyond_the_end(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(5);
    keep(k, &log[..3]).await?;
    k.empty(&left(&log[2..])).await?;
    holds(k, v.device(1), &left_in(&log[..3], 2..3)).await?;
    keep(k, &log[3..]).await?;
    holds(k, v.device(1), &left_in(&log, 2..3)).await
}

async fn nothing_is_put_where_no_log_is(k: &impl Keeps, v: Vault) -> Ended {
    keep(k, &v.device(1).log(3)).await?;
    k.empty(&left(&v.device(2).log(3))).await?;
    promise(k.heads().await?.len() == 1)?;
    holds(k, v.device(2), &[]).await
}

async fn a_log_may_begin_where_nothing_was_put(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(3);
    k.empty(&left(&log)).await?;
    keep(k, &log).await?;
    holds(k, v.device(1), &log).await
}

async fn a_log_goes_on_after_an_emptied_frame(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(6);
    let left = emptied(k, &log[..3], 2..3).await?;
    keep(k, &log[3..]).await?;
    holds(k, v.device(1), &[&left[..], &log[3..]].concat()).await
}

async fn a_log_with_emptied_frames_goes_on(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(6);
    let left = emptied(k, &log[..4], 0..2).await?;
    keep(k, &log[4..]).await?;
    holds(k, v.device(1), &[&left[..], &log[4..]].concat()).await
}

async fn emptied_frames_are_appended_as_any(k: &impl Keeps, v: Vault) -> Ended {
    let log = left_in(&v.device(1).log(6), 2..4);
    keep(k, &log[..3]).await?;
    keep(k, &log[3..]).await?;
    holds(k, v.device(1), &log).await
}

async fn a_log_of_emptied_frames_alone_is_a_log(k: &impl Keeps, v: Vault) -> Ended {
    let log = left(&v.device(1).log(4));
    keep(k, &log).await?;
    holds(k, v.device(1), &log).await
}

/// Whoever has it still, and pushes it again, is refused as with any frame that is there.
async fn an_emptied_frame_is_not_filled_again(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(4);
    let left = emptied(k, &log, 2..4).await?;
    refuse(k, &log, head(&log)).await?;
    refuse(k, &log[3..], head(&log)).await?;
    holds(k, v.device(1), &left).await
}

async fn emptied_frames_count_in_a_page(k: &impl Keeps, v: Vault) -> Ended {
    let log = emptied(k, &v.device(1).log(9), 2..5).await?;
    page(k, v.device(1), (2, 4), &log[1..5]).await?;
    page(k, v.device(1), (4, ALL), &log[3..]).await
}
