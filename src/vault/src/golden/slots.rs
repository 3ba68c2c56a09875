//! Key files with more than one slot.

use super::{Ordinals, bad, golden, slot_key};
use crate::keyfile::{Opener, Platform, PlatformSecret};
use crate::recovery::RecoveryCode;
use crate::{KeyFile, KeyFileError, UnlockError};

const ID: &[u8] = b"credential of the tablet";
const SALT: [u8; 32] = [0x51; 32];

fn secret() -> PlatformSecret {
    PlatformSecret::from_bytes([0x52; 32])
}

fn code() -> RecoveryCode {
    let printed = golden("slots/code").0;
    std::str::from_utf8(&printed).unwrap().parse().unwrap()
}

#[test]
fn the_same_slots_are_added_byte_for_byte() {
    let file = KeyFile::from_bytes(&golden("keyfile/good").0).unwrap();
    let kek = file.kek(Opener::Passphrase(&slot_key())).unwrap();
    // The draws go on after those of the whole vault and its draft, see `second_keys.py`.
    let mut source = Ordinals(40);
    let drawn = RecoveryCode::make_from(&mut source).unwrap();
    assert_eq!(drawn.groups(), code().groups());
    let file = file.with_recovery(&kek, &drawn, &mut source).unwrap();
    let platform = Platform {
        id: ID,
        salt: &SALT,
    };
    let file = file
        .with_platform(&kek, platform, &secret(), &mut source)
        .unwrap();
    assert_eq!(file.to_bytes(), golden("slots/good").0);
}

#[test]
fn every_slot_opens_the_same_keys() {
    let file = KeyFile::from_bytes(&golden("slots/good").0).unwrap();
    let (passphrase, code, secret) = (slot_key(), code(), secret());
    for opener in [
        Opener::Passphrase(&passphrase),
        Opener::Recovery(&code),
        Opener::Platform(&secret),
    ] {
        assert_eq!(file.unlock_by(opener).unwrap().device(), file.device());
    }
    let platforms: Vec<_> = file.platforms().collect();
    assert_eq!(
        platforms,
        [Platform {
            id: ID,
            salt: &SALT
        }]
    );
    assert!(file.has_recovery());
}

/// A slot of a kind that this version doesn't know stays through every change, byte for byte.
#[test]
fn a_later_versions_slot_is_carried_unharmed() {
    let bytes = golden("slots/good-with-later").0;
    let file = KeyFile::from_bytes(&bytes).unwrap();
    assert_eq!(file.to_bytes(), bytes);
    let later: &[u8] = b"of a later version";
    let (key, params) = (slot_key(), file.passphrase_params());
    let changed = file.change_passphrase(&key, &key, params).unwrap();
    let (changed, _) = changed.add_recovery(Opener::Passphrase(&key)).unwrap();
    for bytes in [bytes, changed.to_bytes()] {
        assert!(bytes.windows(later.len()).any(|window| window == later));
    }
}

#[test]
fn every_bad_slot_is_refused_for_what_is_wrong_with_it() {
    let (passphrase, code, secret) = (slot_key(), code(), secret());
    for name in bad("slots") {
        let (bytes, note) = golden(&name);
        let openers = [
            Opener::Passphrase(&passphrase),
            Opener::Recovery(&code),
            Opener::Platform(&secret),
        ];
        let said: Vec<&str> = match KeyFile::from_bytes(&bytes) {
            Err(KeyFileError::Damaged(_)) => vec!["Damaged"],
            Err(other) => panic!("{name}: {other}"),
            Ok(file) => openers
                .into_iter()
                .filter_map(|opener| match file.unlock_by(opener) {
                    Ok(_) => None,
                    Err(UnlockError::WrongPassphrase) => Some("WrongPassphrase"),
                    Err(UnlockError::WrongRecovery) => Some("WrongRecovery"),
                    Err(UnlockError::WrongPlatform) => Some("WrongPlatform"),
                    Err(UnlockError::Damaged(_)) => Some("Keys"),
                })
                .collect(),
        };
        let first = said.first().unwrap_or_else(|| panic!("{name} opens"));
        assert!(
            note.starts_with(&format!("{first}:")),
            "{name}: {said:?}, and the note says {note}"
        );
    }
}
