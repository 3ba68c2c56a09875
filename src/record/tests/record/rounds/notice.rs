//! Reminders of a notice, and the kit list.

use record::{Kit, Notice, RoundDetails};

use super::{ROUND, desk};
use crate::desk::day;

#[test]
fn a_notice_is_called_to_mind_from_its_day_on_until_it_is_given() {
    let mut notice = Notice {
        to: "the harbour health board".into(),
        remind_on: Some(day(2026, 2, 1)),
        ..Notice::default()
    };
    assert_eq!(notice.reminder(day(2026, 1, 31)), None);
    let said = notice.reminder(day(2026, 2, 1));
    assert_eq!(
        said.as_deref(),
        Some("notice to the harbour health board is not given yet")
    );
    assert!(notice.reminder(day(2026, 3, 1)).is_some());
    notice.given_on = Some(day(2026, 2, 2));
    assert_eq!(notice.reminder(day(2026, 3, 1)), None);
}

#[test]
fn a_notice_without_a_day_is_called_to_mind_at_once() {
    let to = "the harbour health board".to_owned();
    let notice = Notice {
        to,
        ..Notice::default()
    };
    assert!(notice.reminder(day(2026, 1, 1)).is_some());
    let nobody = RoundDetails {
        notice: Some(Notice::default()),
        ..RoundDetails::new(day(2026, 3, 4), None)
    };
    assert_eq!(nobody.check()[0].sentence, "say to whom the notice goes");
}

#[test]
fn the_kit_is_one_list_and_ticks_belong_to_a_round() {
    let mut desk = desk();
    let mut kit = Kit::default();
    assert!(kit.add(" trial frame ") && kit.add("spare batteries"));
    assert!(
        !kit.add("Trial  frame") && !kit.add("  "),
        "once, and with a word"
    );
    desk.write(desk.story.put_kit(kit));
    let planned = desk.story.pack(&ROUND, vec!["trial frame".into()]);
    desk.write(planned.unwrap());
    let round = desk.story.round(&ROUND).unwrap();
    assert_eq!(
        desk.story.kit().missing(round.packed()),
        ["spare batteries"]
    );
    let planned = desk.story.pack(&ROUND, Vec::new());
    desk.write(planned.unwrap());
    assert!(desk.story.round(&ROUND).unwrap().packed().is_empty());
}
