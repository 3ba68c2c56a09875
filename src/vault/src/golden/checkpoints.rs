use super::{Ordinals, bad, founded, golden};
use crate::CheckpointError;
use serde_bytes::ByteBuf;

/// A frozen list of pieces.
fn pieces(name: &str) -> (Vec<Vec<u8>>, String) {
    let (bytes, note) = golden(name);
    let pieces: Vec<ByteBuf> = ciborium::from_reader(bytes.as_slice()).unwrap();
    (pieces.into_iter().map(ByteBuf::into_vec).collect(), note)
}

fn plain() -> Vec<u8> {
    (0..=255).cycle().take(256 * 300).collect()
}

#[test]
fn the_same_checkpoint_is_sealed_byte_for_byte_and_opens() {
    let (_, keys, _) = founded();
    for (name, plain) in [
        ("checkpoint/good", plain()),
        ("checkpoint/good-empty", vec![]),
    ] {
        let sealed = keys
            .seal_checkpoint_from(&plain, &mut Ordinals(110))
            .unwrap();
        let frozen = pieces(name).0;
        assert_eq!(sealed, frozen, "{name}");
        assert_eq!(*keys.open_checkpoint(&frozen).unwrap(), plain, "{name}");
    }
}

#[test]
fn every_bad_checkpoint_is_refused_for_what_is_wrong_with_it() {
    let (_, keys, _) = founded();
    for name in bad("checkpoint") {
        let (pieces, note) = pieces(&name);
        let said = match keys.open_checkpoint(&pieces) {
            Err(CheckpointError::Format) => "Format",
            Err(CheckpointError::UnknownKey) => "UnknownKey",
            Err(CheckpointError::Opaque) => "Opaque",
            Ok(_) => panic!("{name} opens"),
        };
        assert!(
            note.starts_with(&format!("{said}:")),
            "{name}: {said}, and the note says {note}"
        );
    }
}
