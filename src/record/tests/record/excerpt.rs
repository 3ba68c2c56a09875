//! Part of a story folds into the same exam as the whole. Every check here follows from what an excerpt is for; no outside source.

use record::{Decision, ExamId, Glasses, Section, Story};
use uuid::Uuid;

use crate::desk::{Desk, EXAM, PERSON, day, details};
use crate::samples::{acuity, subjective};

/// Orla's exam with an acuity that was written twice, signed; another of hers; Ivo's.
fn desk() -> Desk {
    let mut desk = Desk::with_exam(1);
    let decision = Decision {
        glasses: Some(Glasses::LeaveAlone),
        ..Decision::default()
    };
    for section in [
        acuity(60),
        acuity(36),
        subjective(2.75),
        Section::Decision(decision),
    ] {
        let planned = desk.story.put_section(&EXAM, section, None);
        desk.write(planned.unwrap());
    }
    desk.write(desk.story.sign(&EXAM, "M. Farrow".into()).unwrap());
    desk.open(
        ExamId::from_uuid(Uuid::from_u128(2)),
        PERSON,
        day(2025, 3, 1),
    );
    let ivo = record::PersonId::from_uuid(Uuid::from_u128(0xBB));
    desk.write(desk.story.put_person(ivo, details("Ivo", "Castlemere")));
    desk.open(ExamId::from_uuid(Uuid::from_u128(3)), ivo, day(2026, 3, 4));
    desk
}

#[test]
fn an_excerpt_folds_into_the_same_exam_and_person_and_nothing_else() {
    let whole = desk().story;
    let mut part = Story::default();
    for entry in whole.excerpt(&[EXAM]) {
        part.admit(entry).unwrap();
    }
    assert_eq!(part.waiting(), 0);
    assert_eq!(part.people().len(), 1);
    assert_eq!(part.person(&PERSON), whole.person(&PERSON));
    assert_eq!(part.exams_of(&PERSON).len(), 1);
    assert_eq!(part.exam(&EXAM), whole.exam(&EXAM));
}

#[test]
fn a_person_of_two_exams_is_told_once() {
    let whole = desk().story;
    let two = whole.excerpt(&[EXAM, ExamId::from_uuid(Uuid::from_u128(2))]);
    let one = whole.excerpt(&[EXAM]);
    assert_eq!(two.len(), one.len() + 1);
}

#[test]
fn an_exam_that_is_not_here_is_passed_over() {
    assert!(Story::default().excerpt(&[EXAM]).is_empty());
}
