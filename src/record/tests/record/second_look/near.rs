//! The addition.
//!
//! The table by age is that of Millodot, Dictionary of Optometry, taken to be for 40 cm; the formula is
//! 1/distance − share × amplitude with Hofstetter's lines. The edges are computed from both and the 0.75 D of the default.

use record::{Glasses, NearAdd, Rule, Section};

use super::visit::{NEITHER, ONCE, asks_at, chosen, decided, neutral};

fn asks_of(age: Option<u16>, power: f64, at_cm: f64) -> Vec<Option<record::Eye>> {
    let mut chosen = chosen("+1.00 DS", "+1.00 DS");
    chosen.add = Some(NearAdd { power, at_cm });
    asks_at(
        age,
        Rule::AdditionOutOfRange,
        &[],
        &[Section::Subjective(chosen)],
    )
}

#[test]
fn at_86_the_ordinary_is_2_50_to_3_00_at_40_cm_and_0_75_either_way() {
    for (power, expected) in [(1.5, &ONCE[..]), (1.75, &[]), (3.75, &[]), (4.0, &ONCE)] {
        assert_eq!(asks_of(Some(86), power, 40.0), expected, "{power}");
    }
}

/// 33.3 cm is 3.00 D, half a dioptre more than 40 cm: 3.00 to 3.50, so 2.25 to 4.25.
#[test]
fn nearer_more_is_ordinary() {
    let cm = 100.0 / 3.0;
    for (power, expected) in [(2.0, &ONCE[..]), (2.25, &[]), (4.25, &[]), (4.5, &ONCE)] {
        assert_eq!(asks_of(Some(86), power, cm), expected, "{power}");
    }
}

/// At 50 the mean amplitude is 3.5 D, of which two thirds leave 0.17 D to add at 40 cm; the table says up to 1.75.
#[test]
fn at_50_a_little_or_none_is_ordinary_too() {
    for (power, expected) in [(0.25, &[][..]), (2.5, &[]), (2.75, &ONCE)] {
        assert_eq!(asks_of(Some(50), power, 40.0), expected, "{power}");
    }
}

/// At 30 the least amplitude is 7.5 D, of which two thirds do 40 cm twice over.
#[test]
fn the_young_need_none() {
    assert_eq!(asks_of(Some(30), 0.75, 40.0), NEITHER);
    assert_eq!(asks_of(Some(30), 1.0, 40.0), ONCE);
}

/// An addition above 1/distance makes no sense without low-vision intent; then the distance says so.
#[test]
fn of_an_unknown_age_the_distance_is_the_most() {
    assert_eq!(asks_of(None, 3.25, 40.0), NEITHER);
    assert_eq!(asks_of(None, 3.5, 40.0), ONCE);
    assert_eq!(asks_of(None, 10.0, 10.0), NEITHER);
}

#[test]
fn lenses_prescribed_without_an_addition_are_asked_about_from_45() {
    let without = |age, glasses| {
        let mut chosen = chosen("+1.00 DS", "+1.00 DS");
        chosen.add = None;
        let now = [Section::Subjective(chosen), decided(glasses)];
        asks_at(age, Rule::AdditionMissing, &[], &now)
    };
    assert_eq!(without(Some(45), Glasses::Prescribe), ONCE);
    assert_eq!(without(Some(44), Glasses::Prescribe), NEITHER);
    assert_eq!(without(None, Glasses::Prescribe), NEITHER);
    assert_eq!(without(Some(86), Glasses::LeaveAlone), NEITHER);
    let found = [neutral("+2.50 DS", "+2.50 DS"), decided(Glasses::Prescribe)];
    assert_eq!(asks_at(Some(86), Rule::AdditionMissing, &[], &found), ONCE);
}
