//! What the plots of the log count. Days of the week: computed from the calendar (4 March 2026 is a Wednesday).

use papers::log::{Filter, Length, Outcome, Visit, lengths, visits, waiting, weeks};
use papers::sample::{Desk, day, orla};
use record::{ExamId, PersonId};
use uuid::Uuid;

/// Orla at Saltmarsh Court on 4 March, decided and to be seen in a year; Ivo at Gull Harbour on 16 March, nothing decided.
fn desk() -> Desk {
    let mut desk = Desk::full();
    let ivo = PersonId::from_uuid(Uuid::from_u128(0xBB));
    desk.write(desk.story.put_person(ivo, orla()));
    let exam = ExamId::from_uuid(Uuid::from_u128(0xE2));
    desk.open(exam, ivo, "Gull Harbour", day(2026, 3, 16));
    desk
}

fn seen() -> Vec<Visit> {
    visits(&desk().story, &Filter::default())
}

fn taking(minutes: &[Option<u32>]) -> Vec<Visit> {
    let one = seen().remove(0);
    let each = minutes.iter().map(|minutes| Visit {
        minutes: *minutes,
        ..one.clone()
    });
    each.collect()
}

#[test]
fn every_home_has_every_week_from_the_first_visit_to_the_last() {
    let homes = weeks(&seen());
    let names: Vec<&str> = homes.iter().map(|home| home.place.as_str()).collect();
    assert_eq!(names, ["Gull Harbour", "Saltmarsh Court"]);
    for home in &homes {
        let mondays: Vec<_> = home.weeks.iter().map(|week| week.monday).collect();
        assert_eq!(
            mondays,
            [day(2026, 3, 2), day(2026, 3, 9), day(2026, 3, 16)]
        );
        assert_eq!((home.visits(), home.most()), (1, 1));
    }
    let saltmarsh = homes[1].weeks[0].outcomes;
    let prescribed = Outcome::ALL.map(|outcome| u32::from(outcome == Outcome::Prescribed));
    assert_eq!(saltmarsh, prescribed);
}

#[test]
fn a_home_is_told_in_words_whether_once_or_often() {
    let once = weeks(&seen()).remove(0);
    assert_eq!(once.in_words(), "one visit");
    let twice = [seen(), seen()].concat();
    assert_eq!(weeks(&twice)[0].in_words(), "2 visits, at most 2 a week");
}

#[test]
fn no_visits_make_no_weeks_and_no_lengths() {
    assert!(weeks(&[]).is_empty());
    assert!(lengths(&[]).is_empty());
}

#[test]
fn who_is_to_be_seen_waits_in_the_month_of_their_day() {
    let story = desk().story;
    // The sample's decision is to see her again after twelve months: on 4 March 2027.
    let by = |today| waiting(&story, &seen(), today);
    let ahead = by(day(2026, 5, 20));
    let month = ahead.months.iter().find(|month| month.people == 1).unwrap();
    assert_eq!(month.first, day(2027, 3, 1));
    assert_eq!((ahead.overdue, ahead.later, ahead.people()), (0, 0, 1));
    assert_eq!(by(day(2027, 3, 4)).overdue, 0);
    assert_eq!(by(day(2027, 3, 5)).overdue, 1);
    assert_eq!(by(day(2026, 2, 1)).later, 1);
}

#[test]
fn lengths_stand_step_by_step_and_unknown_ones_nowhere() {
    let steps = lengths(&taking(&[Some(9), Some(10), Some(31), None, Some(200)]));
    let counted = |from_min, below_min, visits| Length {
        from_min,
        below_min,
        visits,
    };
    assert_eq!(steps[0], counted(0, Some(10), 1));
    assert_eq!(steps[1], counted(10, Some(20), 1));
    assert_eq!(steps[2], counted(20, Some(30), 0));
    assert_eq!(steps[3], counted(30, Some(40), 1));
    assert_eq!(steps.last(), Some(&counted(120, None, 1)));
    let all: u32 = steps.iter().map(|step| step.visits).sum();
    assert_eq!(all, 4);
}
