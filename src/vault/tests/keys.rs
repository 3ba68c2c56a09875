//! What keys do for each other and refuse one another.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

use vault::{
    Keys, OpenError, ProofError, SlotKey, StretchError, StretchParams, Subject, Under, UnlockError,
    found_vault, stretch,
};

const PARAMS: StretchParams = StretchParams {
    salt: [9; 16],
    memory_kib: 8192,
    passes: 1,
    lanes: 1,
};
const PERSON: Subject = Subject::from_bytes([5; 16]);

fn keys() -> Keys {
    found_vault(&SlotKey::from_bytes([1; 32]), PARAMS, "bedside tablet")
        .unwrap()
        .1
}

#[test]
fn keys_that_open_a_log_are_proven_and_go_on_with_it() {
    let keys = keys();
    let (first, start) = keys.begin("bedside tablet").unwrap();
    let (second, _) = keys.seal(&start, Under::Epoch, b"one").unwrap();
    let proven = keys.prove(&first, &second).unwrap();
    assert_eq!(proven.head(), second.head());
    let (third, _) = keys.seal(&proven, Under::Epoch, b"two").unwrap();
    assert_eq!(
        (third.sequence(), third.header().previous),
        (3, second.hash())
    );
}

#[test]
fn keys_of_another_vault_or_device_prove_nothing() {
    let (ours, theirs) = (keys(), keys());
    let (first, _) = theirs.begin("spare tablet").unwrap();
    assert_eq!(ours.prove(&first, &first).unwrap_err(), ProofError::NotOurs);
}

#[test]
fn a_witness_under_a_persons_key_proves_nothing() {
    let keys = keys();
    let (_, start) = keys.begin("bedside tablet").unwrap();
    let person = keys.make_person_key(PERSON).unwrap();
    let (about, _) = keys.seal(&start, Under::Person(&person), b"one").unwrap();
    assert_eq!(
        keys.prove(&about, &about).unwrap_err(),
        ProofError::WrongKey
    );
}

#[test]
fn a_witness_newer_than_the_end_proves_nothing() {
    let keys = keys();
    let (first, start) = keys.begin("bedside tablet").unwrap();
    let (second, _) = keys.seal(&start, Under::Epoch, b"one").unwrap();
    assert_eq!(
        keys.prove(&second, &first).unwrap_err(),
        ProofError::NotOurs
    );
}

#[test]
fn a_persons_key_comes_back_from_its_frame_and_opens_what_is_about_them() {
    let keys = keys();
    let (_, start) = keys.begin("bedside tablet").unwrap();
    let made = keys.make_person_key(PERSON).unwrap();
    let (frame, next) = keys.seal_person_key(&start, &made).unwrap();
    let (about, _) = keys
        .seal(&next, Under::Person(&made), b"right eye")
        .unwrap();
    let read = keys.open_person_key(&frame).unwrap();
    assert_eq!((read.subject(), read.id()), (PERSON, made.id()));
    assert_eq!(
        *keys.open(&about, Under::Person(&read)).unwrap(),
        b"right eye"
    );
}

#[test]
fn nothing_opens_under_the_wrong_key_or_as_something_else() {
    let keys = keys();
    let (first, start) = keys.begin("bedside tablet").unwrap();
    let (one, other) = (
        keys.make_person_key(PERSON).unwrap(),
        keys.make_person_key(PERSON).unwrap(),
    );
    let (about, next) = keys
        .seal(&start, Under::Person(&one), b"right eye")
        .unwrap();
    let (plain, _) = keys.seal(&next, Under::Epoch, b"a place").unwrap();
    assert_eq!(
        keys.open(&about, Under::Person(&other)).unwrap_err(),
        OpenError::UnknownKey
    );
    assert_eq!(
        keys.open(&about, Under::Epoch).unwrap_err(),
        OpenError::UnknownKey
    );
    assert_eq!(
        keys.open(&plain, Under::Person(&one)).unwrap_err(),
        OpenError::UnknownKey
    );
    assert_eq!(
        keys.open(&first, Under::Epoch).unwrap_err(),
        OpenError::OtherPurpose
    );
    assert!(matches!(
        keys.open_person_key(&plain),
        Err(OpenError::OtherPurpose)
    ));
    assert!(matches!(
        keys.open_introduction(&plain),
        Err(OpenError::OtherPurpose)
    ));
    assert_eq!(
        self::keys().open(&plain, Under::Epoch).unwrap_err(),
        OpenError::OtherVault
    );
}

/// Why a frame's hash is made in two steps: with the ciphertext gone, the chain and the signature still verify.
#[test]
fn a_frame_without_its_ciphertext_still_verifies() {
    use sha2::{Digest, Sha256};
    let keys = keys();
    let (_, start) = keys.begin("bedside tablet").unwrap();
    let person = keys.make_person_key(PERSON).unwrap();
    let (erased, next) = keys
        .seal(&start, Under::Person(&person), b"right eye")
        .unwrap();
    let (after, _) = keys.seal(&next, Under::Epoch, b"a place").unwrap();
    // What stays: header, body hash, signature. From the layout: header to 99, signature in the last 64.
    let bytes = erased.bytes();
    let (header, body_hash) = (
        erased.header().clone(),
        Sha256::digest(&bytes[99..bytes.len() - 64]).into(),
    );
    let signature = bytes[bytes.len() - 64..].try_into().unwrap();
    let hash = header.hash(&body_hash);
    vault::frame::verify(&header, &hash, &signature, &keys.public()).unwrap();
    assert_eq!(after.header().previous, hash);
    let other = header.hash(&[0; 32]);
    assert!(vault::frame::verify(&header, &other, &signature, &keys.public()).is_err());
}

#[test]
fn a_changed_passphrase_opens_the_same_keys_and_the_old_one_no_longer_does() {
    let (old, new) = (SlotKey::from_bytes([1; 32]), SlotKey::from_bytes([2; 32]));
    let (file, keys) = found_vault(&old, PARAMS, "bedside tablet").unwrap();
    let params = StretchParams {
        salt: [8; 16],
        ..PARAMS
    };
    let changed = file.change_passphrase(&old, &new, params).unwrap();
    assert_eq!(changed.passphrase_params(), params);
    assert_eq!(
        changed.unlock(&old).unwrap_err(),
        UnlockError::WrongPassphrase
    );
    let (frame, _) = keys.begin("bedside tablet").unwrap();
    assert!(
        changed
            .unlock(&new)
            .unwrap()
            .open_introduction(&frame)
            .is_ok()
    );
    assert!(file.change_passphrase(&new, &new, params).is_err());
}

#[test]
fn parameters_that_no_vault_is_made_with_are_refused_before_any_work() {
    for odd in [
        StretchParams {
            memory_kib: 8191,
            ..PARAMS
        },
        StretchParams {
            memory_kib: u32::MAX,
            ..PARAMS
        },
        StretchParams {
            passes: 0,
            ..PARAMS
        },
        StretchParams {
            passes: 65,
            ..PARAMS
        },
        StretchParams { lanes: 0, ..PARAMS },
        StretchParams {
            lanes: 17,
            ..PARAMS
        },
    ] {
        assert!(
            matches!(
                stretch("amber lantern 9", &odd),
                Err(StretchError::OutOfRange { .. })
            ),
            "{odd:?}"
        );
        assert!(
            found_vault(&SlotKey::from_bytes([1; 32]), odd, "tablet").is_err(),
            "{odd:?}"
        );
    }
}

#[test]
fn fresh_parameters_have_a_fresh_salt_and_want_a_passphrase_that_holds() {
    let (one, other) = (
        StretchParams::fresh("amber lantern 9").unwrap(),
        StretchParams::fresh("amber lantern 9").unwrap(),
    );
    assert_ne!(one.salt, other.salt);
    // RFC 9106, section 4: the second recommended choice is 64 MiB and 3 passes.
    assert_eq!((one.memory_kib, one.passes), (65_536, 3));
    assert!(StretchParams::fresh("123456").is_err());
}

#[test]
fn draft_names_are_steady_and_differ_by_device() {
    let (ours, theirs) = (keys(), keys());
    assert_eq!(ours.draft_name(b"exam"), ours.draft_name(b"exam"));
    assert_ne!(ours.draft_name(b"exam"), ours.draft_name(b"exam 2"));
    assert_ne!(ours.draft_name(b"exam"), theirs.draft_name(b"exam"));
}

#[test]
fn saying_what_keys_are_tells_nothing_of_them() {
    let keys = keys();
    let said = format!("{keys:?}");
    assert_eq!(
        said,
        format!(
            "Keys {{ vault: {:?}, device: {:?}, .. }}",
            keys.vault(),
            keys.device()
        )
    );
}
