//! What differs between two readings, and the last two exams beside one another.

use chrono::NaiveTime;
use proptest::prelude::*;
use record::{
    Change, Device, ExamId, Eye, Eyes, FarUnit, Finding, History, Line, Part, Pressure, Readings,
    Said, SectionKind, Taken, differences,
};
use uuid::Uuid;

use crate::desk::{Desk, PERSON, day};
use crate::samples::{acuity, both, subjective};

fn line(label: &str, words: &str) -> Line {
    let said = Said::One(words.into());
    Line {
        label: label.into(),
        said,
    }
}

fn eyes(right: &str, left: &str) -> Line {
    let said = Said::Eyes(Eyes {
        right: right.into(),
        left: left.into(),
    });
    Line {
        label: "lens".into(),
        said,
    }
}

#[test]
fn one_eye_that_differs_is_the_only_one_that_is_marked() {
    let found = differences(
        &[eyes("+1.00 DS", "+2.00 DS")],
        &[eyes("+1.25 DS", "+2.00 DS")],
    );
    assert_eq!(found[0].change(), Change::Changed);
    assert!(found[0].differs_for(Eye::Right) && !found[0].differs_for(Eye::Left));
}

#[test]
fn of_two_lines_with_one_label_the_first_goes_with_the_first() {
    let before = [line("drop", "tropicamide"), line("drop", "fluorescein")];
    let now = [line("drop", "tropicamide"), line("drop", "oxybuprocaine")];
    let found: Vec<Change> = differences(&before, &now)
        .iter()
        .map(record::Difference::change)
        .collect();
    assert_eq!(found, [Change::Same, Change::Changed]);
}

/// A pressure of two exams is one line: what was read is the same, and only the time differs.
#[test]
fn pressures_taken_at_other_times_stand_on_one_line() {
    let at = |hour: u32| {
        let read = Finding::Done(Readings { mmhg: vec![16.0] });
        let taken = Taken {
            device: Device::Rebound,
            at: NaiveTime::from_hms_opt(hour, 5, 0).unwrap(),
            after_dilating: false,
            eyes: both(read),
            note: String::new(),
        };
        let pressure = Pressure { taken: vec![taken] };
        pressure.into_section().lines()
    };
    let found: Vec<_> = differences(&at(9), &at(14))
        .into_iter()
        .map(|line| (line.label.clone(), line.change()))
        .collect();
    assert_eq!(
        found,
        [
            ("rebound".into(), Change::Same),
            ("taken at".into(), Change::Changed)
        ]
    );
}

#[test]
fn what_is_gone_stands_where_it_stood() {
    let before = [
        line("a", "1"),
        line("b", "2"),
        line("c", "3"),
        line("d", "4"),
    ];
    let now = [line("a", "1"), line("d", "4"), line("e", "5")];
    let order: Vec<String> = differences(&before, &now)
        .into_iter()
        .map(|line| line.label)
        .collect();
    assert_eq!(order, ["a", "b", "c", "d", "e"]);
}

fn any_lines() -> impl Strategy<Value = Vec<Line>> {
    prop::collection::vec(("[a-d]", "[1-3]"), 0..8).prop_map(|all| {
        all.iter()
            .map(|(label, words)| line(label, words))
            .collect()
    })
}

proptest! {
    /// Whatever the readings, both can be had back from what differs.
    #[test]
    fn nothing_is_lost_and_nothing_made_up((before, now) in (any_lines(), any_lines())) {
        let found = differences(&before, &now);
        let later: Vec<Line> = found.iter().filter_map(|line| {
            Some(Line { label: line.label.clone(), said: line.now.clone()? })
        }).collect();
        prop_assert_eq!(later, now);
        let mut earlier: Vec<(String, String)> = found.iter().filter_map(|line| {
            Some((line.label.clone(), format!("{:?}", line.before.as_ref()?)))
        }).collect();
        let mut stood: Vec<(String, String)> = before.iter().map(|line| (line.label.clone(), format!("{:?}", line.said))).collect();
        earlier.sort();
        stood.sort();
        prop_assert_eq!(earlier, stood);
    }
}

#[test]
fn the_last_two_exams_stand_side_by_side_section_by_section() {
    let mut desk = Desk::with_exam(1);
    assert!(desk.story.last_two(&PERSON, FarUnit::Metres).is_none());
    let before = ExamId::from_uuid(Uuid::from_u128(7));
    desk.open(before, PERSON, day(2025, 3, 4));
    for section in [acuity(18), subjective(2.0)] {
        let planned = desk.story.put_section(&before, section, None).unwrap();
        desk.write(planned);
    }
    desk.put(acuity(12), None);
    let told = History {
        health: "diabetes".into(),
        ..History::default()
    };
    desk.put(told.into_section(), None);
    let two = desk.story.last_two(&PERSON, FarUnit::Metres).unwrap();
    assert_eq!(
        (two.before.id(), two.now.opened_on()),
        (before, day(2026, 3, 4))
    );
    let kinds: Vec<_> = two
        .sections
        .iter()
        .map(|section| (section.kind, section.differing()))
        .collect();
    // The chart is the same, what was read is not; of the subjective chart, lens and what was read are gone.
    assert_eq!(
        kinds,
        [
            (SectionKind::History, 1),
            (SectionKind::Acuity, 1),
            (SectionKind::Subjective, 3),
        ]
    );
}
