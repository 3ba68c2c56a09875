use super::{Ordinals, bad, founded, golden};
use crate::frame::{Frame, FrameError, Purpose};
use crate::keys::{Keys, PersonKey, Under};
use crate::random::Source;
use crate::{Head, OpenError, Subject};

const GOOD: [&str; 4] = [
    "frame/good-1-introduction",
    "frame/good-2-person-key",
    "frame/good-3-person-entry",
    "frame/good-4-entry",
];

fn good() -> Vec<Frame> {
    GOOD.iter()
        .map(|name| Frame::parse(golden(name).0).unwrap())
        .collect()
}

/// Seals with the next ordinal as nonce.
fn seal(
    keys: &Keys,
    after: Head,
    purpose: Purpose,
    person: Option<&PersonKey>,
    payload: &[u8],
    source: &mut dyn Source,
) -> Frame {
    let (id, content) = match person {
        Some(person) => (person.id(), person.content(keys.device())),
        None => (
            keys.current().id,
            keys.current().content(keys.device(), purpose).unwrap(),
        ),
    };
    keys.seal_from(Some(after), purpose, id, &content, payload, source)
        .unwrap()
}

#[test]
fn the_same_log_is_sealed_byte_for_byte() {
    let (_, keys, mut source) = founded();
    let first = keys.begin_from("bedside tablet", &mut source).unwrap();
    let person = PersonKey::make(Subject::from_bytes([0xaa; 16]), &mut source).unwrap();
    let second = seal(
        &keys,
        first.head(),
        Purpose::PersonKey,
        None,
        &person.payload(),
        &mut source,
    );
    let third = seal(
        &keys,
        second.head(),
        Purpose::Entry,
        Some(&person),
        b"right eye, 6/9",
        &mut source,
    );
    let fourth = seal(
        &keys,
        third.head(),
        Purpose::Entry,
        None,
        &[b'n'; 300],
        &mut source,
    );
    for (frame, name) in [first, second, third, fourth].iter().zip(GOOD) {
        assert_eq!(frame.bytes(), golden(name).0, "{name}");
    }
}

#[test]
fn the_frozen_log_is_read_chained_and_signed() {
    let (_, keys, _) = founded();
    let frames = good();
    for pair in frames.windows(2) {
        assert_eq!(pair[1].header().previous, pair[0].hash());
    }
    for frame in &frames {
        frame.verify(&keys.public()).unwrap();
    }
    let introduction = keys.open_introduction(&frames[0]).unwrap();
    assert_eq!(
        (introduction.name.as_str(), introduction.exchange),
        ("bedside tablet", keys.exchange_public())
    );
    let person = keys.open_person_key(&frames[1]).unwrap();
    assert_eq!(person.subject(), Subject::from_bytes([0xaa; 16]));
    assert_eq!(
        *keys.open(&frames[2], Under::Person(&person)).unwrap(),
        b"right eye, 6/9"
    );
    assert_eq!(*keys.open(&frames[3], Under::Epoch).unwrap(), [b'n'; 300]);
}

#[test]
fn a_header_is_written_as_it_was_read() {
    for frame in good() {
        assert_eq!(frame.header().bytes(), frame.bytes()[..99]);
    }
}

#[test]
fn every_bad_frame_is_refused_for_what_is_wrong_with_it() {
    let (_, keys, _) = founded();
    for name in bad("frame") {
        let (bytes, note) = golden(&name);
        let said = match Frame::parse(bytes) {
            Err(error) => word(error),
            Ok(frame) if frame.verify(&keys.public()).is_err() => "Unsigned",
            Ok(frame) => match keys.open(&frame, Under::Epoch) {
                Err(OpenError::Opaque) => "Opaque",
                other => panic!("{name}: {other:?}"),
            },
        };
        assert!(
            note.starts_with(&format!("{said}:")),
            "{name}: {said}, and the note says {note}"
        );
    }
}

/// What was unsigned is unopened too: the header is the associated data, so nothing in it can be changed unseen.
#[test]
fn an_altered_frame_does_not_open_either() {
    let (_, keys, _) = founded();
    for name in bad("frame") {
        let (bytes, note) = golden(&name);
        if note.starts_with("Unsigned") && !name.ends_with("signature-bit") {
            assert!(
                keys.open(&Frame::parse(bytes).unwrap(), Under::Epoch)
                    .is_err(),
                "{name} opens"
            );
        }
    }
}

fn word(error: FrameError) -> &'static str {
    match error {
        FrameError::TooShort { .. } => "TooShort",
        FrameError::TooLong { .. } => "TooLong",
        FrameError::Format(_) => "Format",
        FrameError::Algorithm(_) => "Algorithm",
        FrameError::Sequence => "Sequence",
        FrameError::Previous { .. } => "Previous",
        FrameError::Epoch => "Epoch",
        FrameError::Purpose => "Purpose",
        FrameError::CiphertextLength(_) => "CiphertextLength",
        FrameError::Length { .. } => "Length",
    }
}

#[test]
fn ordinals_are_what_the_second_implementation_draws() {
    let mut bytes = [0; 3];
    Ordinals(6).fill(&mut bytes).unwrap();
    assert_eq!(bytes, [7, 7, 7]);
}
