//! Bytes of any origin: every one is refused or read, none of them panics.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

use proptest::prelude::*;
use vault::enrolment::{Message, Newcomer, Offer, Packet, Request, Reveal};
use vault::frame::{LONGEST_PAYLOAD, PublicKey};
use vault::request::{Asked, Vouched};
use vault::roll::Change;
use vault::{
    Frame, Invitation, KeyFile, Keys, RecoveryCode, Role, Roll, SlotKey, Statement, StretchParams,
    Under, found_vault,
};

fn params() -> StretchParams {
    StretchParams {
        salt: [0; 16],
        memory_kib: 8192,
        passes: 1,
        lanes: 1,
    }
}

fn new_vault() -> (KeyFile, Keys) {
    found_vault(&SlotKey::from_bytes([1; 32]), params(), "bedside tablet").unwrap()
}

proptest! {
    // Signing without optimisation is slow; more cases would show nothing new.
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_bytes_make_the_parsers_panic(bytes in proptest::collection::vec(any::<u8>(), 0..2000)) {
        prop_assert!(KeyFile::from_bytes(&bytes).is_err());
        let _ = Frame::parse(bytes.clone());
        let (_, keys) = new_vault();
        prop_assert!(keys.open_draft(keys.draft_name(b"any"), &bytes).is_err());
    }

    #[test]
    fn no_one_byte_of_a_key_file_can_be_changed_unseen(at in any::<prop::sample::Index>(), flip in 1_u8..=255) {
        let (file, _) = new_vault();
        let mut bytes = file.to_bytes();
        let at = at.index(bytes.len());
        bytes[at] ^= flip;
        prop_assert!(KeyFile::from_bytes(&bytes).is_err());
    }

    #[test]
    fn what_is_sealed_is_what_opens(payload in proptest::collection::vec(any::<u8>(), 0..5000)) {
        let (_, keys) = new_vault();
        let (_, start) = keys.begin("bedside tablet").unwrap();
        let (frame, next) = keys.seal(&start, Under::Epoch, &payload).unwrap();
        prop_assert_eq!(next.head(), frame.head());
        let again = Frame::parse(frame.bytes().to_vec()).unwrap();
        prop_assert_eq!(&*keys.open(&again, Under::Epoch).unwrap(), &payload);
        // From the layout: 123 before the ciphertext, a class of 256 · 2^k, a tag of 16, a signature of 64.
        let class = frame.bytes().len() - 203;
        prop_assert!(class.is_power_of_two() && class >= 256 && class >= payload.len() + 4);
    }
}

/// Every bit of every byte, each alone.
#[test]
fn no_one_bit_of_a_frame_can_be_changed_unseen() {
    let (_, keys) = new_vault();
    let (frame, _) = keys.begin("bedside tablet").unwrap();
    assert_eq!(frame.bytes().len(), 459);
    assert!(frame.verify(&keys.public()).is_ok());
    for at in 0..frame.bytes().len() {
        for bit in 0..8 {
            let mut bytes = frame.bytes().to_vec();
            bytes[at] ^= 1 << bit;
            let changed = Frame::parse(bytes);
            let unseen = changed.is_ok_and(|changed| changed.verify(&keys.public()).is_ok());
            assert!(!unseen, "bit {bit} of byte {at}");
        }
    }
}

#[test]
fn the_longest_payload_fits_and_one_byte_more_does_not() {
    let (_, keys) = new_vault();
    let (_, start) = keys.begin("bedside tablet").unwrap();
    let (frame, _) = keys
        .seal(&start, Under::Epoch, &vec![1; LONGEST_PAYLOAD])
        .unwrap();
    assert!(frame.bytes().len() < 1 << 20);
    assert!(
        keys.seal(&start, Under::Epoch, &vec![1; LONGEST_PAYLOAD + 1])
            .is_err()
    );
}

#[test]
fn no_weak_or_impossible_public_key_is_taken() {
    // The neutral element: every message would verify under it (RFC 8032, section 5.1: y = 1).
    let mut neutral = [0; 32];
    neutral[0] = 1;
    assert!(PublicKey::from_bytes(&neutral).is_none());
    assert!(PublicKey::from_bytes(&[0; 32]).is_none());
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_one_byte_of_a_statement_can_be_changed_unseen(at in any::<prop::sample::Index>(), flip in 1_u8..=255) {
        let (_, keys) = new_vault();
        let empty = Roll::new(keys.vault());
        let statement = keys.state(&empty, keys.public(), Change::Admit(Role::Lead)).unwrap();
        let mut bytes = statement.bytes().to_vec();
        let at = at.index(bytes.len());
        bytes[at] ^= flip;
        let unseen = Statement::parse(&bytes).is_ok_and(|changed| empty.clone().add(&changed).is_ok());
        prop_assert!(!unseen);
    }

    #[test]
    fn no_bytes_make_a_statement_s_reader_panic(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        prop_assert!(Statement::parse(&bytes).is_err());
    }

    /// The field by which a request says who asks: one sign of it replaced, left out or doubled.
    #[test]
    fn no_one_sign_of_a_request_s_field_can_be_changed_unseen(at in any::<prop::sample::Index>(), sign in any::<char>(), how in 0..3) {
        let asked = Asked { method: "POST", path: "/relay/v1/vaults/00/heads", body: b"body" };
        let vouched = new_vault().1.vouch(asked, 1_700_000_000_000).unwrap();
        let mut field: Vec<char> = vouched.to_string().chars().collect();
        let at = at.index(field.len());
        match how {
            0 => field[at] = sign,
            1 => drop(field.remove(at)),
            _ => field.insert(at, sign),
        }
        let changed: String = field.into_iter().collect();
        prop_assume!(changed != vouched.to_string());
        // Another way to write the same, such as a capital digit, vouches for the same.
        let other = changed.parse::<Vouched>().is_ok_and(|read| read != vouched && read.is_for(asked));
        prop_assert!(!other);
    }

    #[test]
    fn no_text_makes_a_reader_of_what_people_type_panic(signs in proptest::collection::vec(any::<char>(), 0..300)) {
        let text: String = signs.into_iter().collect();
        let _ = text.parse::<Vouched>();
        let _ = text.parse::<Invitation>();
        let _ = text.parse::<RecoveryCode>();
        prop_assert!(Request::read(&text).is_err());
    }

    /// With and without the first bytes that each of them begins with.
    #[test]
    fn no_bytes_make_the_readers_of_enrolment_checkpoints_and_emptied_frames_panic(
        bytes in proptest::collection::vec(any::<u8>(), 0..400),
        cut in any::<prop::sample::Index>(),
    ) {
        let (_, keys) = new_vault();
        let begun = |first: &[u8]| [first, &bytes].concat();
        for number in 0..6 {
            let bytes = begun(&[1, number]);
            let _ = (Request::parse(&bytes), Offer::parse(&bytes), Reveal::parse(&bytes));
            if let Ok(packet) = Packet::parse(&bytes) {
                prop_assert_eq!(packet.bytes(), bytes);
            }
        }
        let _ = (Request::parse(&bytes), Offer::parse(&bytes), Reveal::parse(&bytes));
        let (one, other) = bytes.split_at(cut.index(bytes.len() + 1));
        prop_assert!(keys.open_checkpoint(&[begun(&[1, 1]), bytes.clone()]).is_err());
        prop_assert!(keys.open_checkpoint(&[one.to_vec(), other.to_vec()]).is_err());
        let _ = Frame::parse(begun(&[129]));
        let (first, _) = keys.begin("tablet").unwrap();
        let emptied = first.emptied();
        let mut changed = emptied.bytes().to_vec();
        let at = cut.index(changed.len());
        changed[at] ^= 0x10;
        let unseen = Frame::parse(changed).is_ok_and(|changed| changed.verify(&keys.public()).is_ok());
        prop_assert!(!unseen);
        prop_assert!(Newcomer::new("tablet").unwrap().request().bytes().len() < 180);
    }
}
