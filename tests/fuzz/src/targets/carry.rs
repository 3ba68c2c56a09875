//! The carry file.

use crate::seeds::frozen;
use futures::executor::block_on;
use std::io::Cursor;
use sync::carry::{CarryFile, Walk, carried_roll, export, import, read_through, relayed};
use sync::exchange::{FrameStore, MemoryStore, Run, Vector};
use sync::{Append, MemoryStorage, Storage};
use vault::roll::Change;
use vault::sample::devices;
use vault::{Keys, Role, Roll, carry_sum};

/// Bytes of the sum at the end.
const SUM: usize = 32;

fn reader() -> Keys {
    devices(1, 2).remove(1).keys
}

/// A file as it comes. Whichever way it is read, it is taken by all or by none; what is refused changes nothing, and what is
/// taken is there to the last frame.
pub fn file(bytes: &[u8]) {
    let keys = reader();
    let storage = MemoryStorage::new();
    let imported = block_on(import(&storage, &keys, bytes));
    let there: Vector = block_on(storage.vector())
        .expect("memory can be read")
        .into_iter()
        .collect();
    let parsed = CarryFile::parse(bytes);
    let walked = Walk::begin(Cursor::new(bytes)).and_then(|mut walk| walk.check());
    assert_eq!(parsed.is_ok(), walked.is_ok());
    if imported.is_err() {
        assert_eq!(there, Vector::new());
    }
    let Ok(parsed) = parsed else {
        return;
    };
    assert_eq!(carried_roll(bytes).as_ref(), Ok(&parsed.roll));
    if imported.is_ok() {
        let whole = parsed.logs.iter().filter(|log| log.first() == 1);
        let heads: Vector = whole
            .filter_map(|log| Some((log.device(), log.head()?)))
            .collect();
        assert_eq!(there, heads);
    }
    let mut walk = Walk::begin(Cursor::new(bytes)).expect("it was gone through before");
    let _ = read_through(&mut walk, &keys, drop);
}

/// A file whose sum is right, as whoever alters one on purpose would see to.
pub fn summed(bytes: &[u8]) {
    file(&[bytes, &carry_sum(bytes)].concat());
}

pub fn seeds() -> Vec<Vec<u8>> {
    let mut files = frozen(&["src/sync/golden/carry"]);
    files.extend([exported(), from_a_relay()]);
    for file in &mut files {
        file.truncate(file.len().saturating_sub(SUM));
    }
    files
}

/// Two logs of the vault that the reader is of.
fn exported() -> Vec<u8> {
    let storage = MemoryStorage::new();
    let mut both = devices(1, 2);
    for device in &mut both {
        let frames = device.log(1);
        let append = Append {
            device: frames[0].device(),
            expected: None,
            frames: &frames,
            drop_drafts: &[],
        };
        block_on(storage.append(append)).expect("memory has room");
    }
    block_on(export(&storage, &both[0].keys, &Vector::new()))
        .expect("it is sound")
        .bytes
}

/// A log and a roll.
fn from_a_relay() -> Vec<u8> {
    let mut device = devices(1, 1).remove(0);
    let vault = device.keys.vault();
    let first = device.keys.state(
        &Roll::new(vault),
        device.keys.public(),
        Change::Admit(Role::Lead),
    );
    let store = MemoryStore::new();
    store.open_vault(&first.expect("whoever founds a vault is its lead"));
    let run = Run::new(device.log(1)).expect("a log is a run");
    store.append(&run).expect("memory has room");
    relayed(&store, vault).expect("it is sound").bytes
}
