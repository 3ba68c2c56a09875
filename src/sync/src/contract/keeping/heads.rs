//! Where logs end.

use super::asking::{holds, keep, refuse};
use super::keeper::Keeps;
use super::sample::{Device, Vault, head};
use crate::contract::{Ended, promise};
use vault::Frame;

cases! {
    nothing_is_there_at_first,
    a_first_frame_begins_a_log,
    the_head_is_the_newest_frame,
    every_append_moves_the_head,
    an_unknown_device_has_no_head,
    every_log_has_its_head,
    heads_are_in_the_order_of_ids,
    a_log_has_one_head_however_often_it_grew,
    a_refused_beginning_has_no_head,
    many_devices_have_their_heads,
    the_least_and_the_greatest_id_have_logs_like_any,
}

async fn nothing_is_there_at_first(k: &impl Keeps, v: Vault) -> Ended {
    holds(k, v.device(1), &[]).await?;
    promise(k.heads().await?.is_empty())
}

async fn a_first_frame_begins_a_log(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(1);
    keep(k, &log).await?;
    promise(k.heads().await? == ends(&[&log]))
}

async fn the_head_is_the_newest_frame(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(5);
    keep(k, &log).await?;
    promise(k.head(v.device(1).id).await? == head(&log))
}

async fn every_append_moves_the_head(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(6);
    for at in 0..log.len() {
        keep(k, &log[at..=at]).await?;
        promise(k.head(v.device(1).id).await? == head(&log[..=at]))?;
    }
    Ok(())
}

async fn an_unknown_device_has_no_head(k: &impl Keeps, v: Vault) -> Ended {
    keep(k, &v.device(1).log(2)).await?;
    keep(k, &v.device(3).log(2)).await?;
    promise(k.head(v.device(2).id).await?.is_none())
}

async fn every_log_has_its_head(k: &impl Keeps, v: Vault) -> Ended {
    let logs = [v.device(1).log(3), v.device(2).log(1)];
    for log in &logs {
        keep(k, log).await?;
    }
    promise(k.heads().await? == ends(&[&logs[0], &logs[1]]))
}

/// Ids that text, or numbers with a sign, would order otherwise, in an order that is none.
async fn heads_are_in_the_order_of_ids(k: &impl Keeps, v: Vault) -> Ended {
    for byte in [0x80, 0x0a, 0xff, 0x7f, 0x02, 0x61, 0x41] {
        keep(k, &v.device(byte).log(1)).await?;
    }
    let ordered = [0x02, 0x0a, 0x41, 0x61, 0x7f, 0x80, 0xff].map(|byte| v.device(byte).id);
    let heads = k.heads().await?;
    promise(heads.iter().map(|(device, _)| *device).eq(ordered))
}

async fn a_log_has_one_head_however_often_it_grew(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(8);
    for part in log.chunks(2) {
        keep(k, part).await?;
    }
    promise(k.heads().await? == ends(&[&log]))
}

async fn a_refused_beginning_has_no_head(k: &impl Keeps, v: Vault) -> Ended {
    let log = v.device(1).log(2);
    keep(k, &log).await?;
    refuse(k, &v.device(2).log(3)[1..], None).await?;
    promise(k.heads().await? == ends(&[&log]))
}

async fn many_devices_have_their_heads(k: &impl Keeps, v: Vault) -> Ended {
    let logs: Vec<_> = (1..=60).map(|byte| v.device(byte).log(1)).collect();
    for log in &logs {
        keep(k, log).await?;
    }
    let logs: Vec<&[Frame]> = logs.iter().map(Vec::as_slice).collect();
    promise(k.heads().await? == ends(&logs))
}

async fn the_least_and_the_greatest_id_have_logs_like_any(k: &impl Keeps, v: Vault) -> Ended {
    let devices: [Device; 3] = [0, 9, 0xff].map(|byte| v.device(byte));
    for device in devices {
        keep(k, &device.log(3)).await?;
    }
    for device in devices {
        holds(k, device, &device.log(3)).await?;
    }
    Ok(())
}

/// Each log's device and head.
fn ends(logs: &[&[Frame]]) -> Vec<(vault::DeviceId, vault::Head)> {
    let newest = logs.iter().filter_map(|log| log.last());
    newest.map(|frame| (frame.device(), frame.head())).collect()
}
