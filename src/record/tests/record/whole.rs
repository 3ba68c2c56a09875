//! Everything on record of one person, and who is past the years for which records are kept. No outside source: how long that
//! is, laws and contracts say differently, so each clinic says it.

use chrono::{DateTime, NaiveDateTime};
use optics::change::Threshold;
use record::{ExamId, PastKeeping, PersonId, RoundDetails, RoundId, Settings, Stamp, Story};
use uuid::Uuid;

use crate::desk::{Desk, EXAM, PERSON, day, details};
use crate::samples::acuity;

const OTHER: PersonId = PersonId::from_uuid(Uuid::from_u128(0xBB));

/// A reader in universal time. All desks write on 4 March 2026.
fn at(stamp: Stamp) -> NaiveDateTime {
    let ms = i64::try_from(stamp.wall_ms).unwrap();
    DateTime::from_timestamp_millis(ms).unwrap().naive_utc()
}

fn past(story: &Story, years: f64, today: (i32, u32, u32)) -> Vec<PersonId> {
    let past = story.past_keeping(years, day(today.0, today.1, today.2), &at);
    past.into_iter().map(|past| past.person).collect()
}

#[test]
fn nobody_is_past_keeping_before_the_years_are_over() {
    let desk = Desk::with_exam(1);
    assert_eq!(past(&desk.story, 8.0, (2034, 3, 4)), []);
    assert_eq!(past(&desk.story, 8.0, (2034, 3, 5)), [PERSON]);
    assert_eq!(past(&desk.story, 8.5, (2034, 3, 5)), []);
    // More years than the calendar has.
    assert_eq!(past(&desk.story, 1e9, (2034, 3, 5)), []);
}

#[test]
fn the_last_entry_counts_whatever_it_is() {
    let mut desk = Desk::with_exam(1);
    // An exam of a later day than that on which anything was written, as a tablet with a wrong clock would have it.
    let later = ExamId::from_uuid(Uuid::from_u128(0xE2));
    desk.open(later, PERSON, day(2027, 5, 1));
    assert_eq!(past(&desk.story, 8.0, (2035, 5, 1)), []);
    let found = desk.story.past_keeping(8.0, day(2035, 5, 2), &at);
    let expected = PastKeeping {
        person: PERSON,
        last: day(2027, 5, 1),
    };
    assert_eq!(found, [expected]);
}

#[test]
fn of_two_records_of_one_person_the_later_counts_and_one_is_named() {
    let mut desk = Desk::with_exam(1);
    desk.write(desk.story.put_person(OTHER, details("Orla", "Pennyquik")));
    assert_eq!(past(&desk.story, 1.0, (2030, 1, 1)).len(), 2);
    let said = desk.story.say_same(PERSON, OTHER, "asked her".into());
    desk.write(said.unwrap());
    let shown = desk.story.shown_for(OTHER);
    assert_eq!(past(&desk.story, 1.0, (2030, 1, 1)), [shown]);
    let whole = desk.story.whole(&OTHER).unwrap();
    assert_eq!(whole.details.len(), 2);
    assert_eq!(whole.joined.len(), 1);
    assert_eq!(whole.exams.len(), 1);
}

#[test]
fn the_whole_has_every_version_and_every_round_and_nobody_else() {
    let mut desk = Desk::with_exam(1);
    desk.put(acuity(60), None);
    desk.write(desk.story.put_person(PERSON, details("Orla", "Pennyquick")));
    desk.write(desk.story.put_person(OTHER, details("Ivo", "Castlemere")));
    for (n, who) in [(1, PERSON), (2, OTHER)] {
        let mut round = RoundDetails::new(day(2026, 3, n), None);
        round.add([who]);
        let id = RoundId::from_uuid(Uuid::from_u128(n.into()));
        desk.write(desk.story.put_round(id, round));
    }
    let whole = desk.story.whole(&PERSON).unwrap();
    assert_eq!(whole.details.len(), 2);
    assert!(whole.details[0].entry.stamp < whole.details[1].entry.stamp);
    assert_eq!(whole.exams[0].id(), EXAM);
    let days: Vec<_> = whole
        .rounds
        .iter()
        .map(|on| on.round.details().date)
        .collect();
    assert_eq!(days, [day(2026, 3, 1)]);
}

#[test]
fn the_excerpt_of_a_person_without_exams_has_the_details() {
    let mut desk = Desk::new(1);
    desk.write(desk.story.put_person(PERSON, details("Orla", "Pennyquick")));
    let mut told = Story::default();
    for entry in desk.story.excerpt_of(&PERSON) {
        told.admit(entry).unwrap();
    }
    assert_eq!(told.person(&PERSON), desk.story.person(&PERSON));
    assert!(desk.story.excerpt_of(&OTHER).is_empty());
}

#[test]
fn the_years_are_a_setting_that_every_tablet_carries() {
    let mut settings = Settings::default();
    assert_eq!(settings.kept_for(), None);
    settings.keep_for(Threshold::new(8.0, "harbour eye service, 2026").unwrap());
    let mut desk = Desk::new(1);
    desk.write(desk.story.put_settings(settings));
    let mut other = Desk::new(2);
    other.hear(&desk);
    let held = other.story.settings();
    assert_eq!(held.kept_for().map(Threshold::value), Some(8.0));
    // It is no figure of the second look.
    assert_eq!(held.thresholds(), Settings::default().thresholds());
    let mut without = held;
    without.keep_without_end();
    assert_eq!(without, Settings::default());
}
