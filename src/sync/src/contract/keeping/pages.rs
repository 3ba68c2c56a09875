//! What is read of logs is in order, of one device, and no more than was asked for.

use super::asking::{ALL, holds, keep, page};
use super::keeper::Keeps;
use super::sample::{SMALLEST, Vault, head};
use crate::contract::{Ended, promise};
use std::ops::Range;
use vault::Frame;

cases! {
    a_page_has_no_more_than_was_asked_for,
    a_page_of_none_is_empty,
    a_page_of_one_has_that_frame,
    a_page_begins_where_it_was_asked_to,
    a_page_from_0_begins_at_the_first_frame,
    the_last_page_has_what_is_left,
    nothing_comes_after_the_last_page,
    nothing_comes_from_a_number_beyond_all,
    a_limit_beyond_all_gives_all,
    pages_one_after_another_make_the_log,
    a_page_of_an_unknown_device_is_empty,
    a_page_is_of_one_device,
    a_page_ends_before_the_log_of_the_next_id,
    a_page_after_the_end_has_nothing_of_the_next_id,
    a_long_log_is_in_order,
    a_page_within_a_long_log_is_in_order,
    pages_of_every_size_of_a_long_log_are_whole,
    short_and_long_frames_are_counted_alike,
    reading_changes_nothing,
}

/// A log of seven frames is kept, and a page of it has just the frames in this range.
async fn of_seven(k: &impl Keeps, v: Vault, asked: (u64, usize), frames: Range<usize>) -> Ended {
    let log = v.device(1).log(7);
    keep(k, &log).await?;
    page(k, v.device(1), asked, &log[frames]).await
}

async fn a_page_has_no_more_than_was_asked_for(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(7);
    keep(k, &log).await?;
    for limit in 1..=8 {
        page(k, v.device(1), (1, limit), &log[..limit.min(7)]).await?;
    }
    Ok(())
}

async fn a_page_of_none_is_empty(k: &impl Keeps, v: Vault) -> Ended {
    of_seven(k, v, (1, 0), 0..0).await
}

async fn a_page_of_one_has_that_frame(k: &impl Keeps, v: Vault) -> Ended {
    of_seven(k, v, (4, 1), 3..4).await
}

async fn a_page_begins_where_it_was_asked_to(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(7);
    keep(k, &log).await?;
    for from in 1..=7 {
        let end = (from + 2).min(7);
        page(k, v.device(1), (from as u64, 3), &log[from - 1..end]).await?;
    }
    Ok(())
}

async fn a_page_from_0_begins_at_the_first_frame(k: &impl Keeps, v: Vault) -> Ended {
    of_seven(k, v, (0, 2), 0..2).await
}

async fn the_last_page_has_what_is_left(k: &impl Keeps, v: Vault) -> Ended {
    of_seven(k, v, (6, 5), 5..7).await
}

async fn nothing_comes_after_the_last_page(k: &impl Keeps, v: Vault) -> Ended {
    of_seven(k, v, (8, 3), 0..0).await
}

/// Where a number of 32 bits, one with a sign, or the greatest of all ends.
async fn nothing_comes_from_a_number_beyond_all(k: &impl Keeps, v: Vault) -> Ended {
    keep(k, &v.device(1).log(7)).await?;
    for end in [1 << 31, 1 << 32, 1 << 53, 1 << 63, u64::MAX] {
        for from in [end - 1, end] {
            page(k, v.device(1), (from, 3), &[]).await?;
        }
    }
    page(k, v.device(1), (u64::MAX, usize::MAX), &[]).await
}

async fn a_limit_beyond_all_gives_all(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(7);
    keep(k, &log).await?;
    for limit in [usize::MAX >> 1, usize::MAX] {
        page(k, v.device(1), (1, limit), &log).await?;
    }
    Ok(())
}

async fn pages_one_after_another_make_the_log(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(23);
    keep(k, &log).await?;
    for size in [1, 2, 7, 22, 23] {
        for (number, frames) in log.chunks(size).enumerate() {
            let from = (number * size) as u64 + 1;
            page(k, v.device(1), (from, size), frames).await?;
        }
    }
    Ok(())
}

async fn a_page_of_an_unknown_device_is_empty(k: &impl Keeps, v: Vault) -> Ended {
    keep(k, &v.device(1).log(2)).await?;
    keep(k, &v.device(3).log(2)).await?;
    page(k, v.device(2), (1, ALL), &[]).await
}

async fn a_page_is_of_one_device(k: &impl Keeps, v: Vault) -> Ended {
    let logs = [1, 2, 3].map(|byte| v.device(byte).log(4));
    for log in &logs {
        keep(k, log).await?;
    }
    page(k, v.device(2), (1, ALL), &logs[1]).await
}

/// Ids that are one after the other, where the last byte goes over into the one before it.
const NEIGHBOURS: [[u8; 16]; 2] = [
    [7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 0xff],
    [7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 7, 8, 0],
];

async fn a_page_ends_before_the_log_of_the_next_id(k: &impl Keeps, v: Vault) -> Ended {
    let devices = NEIGHBOURS.map(|id| v.device_of(id));
    for device in devices {
        keep(k, &device.log(3)).await?;
    }
    page(k, devices[0], (2, ALL), &devices[0].log(3)[1..]).await?;
    page(k, devices[1], (0, ALL), &devices[1].log(3)).await
}

async fn a_page_after_the_end_has_nothing_of_the_next_id(k: &impl Keeps, v: Vault) -> Ended {
    let devices = NEIGHBOURS.map(|id| v.device_of(id));
    for device in devices {
        keep(k, &device.log(3)).await?;
    }
    page(k, devices[0], (4, ALL), &[]).await?;
    page(k, devices[0], (u64::MAX, ALL), &[]).await
}

/// Past the tenth and the hundredth frame, where text would sort wrongly, and past what a byte can number.
async fn a_long_log_is_in_order(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(300);
    keep(k, &log).await?;
    holds(k, v.device(1), &log).await
}

async fn a_page_within_a_long_log_is_in_order(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(300);
    keep(k, &log).await?;
    for range in [8..12, 98..102, 249..269, 8..290] {
        let asked = (range.start as u64 + 1, range.len());
        page(k, v.device(1), asked, &log[range]).await?;
    }
    Ok(())
}

/// Whatever a store reads at a time is more than it or less in one of these.
async fn pages_of_every_size_of_a_long_log_are_whole(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(270);
    keep(k, &log).await?;
    for at_a_time in [10, 16, 32, 50, 64, 100, 128, 250, 256] {
        for size in [at_a_time - 1, at_a_time, at_a_time + 1] {
            page(k, v.device(1), (5, size), &log[4..4 + size]).await?;
        }
    }
    Ok(())
}

async fn short_and_long_frames_are_counted_alike(k: &impl Keeps, v: Vault) -> Ended {
    let mut log: Vec<Frame> = Vec::new();
    for at in 0..8 {
        let class = if at % 2 == 0 { SMALLEST } else { SMALLEST << 9 };
        log.push(v.device(1).frame(head(&log), class, at));
    }
    keep(k, &log).await?;
    page(k, v.device(1), (2, 5), &log[1..6]).await
}

async fn reading_changes_nothing(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(7);
    keep(k, &log).await?;
    let before = k.heads().await?;
    page(k, v.device(1), (3, 2), &log[2..4]).await?;
    page(k, v.device(2), (1, 9), &[]).await?;
    promise(k.head(v.device(2).id).await?.is_none())?;
    holds(k, v.device(1), &log).await?;
    promise(k.heads().await? == before)
}
