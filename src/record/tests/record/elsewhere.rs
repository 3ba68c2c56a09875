//! Findings that were taken over. What is checked follows from what they are for; no outside source.

use record::home_list::ToWrite;
use record::{ExamId, PersonId, RecordError, RoundDetails, RoundId, SectionKind, Standing};
use uuid::Uuid;

use crate::desk::{Desk, EXAM, PERSON, day};
use crate::samples::subjective;

const TAKEN: ExamId = ExamId::from_uuid(Uuid::from_u128(0xE9));

fn take(desk: &mut Desk, on: chrono::NaiveDate) {
    let planned = desk
        .story
        .take_over(PERSON, TAKEN, on, vec![subjective(2.75)]);
    for ToWrite { planned, about } in planned.unwrap() {
        assert_eq!(about, Some(PERSON));
        desk.write(planned);
    }
}

#[test]
fn it_is_last_time_to_whoever_examines_next() {
    let mut desk = Desk::with_exam(1);
    take(&mut desk, day(2024, 6, 1));
    let last = desk.story.last_before(&EXAM, SectionKind::Subjective);
    let last = last.unwrap();
    assert_eq!(last.exam.id(), TAKEN);
    assert!(last.exam.is_from_elsewhere());
    assert_eq!(*last.version.value, subjective(2.75));
    assert!(!desk.story.exam(&EXAM).unwrap().is_from_elsewhere());
}

#[test]
fn the_same_findings_are_known_again() {
    let mut desk = Desk::with_exam(1);
    let on = day(2024, 6, 1);
    let has = |desk: &Desk, on, add| desk.story.has_taken_over(&PERSON, on, &[subjective(add)]);
    assert!(!has(&desk, on, 2.75));
    take(&mut desk, on);
    assert!(has(&desk, on, 2.75));
    assert!(!has(&desk, on, 3.0));
    assert!(!has(&desk, day(2024, 6, 2), 2.75));
}

#[test]
fn nobody_was_seen_by_it() {
    let mut desk = Desk::with_exam(1);
    let on = day(2026, 6, 1);
    take(&mut desk, on);
    let round = RoundId::from_uuid(Uuid::from_u128(0xF1));
    let details = RoundDetails {
        people: vec![PERSON],
        ..RoundDetails::new(on, None)
    };
    desk.write(desk.story.put_round(round, details));
    let round = desk.story.round(&round).unwrap();
    assert_eq!(desk.story.standing(round, &PERSON), Standing::ToSee);
}

#[test]
fn it_needs_a_person_on_record() {
    let nobody = PersonId::from_uuid(Uuid::from_u128(0xCC));
    let refused = Desk::with_exam(1)
        .story
        .take_over(nobody, TAKEN, day(2024, 6, 1), Vec::new());
    assert_eq!(refused, Err(RecordError::NoSuchPerson(nobody)));
}

#[test]
fn a_file_about_somebody_else_is_asked_about() {
    let desk = Desk::with_exam(1);
    let orla = desk.story.person(&PERSON).unwrap();
    assert_eq!(orla.is_this(None, None), None);
    assert_eq!(orla.is_this(Some("PENNYQUICK Orla"), None), None);
    let asked = orla.is_this(Some("Ivo Castlemere"), None).unwrap();
    assert!(asked.contains("Ivo Castlemere"));
    // Her day of birth is not known here: nothing speaks against any.
    assert_eq!(
        orla.is_this(Some("Orla Pennyquick"), Some(day(1940, 1, 31))),
        None
    );
}

#[test]
fn another_day_of_birth_is_asked_about() {
    let mut desk = Desk::with_exam(1);
    let details = record::PersonDetails {
        born: Some(record::Born::Date(day(1940, 1, 31))),
        ..crate::desk::details("Orla", "Pennyquick")
    };
    desk.write(desk.story.put_person(PERSON, details));
    let orla = desk.story.person(&PERSON).unwrap();
    assert_eq!(orla.is_this(None, Some(day(1940, 1, 31))), None);
    assert!(orla.is_this(None, Some(day(1941, 1, 31))).is_some());
}
