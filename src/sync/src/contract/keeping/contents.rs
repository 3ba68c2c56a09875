//! Bytes come back as they went in, whatever they are.

use super::asking::{holds, keep};
use super::keeper::Keeps;
use super::sample::{Device, SMALLEST, Vault, body, framed, head};
use crate::contract::{Ended, promise};
use crate::exchange::{MOST_BYTES, Run};
use vault::frame::{Header, LONGEST, SHORTEST};
use vault::{Frame, KeyId, Purpose};

cases! {
    the_shortest_frame_is_kept_whole,
    the_longest_frame_is_kept_whole,
    a_frame_of_every_length_is_kept_whole,
    a_run_of_almost_the_most_bytes_is_kept_whole,
    the_longest_frames_one_after_another_are_kept_whole,
    every_byte_comes_back,
    bytes_that_are_no_text_come_back,
    a_body_of_zeros_comes_back,
    frames_of_one_body_stay_apart,
    logs_of_one_body_stay_apart,
    every_purpose_is_kept_like_any,
    the_least_and_the_greatest_numbers_of_a_header_come_back,
}

/// The longest class of what is sealed in a frame.
const LARGEST: usize = SMALLEST + LONGEST - SHORTEST;

/// A log of one frame is kept and comes back.
async fn alone(k: &impl Keeps, v: Vault, frame: Frame) -> Ended {
    let log = [frame];
    keep(k, &log).await?;
    holds(k, v.device(1), &log).await
}

async fn the_shortest_frame_is_kept_whole(k: &impl Keeps, v: Vault) -> Ended {
    let frame = v.device(1).frame(None, SMALLEST, 5);
    promise(frame.bytes().len() == SHORTEST)?;
    alone(k, v, frame).await
}

async fn the_longest_frame_is_kept_whole(k: &impl Keeps, v: Vault) -> Ended {
    let frame = v.device(1).frame(None, LARGEST, 5);
    promise(frame.bytes().len() == LONGEST)?;
    alone(k, v, frame).await
}

/// A frame of each class, from the smallest on.
fn of_every_length(device: Device) -> Vec<Frame> {
    let mut log: Vec<Frame> = Vec::new();
    let mut class = SMALLEST;
    while class <= LARGEST {
        log.push(device.frame(head(&log), class, 5));
        class *= 2;
    }
    log
}

async fn a_frame_of_every_length_is_kept_whole(k: &impl Keeps, v: Vault) -> Ended {
    let log = of_every_length(v.device(1));
    for frame in log.chunks(1) {
        keep(k, frame).await?;
    }
    holds(k, v.device(1), &log).await
}

/// The longest run that ends with a frame of every length but the smallest: a few hundred bytes short of the most.
async fn a_run_of_almost_the_most_bytes_is_kept_whole(k: &impl Keeps, v: Vault) -> Ended {
    let log = of_every_length(v.device(1));
    let (first, rest) = log.split_at(3);
    promise(Run::new(log.clone()).is_err())?;
    promise(Run::new(rest.to_vec())?.bytes() + SHORTEST > MOST_BYTES)?;
    keep(k, first).await?;
    keep(k, rest).await?;
    holds(k, v.device(1), &log).await
}

/// As much as two runs carry, in one page.
async fn the_longest_frames_one_after_another_are_kept_whole(k: &impl Keeps, v: Vault) -> Ended {
    let mut log: Vec<Frame> = Vec::new();
    for byte in 0..3 {
        log.push(v.device(1).frame(head(&log), LARGEST, byte));
    }
    for frame in log.chunks(1) {
        keep(k, frame).await?;
    }
    holds(k, v.device(1), &log).await
}

/// A first frame with this body.
fn of_body(v: Vault, byte: impl Fn(usize) -> u8) -> Frame {
    let bytes: Vec<u8> = (0..body(SMALLEST)).map(byte).collect();
    framed(&v.device(1).header(None, SMALLEST), &bytes)
}

async fn every_byte_comes_back(k: &impl Keeps, v: Vault) -> Ended {
    alone(k, v, of_body(v, |at| at as u8)).await
}

/// Beginnings and ends of characters that lack the rest, as no UTF-8 has them.
async fn bytes_that_are_no_text_come_back(k: &impl Keeps, v: Vault) -> Ended {
    let torn = [0xff, 0x80, 0xc0, 0xed, 0xa0, 0x00, 0x5c, 0x27];
    alone(k, v, of_body(v, |at| torn[at % torn.len()])).await
}

async fn a_body_of_zeros_comes_back(k: &impl Keeps, v: Vault) -> Ended {
    alone(k, v, of_body(v, |_| 0)).await
}

async fn frames_of_one_body_stay_apart(k: &impl Keeps, v: Vault) -> Ended {
    let mut log: Vec<Frame> = Vec::new();
    for _ in 0..4 {
        log.push(v.device(1).frame(head(&log), SMALLEST, 9));
    }
    keep(k, &log).await?;
    holds(k, v.device(1), &log).await
}

async fn logs_of_one_body_stay_apart(k: &impl Keeps, v: Vault) -> Ended {
    for byte in [1, 2] {
        keep(k, &[v.device(byte).frame(None, SMALLEST, 9)]).await?;
    }
    for byte in [1, 2] {
        let log = [v.device(byte).frame(None, SMALLEST, 9)];
        holds(k, v.device(byte), &log).await?;
    }
    Ok(())
}

/// A log whose headers are each changed a little.
fn changed<T: Copy>(device: Device, each: &[T], change: impl Fn(&mut Header, T)) -> Vec<Frame> {
    let mut log: Vec<Frame> = Vec::new();
    for what in each {
        let mut header = device.header(head(&log), SMALLEST);
        change(&mut header, *what);
        log.push(framed(&header, &vec![5; body(SMALLEST)]));
    }
    log
}

/// Those that there are, and later ones, which are carried unread.
async fn every_purpose_is_kept_like_any(k: &impl Keeps, v: Vault) -> Ended {
    let purposes = [1, 2, 3, 4, 5, 6, 200, 255].map(Purpose::from_byte);
    let log = changed(v.device(1), &purposes, |header, purpose| {
        header.purpose = purpose.unwrap_or(header.purpose);
    });
    keep(k, &log).await?;
    holds(k, v.device(1), &log).await
}

async fn the_least_and_the_greatest_numbers_of_a_header_come_back(
    k: &impl Keeps,
    v: Vault,
) -> Ended {
    let greatest = [(1, 0), (u32::MAX, 0xff), (1 << 31, 0x80)];
    let log = changed(v.device(1), &greatest, |header, (epoch, key)| {
        header.epoch = epoch;
        header.key = KeyId::from_bytes([key; 16]);
    });
    keep(k, &log).await?;
    holds(k, v.device(1), &log).await
}
