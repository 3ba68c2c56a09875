//! Rounds by their day, seen from whatever the tablet calls today.

use chrono::NaiveDate;
use record::{RoundDetails, RoundId, VisitState};

use super::{PLACE, ROUND, desk, exam, mark, person, put_round, round};
use crate::desk::{Desk, day};

fn days(desk: &Desk, today: NaiveDate) -> [Vec<RoundId>; 3] {
    let days = desk.story.days(today);
    [days.at_hand, days.to_come, days.over]
        .map(|rounds| rounds.iter().map(|round| round.id()).collect())
}

#[test]
fn todays_round_is_at_hand_others_come_or_are_over() {
    let mut desk = desk();
    put_round(&mut desk, round(2), day(2026, 3, 9), &[1]);
    put_round(&mut desk, round(3), day(2026, 3, 6), &[1]);
    put_round(&mut desk, round(4), day(2026, 2, 1), &[1]);
    put_round(&mut desk, round(5), day(2026, 2, 8), &[1]);
    assert_eq!(
        days(&desk, day(2026, 3, 4)),
        [
            vec![ROUND],
            vec![round(3), round(2)],
            vec![round(5), round(4)]
        ]
    );
    let [at_hand, to_come, _] = days(&desk, day(2026, 3, 3));
    assert_eq!(
        (at_hand.len(), to_come[0]),
        (0, ROUND),
        "west of the date line it is still to come"
    );
}

#[test]
fn yesterdays_round_stays_at_hand_while_it_is_under_way() {
    let mut desk = desk();
    let next_day = day(2026, 3, 5);
    assert_eq!(days(&desk, next_day)[0], [], "never begun: nothing goes on");
    desk.open(exam(1), person(1), day(2026, 3, 4));
    assert_eq!(days(&desk, next_day)[0], [ROUND]);
    assert_eq!(
        days(&desk, day(2026, 3, 6))[0],
        [],
        "two days on it is over"
    );
    put_round(&mut desk, round(2), next_day, &[2]);
    assert_eq!(
        days(&desk, next_day)[0],
        [round(2), ROUND],
        "today's come first"
    );
}

#[test]
fn yesterdays_round_is_over_when_nobody_is_left_to_be_seen() {
    let mut desk = desk();
    desk.open(exam(1), person(1), day(2026, 3, 4));
    for who in 1..=5 {
        mark(&mut desk, who, VisitState::PutOff);
    }
    assert_eq!(days(&desk, day(2026, 3, 5))[0], []);
    assert_eq!(
        days(&desk, day(2026, 3, 4))[0],
        [ROUND],
        "on its own day it stays"
    );
}

#[test]
fn a_round_that_is_called_off_is_over_at_once() {
    let mut desk = desk();
    let off = RoundDetails {
        called_off: true,
        ..RoundDetails::new(day(2026, 3, 4), Some(PLACE))
    };
    desk.write(desk.story.put_round(ROUND, off));
    assert_eq!(days(&desk, day(2026, 3, 3)), [vec![], vec![], vec![ROUND]]);
}
