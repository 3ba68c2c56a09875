//! The key file, as it lies on the disk, and what is inside once its sum is right.

use crate::seeds::{frozen, frozen_file};
use ciborium::Value;
use sha2::{Digest, Sha256};
use vault::{KeyFile, SlotKey};

/// From the module that describes the key file.
const SUM: &[u8] = b"lightround v1 key file sum\0";

pub fn seeds() -> Vec<Vec<u8>> {
    frozen(&["src/vault/golden/keyfile", "src/vault/golden/slots"])
}

/// What is read is written to what reads the same. No made-up key opens it.
pub fn key_file(bytes: &[u8]) {
    let Ok(file) = KeyFile::from_bytes(bytes) else {
        return;
    };
    let written = file.to_bytes();
    let again = KeyFile::from_bytes(&written).expect("what was written is read");
    assert_eq!(again.to_bytes(), written);
    assert!(file.unlock(&SlotKey::from_bytes([1; 32])).is_err());
}

pub fn insides() -> Vec<Vec<u8>> {
    let good = [
        "src/vault/golden/keyfile/good.hex",
        "src/vault/golden/keyfile/good-with-more.hex",
        "src/vault/golden/slots/good.hex",
        "src/vault/golden/slots/good-with-later.hex",
    ];
    good.iter().map(|path| body(&frozen_file(path))).collect()
}

fn body(file: &[u8]) -> Vec<u8> {
    let outer: Value = ciborium::from_reader(file).expect("a frozen file is CBOR");
    let fields = outer.into_map().expect("a frozen file is a map");
    let body = fields
        .into_iter()
        .find(|(name, _)| name.as_text() == Some("body"));
    body.and_then(|(_, body)| body.into_bytes().ok())
        .expect("a frozen file has a body")
}

/// A body whose sum is right, as whoever alters a file on purpose would see to.
pub fn inside(body: &[u8]) {
    let sum: [u8; 32] = Sha256::new()
        .chain_update(SUM)
        .chain_update(body)
        .finalize()
        .into();
    let outer = Value::Map(vec![
        (Value::from("format"), Value::from(1)),
        (Value::from("body"), Value::Bytes(body.to_vec())),
        (Value::from("sum"), Value::Bytes(sum.to_vec())),
    ]);
    let mut bytes = Vec::new();
    ciborium::into_writer(&outer, &mut bytes).expect("writing to memory can't fail");
    key_file(&bytes);
}
