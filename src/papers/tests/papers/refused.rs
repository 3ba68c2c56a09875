//! What is never printed, and the one sentence said instead.

use papers::{PaperError, Prescription};
use record::{Entry, PersonId, Section, SectionKind};
use uuid::Uuid;

use crate::desk::{Desk, EXAM, PERSON, day, leave_alone, lenses, orla, prescribe};

fn subjective(sphere: &str) -> Section {
    Section::Subjective(lenses(sphere, "+1.00 DS"))
}

/// What another tablet writes that knows what `desk` knew, and nothing of what came after.
fn elsewhere(before: &Desk, desk: &mut Desk, section: Section, reason: Option<&str>) {
    let planned = before
        .story
        .put_section(&EXAM, section, reason.map(str::to_owned));
    desk.write(planned.unwrap());
}

#[test]
fn an_open_exam() {
    let mut desk = Desk::with_exam(orla());
    desk.put(subjective("+3.25 DS"));
    desk.put(prescribe());
    assert_eq!(desk.prescription(), Err(PaperError::NotSigned));
    let said = PaperError::NotSigned.to_string();
    assert_eq!(said, "this exam is not signed yet: sign it first");
}

#[test]
fn a_decision_to_leave_alone() {
    let mut desk = Desk::with_exam(orla());
    desk.put(subjective("+3.25 DS"));
    desk.put(leave_alone());
    desk.sign();
    assert_eq!(desk.prescription(), Err(PaperError::NotPrescribed));
    desk.amend(prescribe(), "she would like them after all");
    assert!(desk.prescription().is_ok());
}

#[test]
fn two_versions_unsettled() {
    let mut desk = Desk::signed(lenses("+3.25 DS", "+1.00 DS"));
    let before = desk.clone();
    desk.amend(subjective("+3.00 DS"), "sphere misread");
    elsewhere(&before, &mut desk, subjective("+2.75 DS"), Some("slip"));
    let refused = PaperError::TwoVersions(SectionKind::Subjective);
    assert_eq!(desk.prescription(), Err(refused.clone()));
    assert_eq!(
        refused.to_string(),
        "there are two versions of the subjective: settle which one holds first"
    );
    desk.amend(subjective("+3.00 DS"), "this one holds");
    assert!(desk.prescription().is_ok());
}

#[test]
fn a_change_that_its_signer_never_saw() {
    let mut desk = Desk::with_exam(orla());
    desk.put(subjective("+3.25 DS"));
    desk.put(prescribe());
    let before = desk.clone();
    desk.sign();
    elsewhere(&before, &mut desk, subjective("+2.75 DS"), None);
    let refused = PaperError::ChangedUnsigned(SectionKind::Subjective);
    assert_eq!(desk.prescription(), Err(refused));
    desk.sign();
    assert!(desk.prescription().is_ok());
}

#[test]
fn two_versions_of_the_person() {
    let mut desk = Desk::signed(lenses("+3.25 DS", "+1.00 DS"));
    let before = desk.clone();
    desk.write(desk.story.put_person(PERSON, orla()));
    desk.write(before.story.put_person(PERSON, orla()));
    assert_eq!(desk.prescription(), Err(PaperError::TwoPersons));
}

/// A lens can be taken back by an amendment after signing; then there is nothing to print.
#[test]
fn no_lens() {
    let mut desk = Desk::signed(lenses("+3.25 DS", "+1.00 DS"));
    desk.amend(
        Section::empty(SectionKind::Subjective),
        "entered for somebody else",
    );
    assert_eq!(desk.prescription(), Err(PaperError::NoLens));
}

#[test]
fn somebody_elses_exam() {
    let mut desk = Desk::signed(lenses("+3.25 DS", "+1.00 DS"));
    let other = PersonId::from_uuid(Uuid::from_u128(0xBB));
    desk.write(desk.story.put_person(other, orla()));
    let person = desk.story.person(&other).unwrap();
    let refused = Prescription::from_exam(person, desk.exam(), day(2026, 3, 5));
    assert_eq!(refused, Err(PaperError::OtherPerson));
}

/// An entry of a newer layout that rests on the signed decision: it may have taken the prescription back.
#[test]
fn what_a_newer_version_wrote() {
    let mut desk = Desk::signed(lenses("+3.25 DS", "+1.00 DS"));
    let written = desk.clone().write(amended(&desk));
    let mut bytes = written.to_cbor();
    let schema = bytes.windows(7).position(|at| at == b"fschema").unwrap() + 7;
    assert_eq!(bytes[schema], 1);
    bytes[schema] = 2;
    desk.story.admit(Entry::from_cbor(&bytes).unwrap()).unwrap();
    assert_eq!(desk.prescription(), Err(PaperError::WrittenByNewer));
}

fn amended(desk: &Desk) -> record::Planned {
    let reason = Some("she prefers her old pair".to_owned());
    desk.story
        .put_section(&EXAM, leave_alone(), reason)
        .unwrap()
}
