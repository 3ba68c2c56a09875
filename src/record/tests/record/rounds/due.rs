//! Who is due, from the recall that was decided last.

use record::{Decision, Recall, Section};

use super::{PLACE, desk, exam, person};
use crate::desk::{Desk, day};

fn decide(desk: &mut Desk, n: u128, who: u128, on: chrono::NaiveDate, months: Option<u16>) {
    desk.open(exam(n), person(who), on);
    let recall = months.map(|months| Recall {
        months,
        reason: "cataract watched".into(),
    });
    let decision = Section::Decision(Decision {
        advice: "as before".into(),
        recall,
        ..Decision::default()
    });
    let planned = desk.story.put_section(&exam(n), decision, None);
    desk.write(planned.unwrap());
}

fn due(desk: &Desk, by: chrono::NaiveDate) -> Vec<record::PersonId> {
    let due = desk.story.due_at(&PLACE, by);
    due.iter().map(|due| due.person).collect()
}

#[test]
fn who_is_due_by_a_day_comes_longest_overdue_first() {
    let mut desk = desk();
    decide(&mut desk, 1, 1, day(2025, 3, 10), Some(12));
    decide(&mut desk, 2, 2, day(2025, 3, 4), Some(6));
    decide(&mut desk, 3, 3, day(2025, 3, 4), None);
    assert_eq!(due(&desk, day(2026, 3, 9)), [person(2)]);
    assert_eq!(
        due(&desk, day(2026, 3, 10)),
        [2, 1].map(person),
        "due on the day itself"
    );
    assert_eq!(
        desk.story.due(&person(2)).unwrap().reason,
        "cataract watched"
    );
    assert_eq!(desk.story.due(&person(4)), None, "never examined");
}

#[test]
fn the_newest_decision_counts_even_where_it_names_no_recall() {
    let mut desk = desk();
    decide(&mut desk, 1, 1, day(2024, 3, 4), Some(6));
    decide(&mut desk, 2, 1, day(2025, 3, 4), Some(24));
    assert_eq!(desk.story.due(&person(1)).unwrap().on, day(2027, 3, 4));
    desk.open(exam(3), person(1), day(2026, 3, 4));
    assert_eq!(
        desk.story.due(&person(1)).unwrap().exam,
        exam(2),
        "nothing is decided yet"
    );
    decide(&mut desk, 4, 1, day(2026, 3, 5), None);
    assert_eq!(desk.story.due(&person(1)), None);
}

/// Common practice, no source: a month without that day gives its last.
#[test]
fn a_short_month_gives_its_last_day() {
    let mut desk = desk();
    decide(&mut desk, 1, 1, day(2025, 8, 31), Some(6));
    assert_eq!(desk.story.due(&person(1)).unwrap().on, day(2026, 2, 28));
}
