//! How long a vault takes to open with a checkpoint and without one, each against decrypting the same bytes and nothing else.
//!
//! ```text
//! cargo run --release -p sync --example opening [entries]
//! ```

use futures::executor::block_on;
use std::time::{Duration, Instant};
use sync::{Ledger, MemoryStorage, Opened, Writing};
use vault::{Frame, KeyFile, SlotKey, StretchParams, Subject, Under, found_vault};

/// Entries written at a time, and bytes of one: an exam's section.
const BATCH: usize = 500;
const PAYLOAD: [u8; 240] = [b'x'; 240];
/// Entries about one person.
const EACH: usize = 10;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let entries: usize = match std::env::args().nth(1) {
        Some(number) => number.parse()?,
        None => 100_000,
    };
    let params = StretchParams {
        salt: [0; 16],
        memory_kib: 8192,
        passes: 1,
        lanes: 1,
    };
    let slot_key = SlotKey::from_bytes([1; 32]);
    let (file, keys) = found_vault(&slot_key, params, "bench")?;
    let storage = MemoryStorage::new();
    let ledger = block_on(Ledger::found(storage.clone(), &file, keys))?;
    write(&ledger, entries)?;

    let decrypting = decrypting(&file, &slot_key, entries)?;
    let (without, opened) = opening(&storage, &file, &slot_key)?;
    let Opened {
        ledger,
        entries: found,
        due,
        ..
    } = opened;
    let due = due.ok_or("too few entries for a checkpoint")?;
    let began = Instant::now();
    block_on(ledger.keep_checkpoint(due, &found))?;
    let keeping = began.elapsed();
    let (with, opened) = opening(&storage, &file, &slot_key)?;
    if opened.entries != found {
        return Err("opening with a checkpoint gives something else".into());
    }
    let times = |part: Duration| part.as_secs_f64() / decrypting.as_secs_f64();
    println!("{entries} entries; decrypting the same bytes and nothing else is 1");
    println!("opening without a checkpoint   {:8.2}", times(without));
    println!("opening with one               {:8.2}", times(with));
    println!("making and keeping one         {:8.2}", times(keeping));
    println!(
        "without, against with          {:8.2}",
        without.as_secs_f64() / with.as_secs_f64()
    );
    Ok(())
}

fn write(ledger: &Ledger<MemoryStorage>, entries: usize) -> Result<(), Box<dyn std::error::Error>> {
    let mut written = 0;
    while written < entries {
        let batch: Vec<Writing<'_>> = (written..entries.min(written + BATCH))
            .map(|number| Writing {
                payload: &PAYLOAD,
                subject: Some(Subject::from_bytes(
                    (number as u128 / EACH as u128).to_be_bytes(),
                )),
            })
            .collect();
        block_on(ledger.write_all(&batch, &[]))?;
        written += batch.len();
    }
    Ok(())
}

fn opening(
    storage: &MemoryStorage,
    file: &KeyFile,
    slot_key: &SlotKey,
) -> Result<(Duration, Opened<MemoryStorage>), Box<dyn std::error::Error>> {
    let keys = file.unlock(slot_key)?;
    let began = Instant::now();
    let opened = block_on(Ledger::open(storage.clone(), keys))?;
    Ok((began.elapsed(), opened))
}

/// The same number of entries of the same length, opened one after the other.
fn decrypting(
    file: &KeyFile,
    slot_key: &SlotKey,
    entries: usize,
) -> Result<Duration, Box<dyn std::error::Error>> {
    let keys = file.unlock(slot_key)?;
    let (_, mut place) = keys.begin("bench")?;
    let mut frames: Vec<Frame> = Vec::with_capacity(entries);
    for _ in 0..entries {
        let (frame, next) = keys.seal(&place, Under::Epoch, &PAYLOAD)?;
        place = next;
        frames.push(frame);
    }
    let began = Instant::now();
    for frame in &frames {
        keys.open(frame, Under::Epoch)?;
    }
    Ok(began.elapsed())
}
