//! Papers that left are kept with their exam. What is checked follows from what that is for; no outside source.

use std::collections::BTreeMap;

use record::{Entry, ExamState, Glasses, RecordError, Sent, Story};
use uuid::Uuid;

use crate::desk::{Desk, EXAM};
use crate::frozen;
use crate::samples::{acuity, bytes, decision, names};

fn letter(asked: &str) -> Sent {
    Sent {
        exam: EXAM,
        paper: "referral".into(),
        words: BTreeMap::from([("asked".into(), asked.into())]),
        text: vec!["referral letter".into(), asked.into()],
    }
}

fn send(desk: &mut Desk, sent: Sent) -> bool {
    let planned = desk.story.send(sent).unwrap();
    let is_new = planned.is_some();
    planned.map(|planned| desk.write(planned));
    is_new
}

#[test]
fn a_letter_stands_with_its_exam_as_it_left() {
    let mut desk = Desk::with_exam(1);
    assert!(send(&mut desk, letter("please look at the disc")));
    assert!(send(&mut desk, letter("please look at the macula")));
    let exam = desk.story.exam(&EXAM).unwrap();
    let asked: Vec<&str> = exam.sent().iter().map(|one| &*one.sent.text[1]).collect();
    assert_eq!(
        asked,
        ["please look at the disc", "please look at the macula"]
    );
    let last = exam.last_sent("referral").unwrap();
    assert_eq!(last.sent.words["asked"], "please look at the macula");
    assert!(!last.entry.author.is_empty(), "who sent it");
    assert_eq!(exam.last_sent("care-staff"), None);
}

#[test]
fn the_same_once_more_is_not_written_again() {
    let mut desk = Desk::with_exam(1);
    assert!(send(&mut desk, letter("please look")));
    assert!(!send(&mut desk, letter("please look")));
    assert_eq!(desk.story.exam(&EXAM).unwrap().sent().len(), 1);
}

#[test]
fn nothing_of_a_signed_exam_changes_by_it() {
    let mut desk = Desk::with_exam(1);
    for section in [acuity(36), decision(Glasses::LeaveAlone)] {
        desk.put(section, None);
    }
    desk.write(desk.story.sign(&EXAM, "M. Farrow".into()).unwrap());
    send(&mut desk, letter("please look"));
    let exam = desk.story.exam(&EXAM).unwrap();
    assert_eq!(exam.state(), ExamState::Signed);
    assert!(exam.amendments().is_empty());
}

#[test]
fn in_whatever_order_the_entries_come_it_is_there() {
    let mut desk = Desk::with_exam(1);
    send(&mut desk, letter("please look"));
    let mut other = Story::default();
    for entry in desk.written.iter().rev() {
        other.admit(entry.clone()).unwrap();
    }
    assert_eq!(other, desk.story);
}

#[test]
fn an_exam_that_is_not_here_keeps_no_paper() {
    let elsewhere = record::ExamId::from_uuid(Uuid::from_u128(9));
    let sent = Sent {
        exam: elsewhere,
        ..letter("please look")
    };
    let refused = Desk::with_exam(1).story.send(sent);
    assert_eq!(refused, Err(RecordError::NoSuchExam(elsewhere)));
}

fn kept() -> Vec<(&'static str, Entry)> {
    let of = |paper: &str, words: &[(&str, &str)], text: &[&str]| {
        let words = words.iter();
        record::Body::Sent(Sent {
            exam: frozen::EXAM,
            paper: paper.into(),
            words: words
                .map(|(name, said)| ((*name).into(), (*said).into()))
                .collect(),
            text: text.iter().map(|line| (*line).into()).collect(),
        })
    };
    let letter = of(
        "referral",
        &[("asked", "Please look at the left disc.")],
        &["referral letter", "Please look at the left disc."],
    );
    let bare = of("summary", &[], &["visit summary"]);
    vec![
        ("letter", frozen::entry(91, &[3], letter)),
        ("unchanged", frozen::entry(92, &[91], bare)),
    ]
}

#[test]
fn its_bytes_are_frozen() {
    for (name, entry) in kept() {
        let frozen = bytes(&format!("v6-sent/{name}"));
        assert_eq!(Entry::from_cbor(&frozen).as_ref(), Ok(&entry), "{name}");
        assert_eq!(entry.to_cbor(), frozen, "{name}");
    }
    assert_eq!(names("v6-sent"), ["letter", "unchanged"]);
}
