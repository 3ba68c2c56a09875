use super::{bad, founded, golden, slot_key};
use crate::{KeyFile, KeyFileError, UnlockError, stretch};

#[test]
fn the_same_vault_is_founded_byte_for_byte() {
    assert_eq!(founded().0.to_bytes(), golden("keyfile/good").0);
}

#[test]
fn the_frozen_key_file_opens_with_its_passphrase() {
    let file = KeyFile::from_bytes(&golden("keyfile/good").0).unwrap();
    let keys = file.unlock(&slot_key()).unwrap();
    assert_eq!(keys.device(), file.device());
    assert_eq!(keys.exchange_public(), founded().1.exchange_public());
    assert_eq!(file.device_name(), "bedside tablet");
}

#[test]
fn another_passphrase_is_called_wrong() {
    let file = KeyFile::from_bytes(&golden("keyfile/good").0).unwrap();
    let other = stretch(
        "harbour lantern thimble orchards",
        &file.passphrase_params(),
    )
    .unwrap();
    assert_eq!(
        file.unlock(&other).unwrap_err(),
        UnlockError::WrongPassphrase
    );
}

#[test]
fn fields_of_a_later_version_are_ignored() {
    let file = KeyFile::from_bytes(&golden("keyfile/good-with-more").0).unwrap();
    assert!(file.unlock(&slot_key()).is_ok());
}

#[test]
fn every_bad_key_file_is_refused_for_what_is_wrong_with_it() {
    for name in bad("keyfile") {
        let (bytes, note) = golden(&name);
        let said = match KeyFile::from_bytes(&bytes) {
            Err(KeyFileError::Damaged(_)) => "Damaged",
            Err(KeyFileError::Newer(2)) => "Newer",
            Err(other) => panic!("{name}: {other}"),
            Ok(file) => match file.unlock(&slot_key()) {
                Err(UnlockError::WrongPassphrase) => "WrongPassphrase",
                Err(UnlockError::Damaged(_)) => "Keys",
                Err(other) => panic!("{name}: {other}"),
                Ok(_) => panic!("{name} opens"),
            },
        };
        assert!(
            note.starts_with(&format!("{said}:")),
            "{name}: {said}, and the note says {note}"
        );
    }
}
