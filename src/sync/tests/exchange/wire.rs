use proptest::prelude::*;
use serde_bytes::ByteBuf;
use std::collections::BTreeMap;
use sync::exchange::wire::{LONGEST_REQUEST, MOST_DEVICES};
use sync::exchange::{
    Answer, Asides, Page, Pushed, Request, Run, RunError, Shown, Vector, Why, WireError,
};
use vault::roll::{Change, StatementError};
use vault::sample::devices;
use vault::{DeviceId, Frame, FrameHash, Head, Invitation, Role, Roll, Statement};

fn log() -> Vec<Frame> {
    devices(1, 1)[0].log(3)
}

fn requests() -> Vec<Request> {
    let log = log();
    let have = [(log[1].device(), log[1].head())].into_iter().collect();
    let after = Some((log[2].device(), log[2].head()));
    vec![
        Request::Heads,
        Request::Pull {
            have: Vector::new(),
        },
        Request::Pull { have },
        Request::Push(Run::new(log).unwrap()),
        Request::Roll,
        Request::State(Box::new(statement())),
        Request::Open {
            code: Invitation::from_bytes([5; 15]),
            first: Box::new(statement()),
        },
        Request::Aside { after: None },
        Request::Aside { after },
    ]
}

fn answers() -> Vec<Answer> {
    let log = log();
    let key = devices(1, 1)[0].keys.public();
    let head = log[3].head();
    let heads = vec![Shown { key, head }];
    let page = Page {
        heads: heads.clone(),
        runs: vec![Run::new(log[1..].to_vec()).unwrap()],
        forks: [(log[1].device(), log[1].head())].into_iter().collect(),
        more: true,
    };
    vec![
        Answer::Heads(heads),
        Answer::Page(page),
        Answer::Pushed(Pushed::Kept { head }),
        Answer::Pushed(Pushed::Gap { head: None }),
        Answer::Pushed(Pushed::Gap { head: Some(head) }),
        Answer::Pushed(Pushed::Fork { sequence: 4 }),
        Answer::Pushed(Pushed::Aside { head: Some(head) }),
        Answer::Roll(vec![statement()]),
        Answer::Aside(Asides::default()),
        Answer::Aside(Asides {
            frames: vec![
                (Why::Fork, log[1].clone()),
                (Why::AfterRemoval, log[2].clone()),
            ],
            more: true,
        }),
    ]
}

fn statement() -> Statement {
    let device = devices(1, 1).remove(0);
    let roll = Roll::new(device.keys.vault());
    let admit = Change::Admit(Role::Lead);
    device
        .keys
        .state(&roll, device.keys.public(), admit)
        .unwrap()
}

#[test]
fn what_was_written_is_read() {
    for request in requests() {
        assert_eq!(Request::from_bytes(&request.to_bytes()), Ok(request));
    }
    for answer in answers() {
        assert_eq!(Answer::from_bytes(&answer.to_bytes()), Ok(answer));
    }
}

/// The bytes are those of RFC 8949 for the shape that the documentation gives, written out by hand.
#[test]
fn the_shape_on_the_wire_is_the_documented_one() {
    let heads = b"\xa2\x67version\x01\x64body\xa1\x65heads\xa0";
    assert_eq!(Request::Heads.to_bytes(), heads);
    let mut have = Vector::new();
    have.set(
        DeviceId::from_bytes([7; 16]),
        Some(Head {
            sequence: 3,
            hash: FrameHash::from_bytes([9; 32]),
        }),
    );
    let mut pull =
        b"\xa2\x67version\x01\x64body\xa1\x64pull\xa1\x64have\x81\xa3\x66device\x50".to_vec();
    pull.extend([7; 16]);
    pull.extend(b"\x68sequence\x03\x64hash\x58\x20");
    pull.extend([9; 32]);
    assert_eq!(Request::Pull { have }.to_bytes(), pull);
    let fork = b"\xa2\x67version\x01\x64body\xa1\x66pushed\xa1\x64fork\xa1\x68sequence\x04";
    assert_eq!(
        Answer::Pushed(Pushed::Fork { sequence: 4 }).to_bytes(),
        fork
    );
}

#[test]
fn a_later_version_is_refused_by_its_number_and_an_unknown_field_passed_over() {
    let later = b"\xa2\x67version\x02\x64body\xa1\x66unseen\xa0";
    assert_eq!(Request::from_bytes(later), Err(WireError::Version(2)));
    let same = b"\xa2\x67version\x02\x64body\xa1\x65heads\xa0";
    assert_eq!(Request::from_bytes(same), Err(WireError::Version(2)));
    let more = b"\xa3\x67version\x01\x64more\x18\x2a\x64body\xa1\x65heads\xa1\x61x\xf6";
    assert_eq!(Request::from_bytes(more), Ok(Request::Heads));
}

#[test]
fn every_cut_and_every_trailing_byte_is_refused() {
    for bytes in requests().iter().map(Request::to_bytes) {
        for length in 0..bytes.len() {
            assert_eq!(
                Request::from_bytes(&bytes[..length]),
                Err(WireError::Malformed),
                "{length}"
            );
        }
        let longer = [bytes.as_slice(), &[0]].concat();
        assert_eq!(Request::from_bytes(&longer), Err(WireError::Trailing(1)));
    }
}

#[test]
fn what_is_within_bounds_and_nonsense_all_the_same_is_refused_for_what_it_is() {
    let place = |device: u8, sequence: u64| place_of(DeviceId::from_bytes([device; 16]), sequence);
    assert_eq!(pull(&[place(1, 0)]), Err(WireError::Zero));
    let twice = DeviceId::from_bytes([1; 16]);
    assert_eq!(
        pull(&[place(1, 1), place(1, 2)]),
        Err(WireError::Twice(twice))
    );
    let many: Vec<Place> = (0..=MOST_DEVICES as u128)
        .map(|device| place_of(DeviceId::from_bytes(device.to_be_bytes()), 1))
        .collect();
    assert_eq!(
        pull(&many),
        Err(WireError::TooManyDevices(MOST_DEVICES + 1))
    );

    let log = log();
    let raw = |frames: &[&Frame]| -> Vec<ByteBuf> {
        frames
            .iter()
            .map(|frame| ByteBuf::from(frame.bytes()))
            .collect()
    };
    assert_eq!(push(&[]), Err(WireError::Run(RunError::Empty)));
    assert_eq!(
        push(&raw(&[&log[0], &log[2]])),
        Err(WireError::Run(RunError::Broken { sequence: 3 }))
    );
    let mut cut = raw(&[&log[0], &log[1]]);
    cut[1].pop();
    assert!(matches!(push(&cut), Err(WireError::Frame { at: 2, .. })));
    let short =
        [("state", "statement")].map(|(kind, field)| read(kind, field, ByteBuf::from([1; 194])));
    assert_eq!(
        short[0],
        Err(WireError::Statement(StatementError::Length(194)))
    );
    let oversized = vec![0; LONGEST_REQUEST + 1];
    assert!(matches!(
        Request::from_bytes(&oversized),
        Err(WireError::TooLong { .. })
    ));
}

#[test]
fn every_refusal_is_one_plain_sentence() {
    let refused = [
        WireError::TooLong { length: 2, most: 1 },
        WireError::Malformed,
        WireError::Version(2),
        WireError::Trailing(3),
        WireError::TooManyDevices(5000),
        WireError::Twice(DeviceId::from_bytes([1; 16])),
        WireError::Zero,
        WireError::Key,
        WireError::Run(RunError::Empty),
        WireError::Page(9),
    ];
    for said in refused.map(|error| error.to_string()) {
        assert!(
            said.starts_with(char::is_lowercase) && !said.contains(". "),
            "{said}"
        );
    }
}

/// Lengths that lie about what follows must not make a reader reserve room for them.
#[test]
fn lying_lengths_are_refused_at_once() {
    for lie in [
        b"\xa2\x67version\x01\x64body\xa1\x64push\xa1\x66frames\x9b\x00\xff\xff\xff\xff\xff\xff\xff".as_slice(),
        b"\xa2\x67version\x01\x64body\xa1\x64push\xa1\x66frames\x81\x5b\x00\xff\xff\xff\xff\xff\xff\xff",
        b"\xbb\x00\xff\xff\xff\xff\xff\xff\xff",
    ] {
        assert_eq!(Request::from_bytes(lie), Err(WireError::Malformed));
    }
    let deep = vec![0x81; 100_000];
    assert_eq!(Request::from_bytes(&deep), Err(WireError::Malformed));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_bytes_make_a_reader_panic(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        prop_assert!(Request::from_bytes(&bytes).is_err());
        prop_assert!(Answer::from_bytes(&bytes).is_err());
    }

    #[test]
    fn no_changed_byte_makes_a_reader_panic(at in any::<proptest::sample::Index>(), to in any::<u8>()) {
        for answer in answers() {
            let mut bytes = answer.to_bytes();
            let at = at.index(bytes.len());
            bytes[at] = to;
            // Whatever is read is a message again, and says the same when written.
            if let Ok(read) = Answer::from_bytes(&bytes) {
                prop_assert_eq!(Answer::from_bytes(&read.to_bytes()), Ok(read));
            }
        }
    }
}

type Place = (DeviceId, u64);

fn place_of(device: DeviceId, sequence: u64) -> Place {
    (device, sequence)
}

fn pull(places: &[Place]) -> Result<Request, WireError> {
    #[derive(serde::Serialize)]
    struct Raw {
        device: DeviceId,
        sequence: u64,
        hash: FrameHash,
    }
    let have: Vec<Raw> = places
        .iter()
        .map(|(device, sequence)| Raw {
            device: *device,
            sequence: *sequence,
            hash: FrameHash::from_bytes([1; 32]),
        })
        .collect();
    read("pull", "have", have)
}

fn push(frames: &[ByteBuf]) -> Result<Request, WireError> {
    read("push", "frames", frames)
}

/// Writes a request field by field, as a client that keeps no rules would.
fn read<T: serde::Serialize>(kind: &str, field: &str, value: T) -> Result<Request, WireError> {
    #[derive(serde::Serialize)]
    struct Message<B> {
        version: u8,
        body: B,
    }
    let body = BTreeMap::from([(kind, BTreeMap::from([(field, value)]))]);
    let mut bytes = Vec::new();
    ciborium::into_writer(&Message { version: 1, body }, &mut bytes).unwrap();
    Request::from_bytes(&bytes)
}
