//! What one more frame costs, the more is there already.
//!
//! All relays are filled first and then get their frames in turn, so that whatever else the machine does meets them alike.

use crate::alone::Database;
use crate::fill;
use crate::scene::{answer, connection, open_vault, relay, request};
use serde_json::{Value, json};
use std::io::Write;
use std::net::{SocketAddr, TcpStream};
use std::path::Path;
use std::time::Instant;
use sync::exchange::{Request, Run};
use vault::sample::{Device, devices};
use vault::{Frame, Head};

/// Frames in the vault; everything is compared with the first.
const SIZES: [usize; 4] = [1_000, 10_000, 100_000, 1_000_000];
/// Other vaults of the relay whose own is as small as the first.
const OTHERS: usize = 10_000;
/// Tablets of a vault that have a log each.
const TABLETS: u64 = 4;
/// Frames that come first and don't count: SQLite's log of writes gets its full length by them, where filling hasn't done that.
const AT_FIRST: usize = 400;
/// Frames that are added then, one by one.
const ADDED: usize = 400;
/// Costs that stay within this many times the first are flat: a tree that is a thousand times as full is one page deeper or two,
/// and anything that read through what is there would cost hundreds of times as much.
const FLAT: f64 = 1.5;

/// A relay with something in it.
struct Grown {
    said: String,
    address: SocketAddr,
    devices: Vec<Device>,
    head: Head,
}

/// One that is being asked.
struct Asked {
    stream: TcpStream,
    pushes: std::vec::IntoIter<Vec<u8>>,
    took: Vec<f64>,
}

pub fn measured(folder: &Path) -> Vec<Value> {
    let alone = SIZES.map(|frames| (frames, 0));
    let mut grown: Vec<Grown> = alone
        .into_iter()
        .chain([(SIZES[0], OTHERS)])
        .map(|(frames, others)| grown(folder, frames, others))
        .collect();
    eprintln!("adding {ADDED} frames to each of {} relays", grown.len());
    // Requests are signed when all is filled: they hold for some minutes only.
    let mut asked: Vec<Asked> = grown.iter_mut().map(asked).collect();
    for _ in 0..AT_FIRST + ADDED {
        asked.iter_mut().for_each(Asked::once);
    }
    let costs: Vec<f64> = asked
        .into_iter()
        .map(|asked| median(&asked.took[AT_FIRST..]))
        .collect();
    let said = format!("{}, no other vault", in_words(SIZES[0]));
    let measures = grown.iter().zip(&costs).map(|(grown, cost)| {
        json!({
            "name": grown.said, "unit": "ms", "ours": cost, "against": said, "theirs": costs[0],
            "budget": costs[0] * FLAT,
        })
    });
    measures.skip(1).collect()
}

fn grown(folder: &Path, frames: usize, others: usize) -> Grown {
    let store = Database::Sqlite.store(folder, &format!("growth_{frames}_{others}"));
    let mut devices = devices((frames + others) as u64, TABLETS);
    fill::others(store.as_ref(), others);
    open_vault(store.as_ref(), &devices);
    let head = fill::frames(store.as_ref(), &mut devices, frames);
    let beside = match others {
        0 => String::new(),
        others => format!(", beside {others} vaults"),
    };
    Grown {
        said: format!("relay: one more frame after {}{beside}", in_words(frames)),
        address: relay(folder, store),
        devices,
        head,
    }
}

fn in_words(frames: usize) -> String {
    format!("{frames} frames")
}

fn asked(grown: &mut Grown) -> Asked {
    let mut head = grown.head;
    let more: Vec<Frame> = (0..AT_FIRST + ADDED)
        .map(|_| {
            let frame = grown.devices[0].write(head, b"entry");
            head = frame.head();
            frame
        })
        .collect();
    let device = &grown.devices[0];
    let pushes = more.into_iter().map(|frame| {
        let run = Run::new(vec![frame]).unwrap();
        request(device, device.keys.vault(), &Request::Push(run))
    });
    Asked {
        stream: connection(grown.address),
        pushes: pushes.collect::<Vec<_>>().into_iter(),
        took: Vec::new(),
    }
}

impl Asked {
    /// Pushes the next frame.
    fn once(&mut self) {
        let push = self.pushes.next().unwrap();
        let began = Instant::now();
        self.stream.write_all(&push).unwrap();
        answer(&mut self.stream);
        self.took.push(began.elapsed().as_secs_f64() * 1000.0);
    }
}

fn median(took: &[f64]) -> f64 {
    let mut took = took.to_vec();
    took.sort_by(f64::total_cmp);
    took[took.len() / 2]
}
