//! The same entries about rounds tell the same story in whatever order they come; two tablets' versions both stay.

use proptest::prelude::*;
use record::{Body, Heads, RoundDetails, Story, VisitState};

use super::{ROUND, desk, mark, person};
use crate::desk::{Desk, day};

/// A round that two tablets changed without knowing of each other, with marks, ticks and a kit list from both.
fn two_tablets() -> (Desk, Desk) {
    let mut one = desk();
    let mut two = Desk::new(2);
    two.hear(&one);
    for (desk, who, item) in [(&mut one, 1, "occluder"), (&mut two, 2, "tape measure")] {
        let mut details = desk.story.round(&ROUND).unwrap().details().clone();
        details.move_to(&person(who), 4);
        details.remove(&person(who + 2));
        desk.write(desk.story.put_round(ROUND, details));
        mark(desk, 5, VisitState::Out);
        mark(desk, who, VisitState::Asleep);
        let mut kit = desk.story.kit();
        kit.add(item);
        desk.write(desk.story.put_kit(kit));
        let planned = desk.story.pack(&ROUND, vec![item.into()]);
        desk.write(planned.unwrap());
    }
    one.hear(&two);
    two.hear(&one);
    (one, two)
}

#[test]
fn two_versions_of_a_round_stand_until_one_is_chosen() {
    let (mut one, _) = two_tablets();
    let round = one.story.round(&ROUND).unwrap();
    assert_eq!(round.versions().versions().len(), 2);
    let together = round.together();
    assert_eq!(together.people.len(), 5, "everybody whom either has");
    assert_eq!(together.people[..4], round.details().people[..]);
    one.write(one.story.put_round(ROUND, together));
    let round = one.story.round(&ROUND).unwrap();
    assert!(matches!(round.versions(), Heads::One(_)));
}

#[test]
fn what_is_said_of_a_visit_waits_for_its_round() {
    let mut desk = desk();
    mark(&mut desk, 1, VisitState::Asleep);
    let mut story = Story::default();
    let visit = desk.written.last().unwrap();
    assert!(matches!(visit.body, Body::Visit(_)));
    story.admit(visit.clone()).unwrap();
    assert_eq!(
        (story.waiting(), story.days(day(2026, 3, 4)).at_hand.len()),
        (1, 0)
    );
    for entry in &desk.written {
        story.admit(entry.clone()).unwrap();
    }
    assert_eq!(story, desk.story);
}

#[test]
fn somebody_who_is_not_on_record_is_left_out_and_stops_nothing() {
    let mut desk = desk();
    let mut details = RoundDetails::new(day(2026, 3, 4), None);
    details.add([9, 1].map(person));
    desk.write(desk.story.put_round(ROUND, details));
    let round = desk.story.round(&ROUND).unwrap();
    assert_eq!(desk.story.people_of(round).len(), 1);
    assert_eq!(desk.story.glance(round).to_string(), "1 to see");
    assert_eq!(desk.story.next_on(round), Some(person(1)));
    assert_eq!(desk.story.by_room(None, &details_of(&desk)), [person(1)]);
}

fn details_of(desk: &Desk) -> Vec<record::PersonId> {
    desk.story.round(&ROUND).unwrap().details().people.clone()
}

proptest! {
    #[test]
    fn the_order_does_not_matter(order in Just((0..20).collect::<Vec<usize>>()).prop_shuffle()) {
        let (one, two) = two_tablets();
        let written = [one.written, two.written].concat();
        prop_assert!(written.len() <= order.len());
        let mut story = Story::default();
        for at in order {
            if let Some(entry) = written.get(at) {
                story.admit(entry.clone()).unwrap();
            }
        }
        prop_assert_eq!(story.waiting(), 0);
        prop_assert_eq!(&story, &two.story);
        prop_assert_eq!(story, one.story);
    }
}

#[test]
fn the_kit_list_written_last_is_shown() {
    let (one, two) = two_tablets();
    let written = [one.written, two.written].concat();
    let kits = written.iter().filter_map(|entry| match &entry.body {
        Body::Kit(kit) => Some((entry.stamp, kit)),
        _ => None,
    });
    let (_, last) = kits.max_by_key(|(stamp, _)| *stamp).unwrap();
    assert_eq!(one.story.kit(), *last);
}
