//! A log grows nowhere but at its end. What is refused is told where that is, and changes nothing.

use super::asking::{holds, keep, refuse};
use super::keeper::Keeps;
use super::sample::{SMALLEST, Vault, head};
use crate::contract::{Ended, promise};
use vault::{Frame, FrameHash, Head};

cases! {
    a_log_without_its_first_frame_is_refused,
    a_log_without_its_first_frame_is_not_begun,
    a_log_may_begin_after_that_was_refused,
    what_comes_after_a_gap_is_refused,
    a_gap_is_no_gap_once_it_is_filled,
    the_same_first_frame_again_has_moved,
    the_same_run_again_has_moved,
    the_same_run_again_is_kept_once,
    an_older_part_again_has_moved,
    a_run_that_begins_within_the_log_has_moved,
    what_is_new_in_such_a_run_is_not_kept,
    another_first_frame_is_refused,
    another_log_of_the_same_device_is_refused,
    another_newest_frame_is_refused,
    what_follows_another_newest_frame_is_refused,
    the_right_hash_under_another_number_is_refused,
    the_right_number_after_another_hash_is_refused,
    what_follows_another_devices_head_is_refused,
    a_refusal_says_where_the_log_ends_however_long_it_is,
    a_refused_run_leaves_the_log,
    a_refused_run_leaves_other_logs,
    a_long_run_is_refused_whole,
    many_refusals_change_nothing,
    after_a_refusal_what_follows_is_kept,
}

async fn a_log_without_its_first_frame_is_refused(k: &impl Keeps, v: Vault) -> Ended {
    refuse(k, &v.device(1).log(3)[1..], None).await
}

async fn a_log_without_its_first_frame_is_not_begun(k: &impl Keeps, v: Vault) -> Ended {
    refuse(k, &v.device(1).log(3)[1..], None).await?;
    promise(k.heads().await?.is_empty())?;
    holds(k, v.device(1), &[]).await
}

async fn a_log_may_begin_after_that_was_refused(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(3);
    refuse(k, &log[1..], None).await?;
    keep(k, &log).await?;
    holds(k, v.device(1), &log).await
}

async fn what_comes_after_a_gap_is_refused(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(5);
    keep(k, &log[..2]).await?;
    refuse(k, &log[3..], head(&log[..2])).await?;
    holds(k, v.device(1), &log[..2]).await
}

async fn a_gap_is_no_gap_once_it_is_filled(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(5);
    keep(k, &log[..2]).await?;
    refuse(k, &log[3..], head(&log[..2])).await?;
    keep(k, &log[2..3]).await?;
    keep(k, &log[3..]).await?;
    holds(k, v.device(1), &log).await
}

async fn the_same_first_frame_again_has_moved(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(1);
    keep(k, &log).await?;
    refuse(k, &log, head(&log)).await
}

async fn the_same_run_again_has_moved(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(5);
    keep(k, &log[..2]).await?;
    keep(k, &log[2..]).await?;
    refuse(k, &log[2..], head(&log)).await
}

async fn the_same_run_again_is_kept_once(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(5);
    keep(k, &log).await?;
    refuse(k, &log, head(&log)).await?;
    holds(k, v.device(1), &log).await
}

async fn an_older_part_again_has_moved(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(6);
    keep(k, &log).await?;
    refuse(k, &log[2..4], head(&log)).await?;
    holds(k, v.device(1), &log).await
}

/// It begins with a frame that is there, and goes on with two that are not.
async fn overlapping(k: &impl Keeps, v: Vault, log: &[Frame]) -> Ended {
    keep(k, &log[..3]).await?;
    refuse(k, &log[2..], head(&log[..3])).await?;
    promise(k.head(v.device(1).id).await? == head(&log[..3]))
}

async fn a_run_that_begins_within_the_log_has_moved(k: &impl Keeps, v: Vault) -> Ended {
    overlapping(k, v, &v.device(1).log(5)).await
}

async fn what_is_new_in_such_a_run_is_not_kept(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(5);
    overlapping(k, v, &log).await?;
    holds(k, v.device(1), &log[..3]).await?;
    keep(k, &log[3..]).await?;
    holds(k, v.device(1), &log).await
}

async fn another_first_frame_is_refused(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(1);
    keep(k, &log).await?;
    let other = v.device(1).frame(None, SMALLEST, 200);
    refuse(k, &[other], head(&log)).await?;
    holds(k, v.device(1), &log).await
}

/// Longer than the one that is kept, from the first frame on another.
async fn another_log_of_the_same_device_is_refused(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(2);
    keep(k, &log).await?;
    let mut other: Vec<Frame> = Vec::new();
    for byte in 200..205 {
        other.push(v.device(1).frame(head(&other), SMALLEST, byte));
    }
    refuse(k, &other, head(&log)).await?;
    holds(k, v.device(1), &log).await
}

/// Three frames, and another third one with what follows that.
fn forked(v: Vault) -> (Vec<Frame>, Vec<Frame>) {
    let log = v.device(1).log(3);
    let mut other = log[..2].to_vec();
    for byte in [200, 201] {
        other.push(v.device(1).frame(head(&other), SMALLEST, byte));
    }
    (log, other)
}

async fn another_newest_frame_is_refused(k: &impl Keeps, v: Vault) -> Ended {
    let (log, other) = forked(v);
    keep(k, &log).await?;
    refuse(k, &other[2..3], head(&log)).await?;
    holds(k, v.device(1), &log).await
}

async fn what_follows_another_newest_frame_is_refused(k: &impl Keeps, v: Vault) -> Ended {
    let (log, other) = forked(v);
    keep(k, &log).await?;
    refuse(k, &other[3..], head(&log)).await?;
    holds(k, v.device(1), &log).await
}

/// A frame that names a head with one thing about it changed, after a log of three.
async fn after_almost_the_head(k: &impl Keeps, v: Vault, change: impl Fn(Head) -> Head) -> Ended {
    let log = v.device(1).log(3);
    keep(k, &log).await?;
    let almost = head(&log).map(change);
    let frame = v.device(1).frame(almost, SMALLEST, 200);
    refuse(k, &[frame], head(&log)).await?;
    holds(k, v.device(1), &log).await
}

async fn the_right_hash_under_another_number_is_refused(k: &impl Keeps, v: Vault) -> Ended {
    after_almost_the_head(k, v, |head| Head {
        sequence: head.sequence + 1,
        ..head
    })
    .await
}

async fn the_right_number_after_another_hash_is_refused(k: &impl Keeps, v: Vault) -> Ended {
    after_almost_the_head(k, v, |head| {
        let mut hash = *head.hash.as_bytes();
        hash[31] ^= 1;
        let hash = FrameHash::from_bytes(hash);
        Head { hash, ..head }
    })
    .await
}

async fn what_follows_another_devices_head_is_refused(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(3);
    let other = v.device(2).log(3);
    keep(k, &log).await?;
    keep(k, &other).await?;
    let frame = v.device(2).frame(head(&log), SMALLEST, 200);
    refuse(k, &[frame], head(&other)).await?;
    holds(k, v.device(2), &other).await
}

async fn a_refusal_says_where_the_log_ends_however_long_it_is(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(6);
    for at in 0..4 {
        keep(k, &log[at..=at]).await?;
        refuse(k, &log[5..], head(&log[..=at])).await?;
    }
    Ok(())
}

async fn a_refused_run_leaves_the_log(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(9);
    keep(k, &log[..4]).await?;
    refuse(k, &log[6..], head(&log[..4])).await?;
    refuse(k, &log[..2], head(&log[..4])).await?;
    holds(k, v.device(1), &log[..4]).await
}

async fn a_refused_run_leaves_other_logs(k: &impl Keeps, v: Vault) -> Ended {
    let (log, other) = (v.device(1).log(3), v.device(2).log(3));
    keep(k, &log).await?;
    keep(k, &other[..1]).await?;
    refuse(k, &other[2..], head(&other[..1])).await?;
    refuse(k, &v.device(3).log(2)[1..], None).await?;
    promise(k.heads().await?.len() == 2)?;
    holds(k, v.device(1), &log).await
}

async fn a_long_run_is_refused_whole(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(302);
    keep(k, &log[..1]).await?;
    refuse(k, &log[2..], head(&log[..1])).await?;
    holds(k, v.device(1), &log[..1]).await
}

async fn many_refusals_change_nothing(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(4);
    keep(k, &log[..2]).await?;
    for _ in 0..12 {
        refuse(k, &log[3..], head(&log[..2])).await?;
        refuse(k, &log[..1], head(&log[..2])).await?;
    }
    holds(k, v.device(1), &log[..2]).await
}

async fn after_a_refusal_what_follows_is_kept(k: &impl Keeps, v: Vault) -> Ended {
    let (log, other) = forked(v);
    keep(k, &log).await?;
    refuse(k, &other[3..], head(&log)).await?;
    let next = v.device(1).frame(head(&log), SMALLEST, 77);
    keep(k, std::slice::from_ref(&next)).await?;
    holds(k, v.device(1), &[log, vec![next]].concat()).await
}
