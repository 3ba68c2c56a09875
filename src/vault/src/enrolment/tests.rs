use super::*;
use crate::keys::Keys;
use crate::roll::{Role, Statement};
use crate::sample::devices;
use crate::signs::TypedError;
use crate::stretch::{SlotKey, StretchParams};

const PARAMS: StretchParams = StretchParams {
    salt: [9; 16],
    memory_kib: 8192,
    passes: 1,
    lanes: 1,
};

fn lead() -> Keys {
    devices(1, 1).remove(0).keys
}

fn terms(roll: &[Statement]) -> Terms<'_> {
    Terms {
        role: Role::Clinician,
        roll,
        relay: Some("https://relay.example"),
    }
}

/// Both sides up to the phrase.
fn acquainted(keys: &Keys, name: &str) -> (Acquainted, Checked) {
    let newcomer = Newcomer::new(name).unwrap();
    let host = Host::receive(keys, newcomer.request().clone()).unwrap();
    let acquainted = newcomer.meet(host.offer().clone());
    let checked = host.check(acquainted.reveal()).unwrap();
    (acquainted, checked)
}

#[test]
fn a_device_comes_in_and_reads_what_is_there() {
    let keys = lead();
    let (first, _) = keys.begin("bedside tablet").unwrap();
    // Every message goes through its bytes or its typed lines.
    let newcomer = Newcomer::new("  clinic laptop ").unwrap();
    let request = Request::parse(&newcomer.request().bytes()).unwrap();
    assert_eq!(request.name(), "clinic laptop");
    let host = Host::receive(&keys, request).unwrap();
    let offer = Offer::read(&host.offer().lines().join("\n")).unwrap();
    let acquainted = newcomer.meet(offer);
    let reveal = Reveal::read(&acquainted.reveal().lines().concat()).unwrap();
    let checked = host.check(&reveal).unwrap();
    assert_eq!(acquainted.phrase(), checked.phrase());
    assert_eq!(acquainted.phrase().split(' ').count(), 4);
    let (packet, added) = checked.admit(&keys, terms(&[])).unwrap();
    assert_eq!(added.len(), 2, "the founding statement, and this one");
    let packet = Packet::parse(&packet.bytes()).unwrap();
    let arrival = acquainted
        .take(&packet)
        .unwrap_or_else(|rejected| panic!("{}", rejected.why));
    assert_eq!(arrival.role, Role::Clinician);
    assert_eq!(arrival.roll, added);
    assert_eq!(arrival.relay.as_deref(), Some("https://relay.example"));
    let slot_key = SlotKey::from_bytes([3; 32]);
    let (file, new) = arrival.keep(&slot_key, PARAMS).unwrap();
    assert_eq!(file.device_name(), "clinic laptop");
    assert_eq!(file.unlock(&slot_key).unwrap().device(), new.device());
    assert_eq!(
        new.open_introduction(&first).unwrap().name,
        "bedside tablet"
    );
    let (own, _) = new.begin("clinic laptop").unwrap();
    assert!(keys.open_introduction(&own).is_ok());
    // A third one comes in on the roll as it is now.
    let (third, checked) = self::acquainted(&keys, "third");
    let (packet, more) = checked.admit(&keys, terms(&added)).unwrap();
    assert_eq!(more.len(), 1);
    assert!(third.take(&packet).is_ok());
}

#[test]
fn somebody_between_the_two_makes_the_phrases_differ() {
    let (keys, between) = (lead(), devices(2, 1).remove(0).keys);
    // To the new device he is the lead, to the lead the new device.
    let newcomer = Newcomer::new("tablet").unwrap();
    let own = Newcomer::new("tablet").unwrap();
    let host = Host::receive(&keys, own.request().clone()).unwrap();
    let to_newcomer = Host::receive(&between, newcomer.request().clone()).unwrap();
    let acquainted = newcomer.meet(to_newcomer.offer().clone());
    let own = own.meet(host.offer().clone());
    let checked = host.check(own.reveal()).unwrap();
    assert_ne!(acquainted.phrase(), checked.phrase());
    // Nor can he hand the new device's nonce on in place of his own, nor another's keys under its nonce.
    let again = Host::receive(&keys, Newcomer::new("tablet").unwrap().request().clone()).unwrap();
    assert_eq!(
        again.check(acquainted.reveal()).err(),
        Some(EnrolmentError::Commitment)
    );
}

#[test]
fn a_packet_of_another_enrolment_or_for_another_device_is_not_taken() {
    let keys = lead();
    let (one, checked_one) = acquainted(&keys, "one");
    let (other, checked_other) = acquainted(&keys, "other");
    let (for_one, added) = checked_one.admit(&keys, terms(&[])).unwrap();
    let (for_other, _) = checked_other.admit(&keys, terms(&added)).unwrap();
    let Err(rejected) = one.take(&for_other) else {
        panic!("another device's packet was taken")
    };
    assert_eq!(rejected.why, EnrolmentError::NotForUs);
    // It waits still, and takes its own.
    assert!(rejected.waiting.take(&for_one).is_ok());
    // A packet that was taken once is of no use in another enrolment, not even the same lead's with the same device's name.
    let (later, _) = acquainted(&keys, "one");
    assert_eq!(
        later.take(&for_one).err().map(|rejected| rejected.why),
        Some(EnrolmentError::NotForUs)
    );
    // And another lead's packet is none, though it is sealed to the same device.
    let newcomer = Newcomer::new("two").unwrap();
    let stranger = devices(1, 2).remove(1).keys;
    let (host, spy) = (
        Host::receive(&keys, newcomer.request().clone()).unwrap(),
        Host::receive(&stranger, newcomer.request().clone()).unwrap(),
    );
    let acquainted = newcomer.meet(host.offer().clone());
    let checked = spy.check(acquainted.reveal()).unwrap();
    let (packet, _) = checked.admit(&stranger, terms(&[])).unwrap();
    assert!(acquainted.take(&packet).is_err());
    assert!(other.take(&for_other).is_ok());
}

#[test]
fn a_packet_with_any_byte_changed_or_cut_off_is_not_taken() {
    let keys = lead();
    let (mut waiting, checked) = acquainted(&keys, "tablet");
    let (packet, _) = checked.admit(&keys, terms(&[])).unwrap();
    let bytes = packet.bytes();
    let mut refused = |changed: &[u8], what: &str| {
        let Ok(packet) = Packet::parse(changed) else {
            return;
        };
        let owned = std::mem::replace(&mut waiting, acquainted(&keys, "x").0);
        match owned.take(&packet) {
            Ok(_) => panic!("{what} was taken"),
            Err(rejected) => waiting = rejected.waiting,
        }
    };
    for at in 0..bytes.len() {
        let mut changed = bytes.clone();
        changed[at] ^= 0x40;
        refused(&changed, &format!("byte {at} changed"));
        refused(&bytes[..at], &format!("cut to {at}"));
    }
    assert!(waiting.take(&packet).is_ok());
}

#[test]
fn a_request_or_offer_with_a_byte_changed_changes_the_phrase_or_is_none() {
    let keys = lead();
    let newcomer = Newcomer::new("tablet").unwrap();
    let bytes = newcomer.request().bytes();
    let host = Host::receive(&keys, newcomer.request().clone()).unwrap();
    let offer = host.offer().bytes();
    let acquainted = newcomer.meet(host.offer().clone());
    let (phrase, reveal) = (acquainted.phrase(), acquainted.reveal().clone());
    let request = Request::parse(&bytes).unwrap();
    for at in 0..bytes.len() {
        let mut changed = bytes.clone();
        changed[at] ^= 1;
        if let Ok(changed) = Request::parse(&changed) {
            let offer = Offer::parse(&offer).unwrap();
            assert_ne!(check_phrase(&dialogue(&changed, &offer, &reveal)), phrase);
        }
    }
    for at in 0..offer.len() {
        let mut changed = offer.clone();
        changed[at] ^= 1;
        if let Ok(changed) = Offer::parse(&changed) {
            assert_ne!(check_phrase(&dialogue(&request, &changed, &reveal)), phrase);
        }
    }
}

#[test]
fn only_a_lead_admits() {
    let all = devices(1, 2);
    let (lead, clinician) = (&all[0].keys, &all[1].keys);
    let founding = lead
        .state(
            &crate::Roll::new(lead.vault()),
            lead.public(),
            crate::roll::Change::Admit(Role::Lead),
        )
        .unwrap();
    let (_, checked) = acquainted(clinician, "tablet");
    assert_eq!(
        checked.admit(clinician, terms(&[founding])).err(),
        Some(EnrolmentError::Roll(crate::RollError::NotALead))
    );
}

// ISO/IEC 18004:2015, table 7 (from memory): version 20 at level M holds 666 bytes or 970 capitals and digits; version 9, 180
// bytes; version 7, 178 capitals and digits.
#[test]
fn what_is_scanned_by_a_camera_is_small() {
    let name = "n".repeat(60);
    let newcomer = Newcomer::new(&name).unwrap();
    let request = newcomer.request();
    assert!(request.bytes().len() <= 180, "{}", request.bytes().len());
    assert!(request.lines().join(" ").len() <= 970);
    let host = Host::receive(&lead(), request.clone()).unwrap();
    assert!(host.offer().lines().join(" ").len() <= 178);
    let acquainted = newcomer.meet(host.offer().clone());
    assert_eq!(acquainted.reveal().lines().len(), 1, "one line to type");
    assert_eq!(Newcomer::new("").err(), Some(EnrolmentError::Name));
    assert_eq!(
        Newcomer::new(&"n".repeat(61)).err(),
        Some(EnrolmentError::Name)
    );
}

#[test]
fn a_message_in_the_place_of_another_is_named() {
    let newcomer = Newcomer::new("tablet").unwrap();
    let request = newcomer.request().bytes();
    assert_eq!(Offer::parse(&request), Err(EnrolmentError::OtherMessage));
    assert_eq!(Offer::parse(&[2, 2]), Err(EnrolmentError::Format));
    assert_eq!(Offer::parse(&[]), Err(EnrolmentError::Damaged));
    assert_eq!(Offer::parse(&[1, 9]), Err(EnrolmentError::Damaged));
    let mut line = newcomer.request().lines();
    let other = if line[2].starts_with('0') { "1" } else { "0" };
    line[2].replace_range(0..1, other);
    assert_eq!(
        Request::read(&line.concat()),
        Err(EnrolmentError::Typed(TypedError::Line(3)))
    );
}
