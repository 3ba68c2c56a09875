use super::{Ordinals, bad, founded, golden};
use crate::enrolment::{
    Acquainted, EnrolmentError, Host, Message, Newcomer, Offer, Packet, Request, Reveal, Terms,
};
use crate::roll::Role;

fn newcomer() -> Newcomer {
    Newcomer::new_from("clinic laptop", &mut Ordinals(60)).unwrap()
}

fn host() -> Host {
    let request = Request::parse(&golden("enrolment/good-1-request").0).unwrap();
    Host::receive_from(&founded().1, request, &mut Ordinals(70)).unwrap()
}

fn acquainted() -> Acquainted {
    newcomer().meet(Offer::parse(&golden("enrolment/good-2-offer").0).unwrap())
}

#[test]
fn the_same_messages_are_made_byte_for_byte() {
    let (_, keys, _) = founded();
    assert_eq!(
        newcomer().request().bytes(),
        golden("enrolment/good-1-request").0
    );
    assert_eq!(host().offer().bytes(), golden("enrolment/good-2-offer").0);
    let acquainted = acquainted();
    assert_eq!(
        acquainted.reveal().bytes(),
        golden("enrolment/good-3-reveal").0
    );
    let phrase = String::from_utf8(golden("enrolment/phrase").0).unwrap();
    let checked = host().check(acquainted.reveal()).unwrap();
    assert_eq!(
        (acquainted.phrase(), checked.phrase()),
        (phrase.clone(), phrase)
    );
    let terms = Terms {
        role: Role::Clinician,
        roll: &[],
        relay: Some("https://relay.example"),
    };
    // The ephemeral key is made of 32 times 0x51.
    let (packet, added) = checked
        .admit_from(&keys, terms, &mut Ordinals(0x50))
        .unwrap();
    assert_eq!(packet.bytes(), golden("enrolment/good-4-packet").0);
    assert_eq!(added.len(), 2);
}

#[test]
fn the_frozen_packet_is_taken() {
    let packet = Packet::parse(&golden("enrolment/good-4-packet").0).unwrap();
    let arrival = acquainted().take(&packet).ok().unwrap();
    assert_eq!((arrival.role, arrival.roll.len()), (Role::Clinician, 2));
    assert_eq!(arrival.relay.as_deref(), Some("https://relay.example"));
}

#[test]
fn every_bad_message_is_refused_for_what_is_wrong_with_it() {
    for name in bad("enrolment") {
        let (bytes, note) = golden(&name);
        let error = match name.as_bytes()["enrolment/bad-".len()] {
            b'1' => Request::parse(&bytes).err(),
            b'2' => Offer::parse(&bytes).err(),
            b'3' => Reveal::parse(&bytes)
                .and_then(|reveal| host().check(&reveal).map(drop))
                .err(),
            _ => Packet::parse(&bytes)
                .and_then(|packet| acquainted().take(&packet).map(drop).map_err(|one| one.why))
                .err(),
        };
        let said = match error {
            None => panic!("{name} is taken"),
            Some(EnrolmentError::Format) => "Format",
            Some(EnrolmentError::OtherMessage) => "OtherMessage",
            Some(EnrolmentError::Damaged) => "Damaged",
            Some(EnrolmentError::Commitment) => "Commitment",
            Some(EnrolmentError::NotForUs) => "NotForUs",
            Some(EnrolmentError::Senseless) => "Senseless",
            Some(EnrolmentError::Roll(_)) => "Roll",
            Some(other) => panic!("{name}: {other}"),
        };
        assert!(
            note.starts_with(&format!("{said}:")),
            "{name}: {said}, and the note says {note}"
        );
    }
}
