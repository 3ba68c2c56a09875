//! How long a new tablet takes to have a whole vault, from the first pull to the story that is shown, against decrypting the same
//! bytes and nothing else: `cargo xtask bench` runs it and puts the numbers into its table.
//!
//! The relay is one in memory, on the other side of the bytes of the wire; what a real one takes is measured by its own load.
//!
//! ```text
//! cargo run --release -p lightround --example first_sync FILE [ENTRIES]
//! ```
#![allow(
    clippy::unwrap_used,
    reason = "a measurement that can't be made has nothing to say"
)]

use chrono::NaiveDate;
use demo::Demo;
use futures::executor::block_on;
use record::{Entry, Story};
use serde_json::{Value, json};
use std::time::Instant;
use sync::exchange::{
    Answer, Exchange, Failure, FrameStore, Host, MemoryStore, Notice, Quota, Request, Vector,
    answer, round,
};
use sync::{Ledger, MemoryStorage, Writing};
use vault::enrolment::Newcomer;
use vault::{
    DeviceId, Frame, KeyFile, Role, SlotKey, StretchParams, Subject, Under, VaultId, found_vault,
};

const ENTRIES: usize = 100_000;
const PARAMS: StretchParams = StretchParams {
    salt: [0; 16],
    memory_kib: 8192,
    passes: 1,
    lanes: 1,
};

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let (left, entries) = match words.as_slice() {
        [left] => (left, ENTRIES),
        [left, entries] => (left, entries.parse().unwrap()),
        _ => panic!("where are the numbers to be left?"),
    };
    eprintln!("making up {entries} entries");
    let written = made_up(entries);
    std::fs::write(left, Value::Array(measured(&written)).to_string()).unwrap();
}

/// What was written about somebody.
struct Written {
    about: Subject,
    payload: Vec<u8>,
}

/// Entries about made-up people, as many as asked for.
fn made_up(entries: usize) -> Vec<Written> {
    let today = NaiveDate::from_ymd_opt(2026, 3, 4).unwrap();
    let lives = (1..).flat_map(|seed| Demo::new(seed, today));
    let written = lives.flat_map(|life| {
        let about = Subject::from_bytes(*life.person.as_uuid().as_bytes());
        life.entries.into_iter().map(move |entry| Written {
            about,
            payload: entry.to_cbor(),
        })
    });
    written.take(entries).collect()
}

fn measured(written: &[Written]) -> Vec<Value> {
    let slot_key = SlotKey::from_bytes([1; 32]);
    let (file, keys) = found_vault(&slot_key, PARAMS, "lead").unwrap();
    let lead = block_on(Ledger::found(MemoryStorage::new(), &file, keys)).unwrap();
    eprintln!("writing them down");
    write_down(&lead, written);
    let tablet = enrolled(&lead, &slot_key);
    let relay = relay_of(&lead);
    eprintln!("carrying them to a relay");
    exchanged(&relay, &lead);
    eprintln!("bringing them to a new tablet");
    let [pulled, read, folded] = brought(&relay, &tablet, written.len());
    eprintln!("decrypting the same");
    let theirs = decrypting(&file, &slot_key, written);

    let entries = written.len();
    let parts = [
        ("", folded),
        (": pulling", pulled),
        (": verifying and reading", read - pulled),
        (": folding", folded - read),
    ];
    let measure = |(part, seconds): (&str, f64)| {
        json!({
            "name": format!("first sync of {entries} entries{part}"), "unit": "ms", "ours": seconds * 1000.0,
            "against": "decrypting the same bytes", "theirs": theirs * 1000.0,
        })
    };
    parts.map(measure).to_vec()
}

fn write_down(lead: &Ledger<MemoryStorage>, written: &[Written]) {
    for batch in written.chunks(500) {
        let writings: Vec<Writing<'_>> = batch
            .iter()
            .map(|written| Writing {
                payload: &written.payload,
                subject: Some(written.about),
            })
            .collect();
        block_on(lead.write_all(&writings, &[])).unwrap();
    }
}

/// Seconds from the beginning until all is pulled, until it is read, and until it is folded.
fn brought(relay: &MemoryStore, tablet: &Ledger<MemoryStorage>, entries: usize) -> [f64; 3] {
    let began = Instant::now();
    exchanged(relay, tablet);
    let pulled = began.elapsed();
    let found = block_on(tablet.catch_up()).unwrap();
    let read = began.elapsed();
    let mut story = Story::default();
    for read in &found.entries {
        let entry = Entry::from_cbor(&read.payload).unwrap();
        story.admit(entry).unwrap();
    }
    let folded = began.elapsed();
    assert_eq!((story.len(), story.waiting()), (entries, 0));
    [pulled, read, folded].map(|time| time.as_secs_f64())
}

/// A new tablet of the vault that has nothing yet but its keys and the roll.
fn enrolled(lead: &Ledger<MemoryStorage>, slot_key: &SlotKey) -> Ledger<MemoryStorage> {
    let newcomer = Newcomer::new("new tablet").unwrap();
    let host = block_on(lead.receive(newcomer.request().clone())).unwrap();
    let acquainted = newcomer.meet(host.offer().clone());
    let checked = host.check(acquainted.reveal()).unwrap();
    let packet = block_on(lead.admit(checked, Role::Clinician, None)).unwrap();
    let arrival = acquainted.take(&packet).ok().unwrap();
    let roll = arrival.roll.clone();
    let (file, keys) = arrival.keep(slot_key, PARAMS).unwrap();
    let tablet = block_on(Ledger::found(MemoryStorage::new(), &file, keys)).unwrap();
    block_on(tablet.take_roll(&roll)).unwrap();
    tablet
}

/// A relay that knows who belongs to the vault, and has nothing yet.
fn relay_of(lead: &Ledger<MemoryStorage>) -> MemoryStore {
    let statements = block_on(lead.statements()).unwrap();
    let relay = MemoryStore::new();
    assert!(relay.open_vault(&statements[0]));
    for statement in &statements[1..] {
        assert!(relay.extend_roll(statement).unwrap());
    }
    relay
}

fn exchanged(relay: &MemoryStore, ledger: &Ledger<MemoryStorage>) {
    let (vault, asker) = (ledger.vault(), ledger.device());
    let line = Line {
        relay,
        vault,
        asker,
    };
    let mut exchange = Exchange::new(vault, asker, Vector::new());
    let wait = block_on(round(&mut exchange, ledger.storage(), &line)).unwrap();
    assert_eq!(wait, None, "the round fails");
}

/// Reaches the relay as one of its devices.
struct Line<'a> {
    relay: &'a MemoryStore,
    vault: VaultId,
    asker: DeviceId,
}

impl Host for Line<'_> {
    async fn ask(&self, request: Request) -> Result<Answer, Failure> {
        let request = Request::from_bytes(&request.to_bytes()).unwrap();
        let roomy = Quota { bytes: u64::MAX };
        let answered = answer(self.relay, self.vault, self.asker, roomy, request)
            .map_err(|refusal| Failure::Refused(refusal.to_string()))?;
        Answer::from_bytes(&answered.to_bytes()).map_err(|error| Failure::Senseless(error.into()))
    }

    fn random(&self) -> u32 {
        0
    }

    async fn remember(&self, _: &Vector) {}

    fn tell(&self, _: Notice) {}
}

/// Seconds in which entries of the same length are opened one after the other.
fn decrypting(file: &KeyFile, slot_key: &SlotKey, written: &[Written]) -> f64 {
    let keys = file.unlock(slot_key).unwrap();
    let (_, mut place) = keys.begin("lead").unwrap();
    let mut frames: Vec<Frame> = Vec::with_capacity(written.len());
    for Written { payload, .. } in written {
        let (frame, next) = keys.seal(&place, Under::Epoch, payload).unwrap();
        place = next;
        frames.push(frame);
    }
    let began = Instant::now();
    for frame in &frames {
        keys.open(frame, Under::Epoch).unwrap();
    }
    began.elapsed().as_secs_f64()
}
