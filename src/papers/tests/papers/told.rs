//! What is told beside the record comes back from its words. What is checked follows from what that is for; no outside source.

use papers::sample::{Desk, PERSON, day, decision, orla, subjective};
use papers::{InFrame, Letter, NoteOptions, PaperError, Told, Wording};
use record::{ExamId, Section};
use uuid::Uuid;

const EXAM_WITHOUT_PLACE: ExamId = ExamId::from_uuid(Uuid::from_u128(0xE3));

fn proposed(desk: &Desk) -> Wording {
    Wording {
        letter: Some(Letter::proposed(desk.person(), desk.exam()).unwrap()),
        ..Wording::default()
    }
}

/// The letter's words changed and one finding turned, words added to a note, the second of two frames known.
fn changed(before: &Wording) -> Wording {
    let mut after = before.clone();
    let letter = after.letter.as_mut().unwrap();
    letter.asked = "Please look at the left disc.".into();
    letter.closing = "M. Farrow, through Saltmarsh Court".into();
    letter.findings[0].told = !letter.findings[0].told;
    after.note = NoteOptions {
        words: "Her sister كمال will come on Friday.".into(),
        contact: String::new(),
    };
    after.frames = vec![
        InFrame::default(),
        InFrame {
            middles_mm: Some(61.5),
            compensate: true,
        },
    ];
    after
}

#[test]
fn what_was_told_comes_back() {
    let before = proposed(&Desk::full());
    let after = changed(&before);
    let told = after.told(&before);
    assert_eq!(told["asked"], "Please look at the left disc.");
    assert!(!told.contains_key("to"), "it was left as it was");
    assert_eq!(before.with(&told), after);
}

/// An address that nobody wrote down leaves no hole in the sentence.
#[test]
fn a_letter_without_a_place_reads_as_a_sentence() {
    let mut desk = Desk::unsigned(orla());
    desk.open(EXAM_WITHOUT_PLACE, PERSON, " ", day(2026, 3, 5));
    let exam = desk.story.exam(&EXAM_WITHOUT_PLACE).unwrap();
    assert_eq!(
        Letter::proposed(desk.person(), exam),
        Err(PaperError::NotReferred)
    );
    let refer = desk
        .story
        .put_section(&EXAM_WITHOUT_PLACE, Section::Decision(decision()), None);
    desk.write(refer.unwrap());
    let exam = desk.story.exam(&EXAM_WITHOUT_PLACE).unwrap();
    let letter = Letter::proposed(desk.person(), exam).unwrap();
    assert_eq!(
        letter.opening,
        "Thank you for seeing Orla Pennyquick, whom I examined where they live."
    );
    let document = letter
        .document(desk.person(), exam, day(2026, 3, 7))
        .unwrap();
    let at = document.who.iter().find(|fact| fact.label == "at");
    assert_eq!(at.unwrap().value, "room 12");
}

#[test]
fn a_proposal_that_nobody_changed_tells_nothing() {
    let before = proposed(&Desk::full());
    assert_eq!(before.told(&before), Told::new());
    assert_eq!(before.clone().with(&Told::new()), before);
}

/// The exam is amended between two sittings: what was left as it was follows, and what was changed stays.
#[test]
fn what_was_left_as_it_was_follows_the_record() {
    let mut desk = Desk::full();
    let told = changed(&proposed(&desk)).told(&proposed(&desk));
    let mut amended = decision();
    amended.refer.as_mut().unwrap().to = "Skerry eye clinic".into();
    desk.amend(Section::Decision(amended), "another clinic");
    let mut lenses = subjective();
    lenses.add = None;
    desk.amend(Section::Subjective(lenses), "measured again");
    let letter = proposed(&desk).with(&told).letter.unwrap();
    assert_eq!(letter.to, "Skerry eye clinic");
    assert_eq!(letter.asked, "Please look at the left disc.");
}

/// Names of findings stand apart from one another, so that a tick never falls on another line.
#[test]
fn every_finding_can_be_turned_by_itself() {
    let before = proposed(&Desk::full());
    let count = before.letter.as_ref().unwrap().findings.len();
    for at in 0..count {
        let mut after = before.clone();
        let findings = &mut after.letter.as_mut().unwrap().findings;
        findings[at].told = !findings[at].told;
        let told = after.told(&before);
        assert_eq!(told.len(), 1);
        assert_eq!(before.clone().with(&told), after, "{told:?}");
    }
}
