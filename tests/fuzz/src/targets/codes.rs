//! Codes that people type, and the field with which a device signs what it asks.

use crate::seeds::{files, project, texts};
use vault::request::Vouched;
use vault::{Invitation, RecoveryCode};

/// What is read is shown as what reads the same.
pub fn recovery(bytes: &[u8]) {
    if let Ok(code) = String::from_utf8_lossy(bytes).parse::<RecoveryCode>() {
        let shown = groups(&code).join("-");
        let again = shown.parse().expect("what is shown can be typed");
        assert_eq!(groups(&again), groups(&code));
    }
}

fn groups(code: &RecoveryCode) -> Vec<String> {
    code.groups()
        .iter()
        .map(|group| group.to_string())
        .collect()
}

pub fn invitations() -> Vec<Vec<u8>> {
    let mut seeds: Vec<_> = files(&project("src/vault/golden/invitation"))
        .into_values()
        .collect();
    seeds.extend(texts(&["7G2K-0DQM-8XRA-V5TN-3BHC-94WE"]));
    seeds
}

/// What is read is shown as what reads the same.
pub fn invitation(bytes: &[u8]) {
    if let Ok(code) = String::from_utf8_lossy(bytes).parse::<Invitation>() {
        assert!(code.to_string().parse() == Ok(code));
    }
}

pub fn vouchers() -> Vec<Vec<u8>> {
    let golden = files(&project("src/vault/golden/request")).into_values();
    let lines = golden.flat_map(|text| {
        let text = String::from_utf8_lossy(&text).into_owned();
        text.lines()
            .map(|line| line.as_bytes().to_vec())
            .collect::<Vec<_>>()
    });
    lines.collect()
}

/// What is read is written to what reads the same.
pub fn vouched(bytes: &[u8]) {
    if let Ok(vouched) = String::from_utf8_lossy(bytes).parse::<Vouched>() {
        assert_eq!(vouched.to_string().parse(), Ok(vouched));
    }
}
