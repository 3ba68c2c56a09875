//! Every domain-separation string, in one place.
//!
//! A string here names one use of one key or hash, so that no bytes made for one use can stand in for another. They are
//! part of the formats and never change. Each is followed by a zero byte where it is used, so none can be the beginning of
//! another. A new use gets a new string at the end of the list.

/// Hash of the readable part of a key file, which tells a damaged file from a wrong passphrase.
pub const KEY_FILE_SUM: &str = "lightround v1 key file sum";
/// A slot's wrap of the device's key-encryption key.
pub const WRAP_KEK: &str = "lightround v1 wrap key-encryption key";
/// The wrap of the Ed25519 seed under the key-encryption key.
pub const WRAP_SIGNING: &str = "lightround v1 wrap signing seed";
/// The wrap of the X25519 secret under the key-encryption key.
pub const WRAP_EXCHANGE: &str = "lightround v1 wrap exchange secret";
/// The wrap of an epoch key under the key-encryption key.
pub const WRAP_EPOCH: &str = "lightround v1 wrap epoch key";
/// From an epoch key: the content key of a device's introductions.
pub const CONTENT_INTRODUCTION: &str = "lightround v1 content introduction";
/// From an epoch key: the key under which a device's person-key frames are wrapped.
pub const CONTENT_PERSON_KEY: &str = "lightround v1 content person key";
/// From an epoch key: the content key of a device's entries about nobody in particular.
pub const CONTENT_ENTRY: &str = "lightround v1 content entry";
/// From a person's key: the content key of a device's entries about that person.
pub const CONTENT_PERSON_ENTRY: &str = "lightround v1 content person entry";
/// From an epoch key: the content key of a device's drafts.
pub const CONTENT_DRAFT: &str = "lightround v1 content draft";
/// From the oldest epoch key: the key under which drafts are named.
pub const DRAFT_NAME: &str = "lightround v1 draft name";
/// Associated data of a sealed draft.
pub const DRAFT: &str = "lightround v1 draft";
/// A frame's hash.
pub const FRAME_HASH: &str = "lightround v1 frame hash";
/// What a device signs of a frame.
pub const FRAME_SIGNATURE: &str = "lightround v1 frame signature";
/// The hash of a statement of the roll.
pub const ROLL_HASH: &str = "lightround v1 roll hash";
/// What a lead signs of a statement of the roll.
pub const ROLL_SIGNATURE: &str = "lightround v1 roll signature";
/// What a device signs of a request to a relay.
pub const REQUEST_SIGNATURE: &str = "lightround v1 request signature";
/// Hash of a carry file, which tells a damaged one before anything in it is believed.
pub const CARRY_SUM: &str = "lightround v1 carry sum";
/// What a relay keeps of an invitation.
pub const INVITATION: &str = "lightround v1 invitation";
/// From an epoch key: the content key of a device's checkpoints.
pub const CONTENT_CHECKPOINT: &str = "lightround v1 content checkpoint";
/// Associated data of a sealed checkpoint.
pub const CHECKPOINT: &str = "lightround v1 checkpoint";
/// From a recovery code: the key of its slot in a key file.
pub const RECOVERY_SLOT: &str = "lightround v1 recovery slot";
/// From a recovery code: the X25519 secret to which epoch keys are sealed.
pub const RECOVERY_EXCHANGE: &str = "lightround v1 recovery exchange";
/// From what a platform's authenticator gives: the key of its slot in a key file.
pub const PLATFORM_SLOT: &str = "lightround v1 platform slot";
/// The wrap of the recovery code's public key under the key-encryption key, so that nobody else can put another there.
pub const WRAP_RECOVERY: &str = "lightround v1 wrap recovery key";
/// Hash of the nonce that a new device will reveal.
pub const ENROLMENT_COMMITMENT: &str = "lightround v1 enrolment commitment";
/// Hash of everything that was said before an enrolment's packet.
pub const ENROLMENT_DIALOGUE: &str = "lightround v1 enrolment dialogue";
/// Hash of which the check phrase is drawn.
pub const ENROLMENT_PHRASE: &str = "lightround v1 enrolment phrase";
/// HPKE's info for an enrolment's packet.
pub const ENROLMENT_PACKET: &str = "lightround v1 enrolment packet";
/// What a lead signs of an enrolment's packet.
pub const ENROLMENT_SIGNATURE: &str = "lightround v1 enrolment signature";
/// From the vault's id: the key of the outer seal of an epoch's frame, which anybody can derive.
pub const CONTENT_EPOCH: &str = "lightround v1 content epoch";
/// HPKE's info for an epoch key in a box.
pub const EPOCH_BOX: &str = "lightround v1 epoch box";
/// From an epoch key: what shows that everybody was given the same one.
pub const EPOCH_CHECK: &str = "lightround v1 epoch check";
/// From an epoch key: the key that wraps those of the epochs before.
pub const EPOCH_WRAP: &str = "lightround v1 epoch wrap";
/// The wrap of an older epoch's key.
pub const WRAP_OLDER: &str = "lightround v1 wrap older epoch";
/// From the vault's id: the key of the outer seal of an erasure's frame, which anybody can derive.
pub const CONTENT_ERASURE: &str = "lightround v1 content erasure";

/// All of them, for the test that no two are alike.
#[cfg(test)]
const ALL: [&str; 36] = [
    KEY_FILE_SUM,
    WRAP_KEK,
    WRAP_SIGNING,
    WRAP_EXCHANGE,
    WRAP_EPOCH,
    CONTENT_INTRODUCTION,
    CONTENT_PERSON_KEY,
    CONTENT_ENTRY,
    CONTENT_PERSON_ENTRY,
    CONTENT_DRAFT,
    DRAFT_NAME,
    DRAFT,
    FRAME_HASH,
    FRAME_SIGNATURE,
    ROLL_HASH,
    ROLL_SIGNATURE,
    REQUEST_SIGNATURE,
    CARRY_SUM,
    INVITATION,
    CONTENT_CHECKPOINT,
    CHECKPOINT,
    RECOVERY_SLOT,
    RECOVERY_EXCHANGE,
    PLATFORM_SLOT,
    WRAP_RECOVERY,
    ENROLMENT_COMMITMENT,
    ENROLMENT_DIALOGUE,
    ENROLMENT_PHRASE,
    ENROLMENT_PACKET,
    ENROLMENT_SIGNATURE,
    CONTENT_EPOCH,
    EPOCH_BOX,
    EPOCH_CHECK,
    EPOCH_WRAP,
    WRAP_OLDER,
    CONTENT_ERASURE,
];

/// `domain || 0 || parts…`, the one way in which a domain string is joined to what it separates.
///
/// The parts have fixed lengths wherever this is used, or the last ones can be told apart, so the join is unambiguous.
pub fn join(domain: &str, parts: &[&[u8]]) -> Vec<u8> {
    let mut joined =
        Vec::with_capacity(domain.len() + 1 + parts.iter().map(|part| part.len()).sum::<usize>());
    joined.extend_from_slice(domain.as_bytes());
    joined.push(0);
    for part in parts {
        joined.extend_from_slice(part);
    }
    joined
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_uses_share_a_string_and_none_holds_a_zero() {
        for (index, one) in ALL.iter().enumerate() {
            assert!(!one.as_bytes().contains(&0), "{one}");
            assert!(
                ALL[index + 1..].iter().all(|other| other != one),
                "{one} stands twice"
            );
        }
    }

    #[test]
    fn a_join_is_the_string_a_zero_and_the_parts() {
        assert_eq!(join("a", &[b"bc", b"d"]), b"a\0bcd");
    }
}
