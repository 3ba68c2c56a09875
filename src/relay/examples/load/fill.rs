//! A store with much in it already.

use crate::scene::open_vault;
use lightround_relay::store::Desk;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;
use sync::exchange::{Appended, MOST_FRAMES, Run};
use vault::sample::{Device, devices};
use vault::{Frame, Head};

/// Other vaults that are opened at a time.
const AT_A_TIME: usize = 16;
/// How many things come between two signs of life.
const SIGN_OF_LIFE: usize = 50_000;
/// Seeds of other vaults begin here.
const OTHERS: usize = 1 << 32;

/// Counts what is done, and says so now and then.
struct Counted<'a> {
    what: &'a str,
    done: AtomicUsize,
    all: usize,
}

impl Counted<'_> {
    fn add(&self, more: usize) {
        let before = self.done.fetch_add(more, Ordering::Relaxed);
        let done = before + more;
        if done / SIGN_OF_LIFE > before / SIGN_OF_LIFE {
            eprintln!("{}: {done} of {}", self.what, self.all);
        }
    }
}

/// Fills the vault of these devices with so many frames, shared among their logs; says where the first one's log ends.
pub fn frames(store: &dyn Desk, devices: &mut [Device], frames: usize) -> Head {
    let counted = Counted {
        what: "filling a vault with frames",
        done: AtomicUsize::new(0),
        all: frames,
    };
    let each = frames / devices.len();
    thread::scope(|scope| {
        let logs: Vec<_> = devices
            .iter_mut()
            .map(|device| scope.spawn(|| log(store, device, each, &counted)))
            .collect();
        let heads = logs.into_iter().map(|log| log.join().unwrap());
        heads.collect::<Vec<_>>()[0]
    })
}

/// Writes a log straight into the store; says where it ends.
fn log(store: &dyn Desk, device: &mut Device, frames: usize, counted: &Counted<'_>) -> Head {
    let mut run = vec![device.begin("sample")];
    let mut head = run[0].head();
    for _ in 1..frames {
        if run.len() == MOST_FRAMES {
            counted.add(run.len());
            keep(store, std::mem::take(&mut run));
        }
        let frame = device.write(head, b"entry");
        head = frame.head();
        run.push(frame);
    }
    counted.add(run.len());
    keep(store, run);
    head
}

fn keep(store: &dyn Desk, frames: Vec<Frame>) {
    let run = Run::new(frames).unwrap();
    assert_eq!(store.append(&run).unwrap(), Appended::Kept);
}

/// Opens so many other vaults, each with its first frame.
pub fn others(store: &dyn Desk, vaults: usize) {
    let counted = Counted {
        what: "opening other vaults",
        done: AtomicUsize::new(0),
        all: vaults,
    };
    let (first, counted) = (&AtomicUsize::new(0), &counted);
    thread::scope(|scope| {
        for _ in 0..AT_A_TIME {
            scope.spawn(move || {
                loop {
                    let number = first.fetch_add(1, Ordering::Relaxed);
                    if number >= vaults {
                        break;
                    }
                    let mut devices = devices((OTHERS + number) as u64, 1);
                    open_vault(store, &devices);
                    keep(store, vec![devices[0].begin("sample")]);
                    counted.add(1);
                }
            });
        }
    });
}
