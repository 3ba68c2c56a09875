//! The whole record leaves nothing out. What has to stand in it follows from what it is for; no outside source.

use papers::sample::{Desk, PERSON, day, orla, subjective};
use papers::{Block, Document, Standing, holds, whole_record};
use record::{
    Contact, Manner, RoundDetails, RoundId, Section, SectionKind, Stamp, Visit, VisitState,
};
use uuid::Uuid;

/// A reader in universal time.
fn at(stamp: Stamp) -> chrono::NaiveDateTime {
    let ms = i64::try_from(stamp.wall_ms).unwrap();
    chrono::DateTime::from_timestamp_millis(ms)
        .unwrap()
        .naive_utc()
}

fn record(desk: &Desk) -> Document {
    whole_record(&desk.story.whole(&PERSON).unwrap(), &at, day(2026, 3, 7))
}

fn says(document: &Document, words: &str) -> bool {
    document.words().join("\n").contains(words)
}

fn amended() -> Desk {
    let mut desk = Desk::full();
    let mut other = subjective();
    other.eyes.right.done_mut().unwrap().lens = papers::sample::lens("−6.25");
    desk.amend(
        Section::Subjective(other),
        "the lens was read from the wrong cell",
    );
    desk
}

#[test]
fn every_section_stands_in_it_with_every_version() {
    let desk = amended();
    let document = record(&desk);
    assert_eq!(document.standing, Standing::Gathered);
    for kind in SectionKind::ALL {
        let written = !desk.exam().history(kind).is_empty();
        let heading = Block::Heading(format!("{}, 4 March 2026", kind.title()));
        assert_eq!(
            document.blocks.contains(&heading),
            written,
            "{}",
            kind.title()
        );
        for version in desk.exam().history(kind) {
            for line in version.value.lines() {
                assert!(
                    says(&document, &line.label),
                    "{}: {}",
                    kind.title(),
                    line.label
                );
            }
        }
    }
    // The version that was signed, and the one in its place.
    for words in [
        "+4.25",
        "−6.25",
        "version 1 of 2, replaced",
        "version 2 of 2, holds",
    ] {
        assert!(says(&document, words), "{words}");
    }
    assert!(says(&document, ": the lens was read from the wrong cell"));
    assert!(says(
        &document,
        "signed by M. Farrow, optometrist, 4 March 2026, 08:00"
    ));
}

#[test]
fn who_the_person_was_before_stands_beside_who_they_are() {
    let mut desk = Desk::with_exam(orla());
    let mut moved = orla();
    moved.room = "31".into();
    moved.contacts = vec![Contact {
        name: "Ada Pennyquick".into(),
        relation: "daughter".into(),
        reach: "555.0142".into(),
    }];
    desk.write(desk.story.put_person(PERSON, moved));
    let document = record(&desk);
    for words in ["version 1 of 2", "12", "version 2 of 2", "31"] {
        assert!(
            document.words().iter().any(|said| said.contains(words)),
            "{words}"
        );
    }
    assert!(says(&document, "not signed"));
    // A number to call is no measure: no reader's manner changes it.
    let comma = Manner {
        decimal: record::DecimalMark::Comma,
        ..Manner::default()
    };
    assert!(says(
        &document.in_manner(comma),
        "Ada Pennyquick, daughter: 555.0142"
    ));
}

#[test]
fn rounds_and_marks_at_the_door_are_told() {
    let mut desk = Desk::with_exam(orla());
    let round = RoundId::from_uuid(Uuid::from_u128(0xF1));
    let details = RoundDetails {
        people: vec![PERSON],
        ..RoundDetails::new(day(2026, 6, 1), None)
    };
    desk.write(desk.story.put_round(round, details));
    let mark = Visit {
        state: VisitState::Declined,
        word: "wants to sleep".into(),
        at: day(2026, 6, 1).and_hms_opt(10, 0, 0).unwrap(),
    };
    desk.write(desk.story.mark_visit(&round, PERSON, mark).unwrap());
    let document = record(&desk);
    assert!(says(
        &document,
        "1 June 2026; declined: wants to sleep (written by M. Farrow"
    ));
}

#[test]
fn it_is_said_beforehand_what_the_files_hold() {
    let desk = Desk::full();
    let said = holds::whole_record(&desk.story.whole(&PERSON).unwrap());
    assert!(said.contains("Orla Pennyquick: name, birth, contacts and one exam"));
    assert!(said.contains("not encrypted any more"));
    let nobody = record::PersonId::from_uuid(Uuid::from_u128(0xDD));
    assert!(desk.story.whole(&nobody).is_none());
}
