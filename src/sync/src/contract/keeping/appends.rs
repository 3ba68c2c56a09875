//! A log grows at its end.

use super::asking::{append, holds, keep, page};
use super::keeper::Keeps;
use super::sample::{SMALLEST, Vault, head};
use crate::contract::{Breach, Ended, promise};
use crate::exchange::{Appended, MOST_FRAMES};
use futures::future::join;
use vault::Frame;

cases! {
    a_run_is_kept_in_its_order,
    several_runs_make_one_log,
    a_frame_at_a_time_makes_the_same_log,
    the_longest_run_is_kept_whole,
    a_log_goes_on_after_the_longest_run,
    an_append_leaves_other_logs,
    two_logs_grow_in_turn,
    what_was_kept_before_stays_as_it_was,
    of_two_at_once_one_is_kept,
    after_two_at_once_the_log_goes_on,
    two_logs_grow_at_once,
}

async fn a_run_is_kept_in_its_order(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(7);
    keep(k, &log).await?;
    holds(k, v.device(1), &log).await
}

async fn several_runs_make_one_log(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(9);
    for part in [&log[..2], &log[2..3], &log[3..8], &log[8..]] {
        keep(k, part).await?;
    }
    holds(k, v.device(1), &log).await
}

async fn a_frame_at_a_time_makes_the_same_log(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(12);
    for part in log.chunks(1) {
        keep(k, part).await?;
    }
    holds(k, v.device(1), &log).await
}

async fn the_longest_run_is_kept_whole(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(MOST_FRAMES);
    keep(k, &log).await?;
    holds(k, v.device(1), &log).await
}

async fn a_log_goes_on_after_the_longest_run(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(MOST_FRAMES + 3);
    for part in log.chunks(MOST_FRAMES) {
        keep(k, part).await?;
    }
    holds(k, v.device(1), &log).await
}

async fn an_append_leaves_other_logs(k: &impl Keeps, v: Vault) -> Ended {
    let other = v.device(2).log(2);
    keep(k, &other).await?;
    keep(k, &v.device(1).log(5)).await?;
    holds(k, v.device(2), &other).await
}

async fn two_logs_grow_in_turn(k: &impl Keeps, v: Vault) -> Ended {
    let logs = [v.device(1).log(6), v.device(2).log(6)];
    for at in 0..6 {
        keep(k, &logs[0][at..=at]).await?;
        keep(k, &logs[1][at..=at]).await?;
    }
    holds(k, v.device(1), &logs[0]).await?;
    holds(k, v.device(2), &logs[1]).await
}

async fn what_was_kept_before_stays_as_it_was(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(6);
    keep(k, &log[..3]).await?;
    page(k, v.device(1), (1, 3), &log[..3]).await?;
    keep(k, &log[3..]).await?;
    page(k, v.device(1), (1, 3), &log[..3]).await
}

/// Two frames are kept; then one run goes on with one frame, and another with three others. What is kept in the end. Where
/// calls block, the second simply comes after the first.
async fn at_once(k: &impl Keeps, v: Vault) -> Result<Vec<Frame>, Breach> {
    let log = v.device(1).log(2);
    keep(k, &log).await?;
    let [one, other] = [&[101][..], &[201, 202, 203]].map(|bytes| longer(v, &log, bytes));
    let ended = join(append(k, &one[2..]), append(k, &other[2..])).await;
    let (first, second) = (ended.0?, ended.1?);
    let (kept, refused) = match first {
        Appended::Kept => (one, second),
        Appended::Moved { .. } => (other, first),
    };
    let head = head(&kept);
    promise(first != second && refused == Appended::Moved { head })?;
    Ok(kept)
}

/// The log with a frame more for each of these bytes.
fn longer(v: Vault, log: &[Frame], bytes: &[u8]) -> Vec<Frame> {
    let mut log = log.to_vec();
    for byte in bytes {
        log.push(v.device(1).frame(head(&log), SMALLEST, *byte));
    }
    log
}

async fn of_two_at_once_one_is_kept(k: &impl Keeps, v: Vault) -> Ended {
    let kept = at_once(k, v).await?;
    holds(k, v.device(1), &kept).await
}

async fn after_two_at_once_the_log_goes_on(k: &impl Keeps, v: Vault) -> Ended {
    let kept = at_once(k, v).await?;
    let log = longer(v, &kept, &[7, 8]);
    keep(k, &log[kept.len()..]).await?;
    holds(k, v.device(1), &log).await
}

async fn two_logs_grow_at_once(k: &impl Keeps, v: Vault) -> Ended {
    let logs = [v.device(1).log(20), v.device(2).log(30)];
    let (one, other) = join(append(k, &logs[0]), append(k, &logs[1])).await;
    promise(one? == Appended::Kept && other? == Appended::Kept)?;
    holds(k, v.device(1), &logs[0]).await?;
    holds(k, v.device(2), &logs[1]).await
}
