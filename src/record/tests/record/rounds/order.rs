//! The order of rooms, by hand and by what holds of every order.

use std::cmp::Ordering;

use proptest::prelude::*;
use record::{RoundDetails, room_order};

use super::{PLACE, desk, person};
use crate::desk::day;

fn sorted(mut rooms: Vec<&str>) -> Vec<&str> {
    rooms.sort_by(|one, other| room_order(one, other));
    rooms
}

/// Common practice, no source: as the doors stand along a corridor.
#[test]
fn rooms_stand_as_along_a_corridor() {
    assert_eq!(
        sorted(vec!["10a", "10", "2", "10B", "1"]),
        ["1", "2", "10", "10a", "10B"]
    );
    assert_eq!(
        sorted(vec!["Flat 12", "flat 3", "Lounge"]),
        ["flat 3", "Flat 12", "Lounge"]
    );
    assert_eq!(sorted(vec!["", "9", " "])[0], "9");
    assert_eq!(sorted(vec!["1.10", "1.9", "0.12"]), ["0.12", "1.9", "1.10"]);
    assert_eq!(sorted(vec!["010", "9"]), ["9", "010"]);
    let (longer, shorter) = ("1".repeat(400), "9".repeat(399));
    assert_eq!(room_order(&shorter, &longer), Ordering::Less);
}

fn room() -> impl Strategy<Value = String> {
    prop_oneof!["[0-9]{0,3} ?[a-zA-Z]{0,2}[0-9]{0,2}", ".{0,6}"]
}

proptest! {
    /// What a sort needs of an order, whatever stands on the doors.
    #[test]
    fn it_is_an_order(a in room(), b in room(), c in room()) {
        prop_assert_eq!(room_order(&a, &a), Ordering::Equal);
        prop_assert_eq!(room_order(&a, &b), room_order(&b, &a).reverse());
        if room_order(&a, &b) != Ordering::Greater && room_order(&b, &c) != Ordering::Greater {
            prop_assert_ne!(room_order(&a, &c), Ordering::Greater);
        }
    }

    /// Bare numbers go by what they count.
    #[test]
    fn numbers_go_by_what_they_count(a in any::<u64>(), b in any::<u64>()) {
        prop_assert_eq!(room_order(&a.to_string(), &b.to_string()), a.cmp(&b));
    }
}

/// Units in the order of the place, rooms within them, and last who has no room of any unit.
#[test]
fn people_go_by_unit_then_room() {
    let desk = desk();
    let all: Vec<_> = (1..=5).map(person).collect();
    let ordered = desk.story.by_room(Some(PLACE), &all);
    assert_eq!(
        ordered,
        [5, 1, 4, 2, 3].map(person),
        "21 and 22 upstairs first, then 3 and 11"
    );
    let bare = desk.story.by_room(None, &all);
    assert_eq!(bare, [4, 2, 5, 1, 3].map(person), "3, 11, 21, 22, none");
}

#[test]
fn somebody_is_moved_by_hand_and_nobody_stands_twice() {
    let mut round = RoundDetails::new(day(2026, 3, 4), None);
    round.add([1, 2, 3, 2, 1].map(person));
    assert_eq!(round.people, [1, 2, 3].map(person));
    round.move_to(&person(3), 0);
    assert_eq!(round.people, [3, 1, 2].map(person));
    round.move_to(&person(3), 99);
    assert_eq!(round.people, [1, 2, 3].map(person));
    round.move_to(&person(9), 0);
    assert_eq!(round.people.len(), 3, "somebody else stays off it");
    round.remove(&person(2));
    assert_eq!(round.people, [1, 3].map(person));
}
