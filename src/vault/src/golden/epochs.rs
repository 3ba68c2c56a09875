//! Epochs and erasures: the fifth frame of the golden log.

use super::{Ordinals, bad, founded, golden};
use crate::frame::{Frame, FrameError};
use crate::keys::{Epoch, ErasedKey, Erasure, Keys};
use crate::secret::Secret;
use crate::{KeyId, OpenError, Proven, Subject};
use ed25519_dalek::SigningKey;

fn frame(name: &str) -> Frame {
    Frame::parse(golden(name).0).unwrap()
}

/// The golden keys and the end of their log.
fn fourth() -> (Keys, Proven) {
    let (_, keys, _) = founded();
    let (first, last) = (
        frame("frame/good-1-introduction"),
        frame("frame/good-4-entry"),
    );
    let proven = keys.prove(&first, &last).unwrap();
    (keys, proven)
}

fn public(secret: u8) -> [u8; 32] {
    let secret = x25519_dalek::StaticSecret::from([secret; 32]);
    x25519_dalek::PublicKey::from(&secret).to_bytes()
}

/// A device that has the first epoch, and an exchange key to which the frozen one is sealed.
fn reader() -> Keys {
    let founder = founded().1;
    let first = founder.current();
    let epoch = Epoch {
        number: 1,
        id: first.id,
        roll: 0,
        key: Secret::from_bytes(*first.key.bytes()),
    };
    let exchange = Secret::from_bytes([0x21; 32]);
    Keys::new(
        founder.vault(),
        SigningKey::from_bytes(&[0x23; 32]),
        exchange,
        vec![epoch],
    )
}

#[test]
fn the_same_epoch_is_sealed_byte_for_byte_and_learnt() {
    let (keys, proven) = fourth();
    let keys = keys.recovered_by(Some(public(0x22)));
    let source = &mut Ordinals(90);
    let epoch = keys.make_epoch_from(3, source).unwrap();
    let sealed = keys
        .seal_epoch_from(&proven, &epoch, &[public(0x21)], source)
        .unwrap();
    assert_eq!(sealed.bytes(), golden("epoch/good").0);
    for name in ["epoch/good", "epoch/good-with-more"] {
        let reader = reader();
        let notice = reader.learn_epoch(&frame(name), true).unwrap();
        assert!(notice.ours);
        assert_eq!(notice.sealed_to, [public(0x21), public(0x22)]);
        assert_eq!(reader.epoch_now(), (2, KeyId::from_bytes([91; 16])));
        assert_eq!(reader.recovery(), Some(public(0x22)));
        // And by the recovery code's secret alone, with the first epoch.
        let secret = Secret::from_bytes([0x22; 32]);
        let opened = crate::keys::recovered(&frame(name), &secret, &public(0x22)).unwrap();
        assert_eq!(
            opened.iter().map(|epoch| epoch.number).collect::<Vec<_>>(),
            [1, 2]
        );
    }
}

#[test]
fn an_epoch_that_does_not_count_is_read_under_and_not_written_under() {
    let reader = reader();
    reader.learn_epoch(&frame("epoch/good"), false).unwrap();
    assert_eq!(reader.epoch_now().0, 1);
    assert!(reader.epoch_by_id(KeyId::from_bytes([91; 16])).is_some());
    reader.learn_epoch(&frame("epoch/good"), true).unwrap();
    assert_eq!(reader.epoch_now().0, 2);
}

#[test]
fn every_bad_epoch_is_refused_for_what_is_wrong_with_it() {
    for name in bad("epoch") {
        let note = golden(&name).1;
        let reader = reader();
        let said = match reader.learn_epoch(&frame(&name), true) {
            Err(OpenError::Opaque) => "Opaque",
            Err(OpenError::OtherVault) => "OtherVault",
            Ok(notice) if !notice.ours => "NotOurs",
            other => panic!("{name}: {other:?}"),
        };
        assert!(
            note.starts_with(&format!("{said}:")),
            "{name}: {said}, and the note says {note}"
        );
        assert_eq!(reader.epoch_now().0, 1, "{name} changes nothing");
    }
}

#[test]
fn the_same_erasure_is_sealed_byte_for_byte_and_covers_what_it_names() {
    let (keys, proven) = fourth();
    let erasure = Erasure {
        subject: Subject::from_bytes([0xaa; 16]),
        at: 1_772_600_000_000,
        keys: vec![ErasedKey {
            id: KeyId::from_bytes([12; 16]),
            device: keys.device(),
            sequence: 2,
        }],
    };
    let sealed = keys
        .seal_erasure_from(&proven, &erasure, &mut Ordinals(100))
        .unwrap();
    assert_eq!(sealed.bytes(), golden("erasure/good").0);
    let read = keys.open_erasure(&frame("erasure/good")).unwrap();
    assert_eq!(read, erasure);
    let names = [
        "1-introduction",
        "2-person-key",
        "3-person-entry",
        "4-entry",
    ];
    let covered = names.map(|name| read.covers(&frame(&format!("frame/good-{name}"))));
    assert_eq!(covered, [false, true, true, false]);
}

#[test]
fn what_stays_of_a_frame_is_frozen_too() {
    let whole = frame("frame/good-3-person-entry");
    assert_eq!(whole.emptied().bytes(), golden("erasure/good-emptied").0);
    let emptied = frame("erasure/good-emptied");
    assert!(emptied.is_emptied());
    assert_eq!(
        (emptied.hash(), emptied.header()),
        (whole.hash(), whole.header())
    );
    let (_, keys, _) = founded();
    emptied.verify(&keys.public()).unwrap();
    let person = keys
        .open_person_key(&frame("frame/good-2-person-key"))
        .unwrap();
    let opened = keys.open(&emptied, crate::Under::Person(&person));
    assert_eq!(opened.unwrap_err(), OpenError::Emptied);
}

#[test]
fn every_bad_erasure_is_refused_for_what_is_wrong_with_it() {
    let (_, keys, _) = founded();
    for name in bad("erasure") {
        let (bytes, note) = golden(&name);
        let said = match Frame::parse(bytes) {
            Err(FrameError::Length { .. }) => "Length",
            Err(other) => panic!("{name}: {other}"),
            Ok(frame) if frame.is_emptied() && frame.verify(&keys.public()).is_err() => "Unsigned",
            Ok(frame) => match keys.open_erasure(&frame) {
                Err(OpenError::Opaque) => "Opaque",
                Err(OpenError::OtherVault) => "OtherVault",
                other => panic!("{name}: {other:?}"),
            },
        };
        assert!(
            note.starts_with(&format!("{said}:")),
            "{name}: {said}, and the note says {note}"
        );
    }
}
