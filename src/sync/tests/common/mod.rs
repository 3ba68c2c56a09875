//! What several tests stand on.
#![allow(dead_code, reason = "each test uses a part")]

pub mod faulty;

use futures::executor::block_on;
use std::fs;
use std::path::Path;
use sync::{Append, Ledger, MemoryStorage, Opened, Storage};
use vault::{DeviceId, Frame, KeyFile, Keys, SlotKey, StretchParams, Subject, found_vault};

/// Two people on a round.
pub const ONE: Subject = Subject::from_bytes([1; 16]);
pub const OTHER: Subject = Subject::from_bytes([2; 16]);

/// The key that stands for the passphrase.
pub fn slot_key() -> SlotKey {
    SlotKey::from_bytes([1; 32])
}

/// A new vault's key file and keys.
pub fn vault() -> (KeyFile, Keys) {
    let params = StretchParams {
        salt: [0; 16],
        memory_kib: 8192,
        passes: 1,
        lanes: 1,
    };
    found_vault(&slot_key(), params, "bedside tablet").unwrap()
}

/// A founded vault in memory.
pub fn founded() -> (MemoryStorage, KeyFile, Ledger<MemoryStorage>) {
    let (file, keys) = vault();
    let storage = MemoryStorage::new();
    let ledger = block_on(Ledger::found(storage.clone(), &file, keys)).unwrap();
    (storage, file, ledger)
}

/// Opens what is kept, as after a restart.
pub fn reopened(storage: &MemoryStorage, file: &KeyFile) -> Opened<MemoryStorage> {
    block_on(Ledger::open(
        storage.clone(),
        file.unlock(&slot_key()).unwrap(),
    ))
    .unwrap()
}

/// The payloads of what was read.
pub fn payloads<S>(opened: &Opened<S>) -> Vec<&[u8]> {
    opened
        .entries
        .iter()
        .map(|entry| entry.payload.as_slice())
        .collect()
}

/// The bytes kept under a number.
pub fn kept(storage: &MemoryStorage, device: DeviceId, sequence: u64) -> Vec<u8> {
    block_on(storage.page(device, sequence, 1))
        .unwrap()
        .remove(0)
        .bytes
}

/// Frames of the vault's frozen samples.
pub fn golden(names: &[&str]) -> Vec<Frame> {
    names
        .iter()
        .map(|name| Frame::parse(golden_bytes(&format!("frame/{name}"))).unwrap())
        .collect()
}

/// The frozen vault, its key file and its first device's four frames in a storage.
pub fn golden_vault() -> (MemoryStorage, Keys) {
    let file = KeyFile::from_bytes(&golden_bytes("keyfile/good")).unwrap();
    let slot_key =
        vault::stretch("harbour lantern thimble orchard", &file.passphrase_params()).unwrap();
    let keys = file.unlock(&slot_key).unwrap();
    let frames = golden(&[
        "good-1-introduction",
        "good-2-person-key",
        "good-3-person-entry",
        "good-4-entry",
    ]);
    let storage = MemoryStorage::new();
    block_on(storage.found(&file.to_bytes(), &frames[0])).unwrap();
    append(&storage, &frames[1..], Some(frames[0].head()));
    (storage, keys)
}

/// Appends frames as they are.
pub fn append(storage: &MemoryStorage, frames: &[Frame], expected: Option<vault::Head>) {
    let device = frames[0].device();
    block_on(storage.append(Append {
        device,
        expected,
        frames,
        drop_drafts: &[],
    }))
    .unwrap();
}

fn golden_bytes(name: &str) -> Vec<u8> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../vault/golden")
        .join(format!("{name}.hex"));
    hex(&fs::read_to_string(path).unwrap())
}

/// The bytes of a frozen file, whose first line is a note.
pub fn hex(text: &str) -> Vec<u8> {
    let digits: Vec<u8> = text.lines().skip(1).flat_map(str::bytes).collect();
    digits
        .chunks(2)
        .map(|pair| u8::from_str_radix(std::str::from_utf8(pair).unwrap(), 16).unwrap())
        .collect()
}
