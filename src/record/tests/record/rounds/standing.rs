//! How things stand with each person on a round: told by exams, and by marks where there is none.

use record::{Glasses, Standing, VisitState};

use super::{ROUND, desk, exam, mark, person, put_round, round};
use crate::desk::{Desk, day};
use crate::samples::decision;

fn standing(desk: &Desk, who: u128) -> String {
    let round = desk.story.round(&ROUND).unwrap();
    match desk.story.standing(round, &person(who)) {
        Standing::ToSee => "to see".into(),
        Standing::UnderWay(_) => "under way".into(),
        Standing::Seen(_) => "seen".into(),
        Standing::Marked(visit) => format!("{:?}", visit.state),
    }
}

fn sign(desk: &mut Desk, n: u128) {
    let planned = desk
        .story
        .put_section(&exam(n), decision(Glasses::LeaveAlone), None);
    desk.write(planned.unwrap());
    let planned = desk.story.sign(&exam(n), "M. Farrow".into());
    desk.write(planned.unwrap());
}

fn glance(desk: &Desk) -> String {
    let round = desk.story.round(&ROUND).unwrap();
    desk.story.glance(round).to_string()
}

#[test]
fn an_exam_of_the_day_tells_who_was_seen() {
    let mut desk = desk();
    assert_eq!(standing(&desk, 1), "to see");
    desk.open(exam(0), person(1), day(2026, 2, 1));
    assert_eq!(standing(&desk, 1), "to see", "that was another day");
    desk.open(exam(1), person(1), day(2026, 3, 4));
    assert_eq!(standing(&desk, 1), "under way");
    sign(&mut desk, 1);
    assert_eq!(standing(&desk, 1), "seen");
    mark(&mut desk, 1, VisitState::Asleep);
    assert_eq!(standing(&desk, 1), "seen", "what is signed counts");
}

#[test]
fn between_an_open_exam_and_a_mark_the_later_counts() {
    let mut desk = desk();
    mark(&mut desk, 1, VisitState::Asleep);
    assert_eq!(standing(&desk, 1), "Asleep");
    desk.open(exam(1), person(1), day(2026, 3, 4));
    assert_eq!(standing(&desk, 1), "under way", "woken");
    mark(&mut desk, 1, VisitState::PutOff);
    assert_eq!(standing(&desk, 1), "PutOff", "begun, then put off");
    mark(&mut desk, 1, VisitState::ToSee);
    assert_eq!(standing(&desk, 1), "under way", "taken back");
}

/// An exam begun after midnight is dated with the new day and still belongs to the round.
#[test]
fn past_midnight_the_round_goes_on() {
    let mut desk = desk();
    desk.open(exam(1), person(1), day(2026, 3, 5));
    assert_eq!(standing(&desk, 1), "under way");
    desk.open(exam(2), person(2), day(2026, 3, 6));
    assert_eq!(standing(&desk, 2), "to see", "two days on is another visit");
}

#[test]
fn an_exam_of_the_next_days_round_belongs_to_that() {
    let mut desk = desk();
    put_round(&mut desk, round(2), day(2026, 3, 5), &[1]);
    desk.open(exam(1), person(1), day(2026, 3, 5));
    assert_eq!(standing(&desk, 1), "to see");
    let next = desk.story.round(&round(2)).unwrap();
    assert!(matches!(
        desk.story.standing(next, &person(1)),
        Standing::UnderWay(_)
    ));
}

#[test]
fn the_round_is_told_at_a_glance() {
    let mut desk = desk();
    assert_eq!(glance(&desk), "5 to see");
    desk.open(exam(1), person(1), day(2026, 3, 4));
    sign(&mut desk, 1);
    desk.open(exam(2), person(2), day(2026, 3, 4));
    mark(&mut desk, 3, VisitState::Asleep);
    mark(&mut desk, 4, VisitState::Declined);
    assert_eq!(
        glance(&desk),
        "1 to see \u{b7} 1 under way \u{b7} 1 done \u{b7} 1 asleep \u{b7} 1 declined"
    );
    let round = desk.story.round(&ROUND).unwrap();
    let opened = desk
        .written
        .iter()
        .find(|entry| entry.body.kind() == "exam-opened");
    assert_eq!(
        desk.story.glance(round).started,
        Some(opened.unwrap().stamp)
    );
}

#[test]
fn the_next_person_is_who_was_begun_then_who_waits_then_who_slept() {
    let mut desk = desk();
    let next = |desk: &Desk| desk.story.next_on(desk.story.round(&ROUND).unwrap());
    assert_eq!(next(&desk), Some(person(1)));
    mark(&mut desk, 1, VisitState::Asleep);
    assert_eq!(next(&desk), Some(person(2)));
    desk.open(exam(4), person(4), day(2026, 3, 4));
    assert_eq!(next(&desk), Some(person(4)));
    sign(&mut desk, 4);
    for who in [2, 3] {
        mark(&mut desk, who, VisitState::Declined);
    }
    mark(&mut desk, 5, VisitState::PutOff);
    assert_eq!(next(&desk), Some(person(1)), "knock again");
    mark(&mut desk, 1, VisitState::Declined);
    assert_eq!(next(&desk), None);
}

#[test]
fn only_who_is_on_the_round_can_be_marked() {
    let desk = desk();
    let visit = record::Visit {
        state: VisitState::Out,
        word: "at the hairdresser".into(),
        at: super::at(9, 0),
    };
    let refused = desk.story.mark_visit(&ROUND, person(9), visit.clone());
    assert_eq!(refused, Err(record::RecordError::NotOnRound));
    let refused = desk.story.mark_visit(&round(9), person(1), visit);
    assert_eq!(refused, Err(record::RecordError::NoSuchRound(round(9))));
}
