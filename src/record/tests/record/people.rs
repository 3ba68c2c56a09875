//! Names, ages, and details that two tablets changed at once.

use record::{Age, Born, Heads, PersonDetails, PersonId};
use uuid::Uuid;

use crate::desk::{Desk, PERSON, day, details};

#[test]
fn an_age_from_a_date_is_exact_and_turns_on_the_day() {
    let born = Born::Date(day(1940, 3, 4));
    let age = |on| born.age_on(on).unwrap().to_string();
    assert_eq!(age(day(2026, 3, 3)), "85");
    assert_eq!(age(day(2026, 3, 4)), "86");
    assert_eq!(born.age_on(day(1939, 1, 1)), None);
}

/// In a year without one, a birthday on 29 February counts from 1 March: chrono's rule, and the law's in England
/// (from memory).
#[test]
fn a_leap_day_has_its_birthday_in_march() {
    let born = Born::Date(day(1940, 2, 29));
    let years = |on| born.age_on(on).unwrap().years;
    assert_eq!(years(day(2026, 2, 28)), 85);
    assert_eq!(years(day(2026, 3, 1)), 86);
}

#[test]
fn a_stated_age_grows_with_the_years_and_says_about() {
    let born = Born::Stated {
        years: 79,
        in_year: 2024,
    };
    assert_eq!(
        born.age_on(day(2026, 1, 1)),
        Some(Age {
            years: 81,
            exact: false
        })
    );
    assert_eq!(
        born.age_on(day(2026, 1, 1)).unwrap().to_string(),
        "about 81"
    );
    assert_eq!(born.age_on(day(1900, 1, 1)), None);
    let absurd = Born::Stated {
        years: u16::MAX,
        in_year: i32::MIN,
    };
    assert_eq!(absurd.age_on(day(2026, 1, 1)), None);
}

#[test]
fn a_person_needs_a_name_and_a_birth_that_can_be() {
    let today = day(2026, 3, 4);
    let fields = |details: PersonDetails| -> Vec<String> {
        details
            .check(today)
            .into_iter()
            .map(|error| error.field)
            .collect()
    };
    let with = |born| PersonDetails {
        born: Some(born),
        ..details("Orla", "Pennyquick")
    };
    assert!(fields(details("Orla", "Pennyquick")).is_empty());
    assert!(fields(details("Orla", "")).is_empty());
    assert_eq!(fields(details(" ", "")), ["name"]);
    assert!(fields(with(Born::Date(today))).is_empty());
    assert_eq!(fields(with(Born::Date(day(2026, 3, 5)))), ["born"]);
    assert_eq!(fields(with(Born::Date(day(1826, 3, 5)))), ["born"]);
    assert_eq!(
        fields(with(Born::Stated {
            years: 80,
            in_year: 2027
        })),
        ["born"]
    );
    assert_eq!(
        fields(with(Born::Stated {
            years: 140,
            in_year: 2026
        })),
        ["born"]
    );
}

#[test]
fn people_come_by_family_name() {
    let mut desk = Desk::new(1);
    for (n, given, family) in [
        (1, "Piers", "Oakhollow"),
        (2, "Linnet", "Garrowby"),
        (3, "Ada", "Oakhollow"),
    ] {
        let person = PersonId::from_uuid(Uuid::from_u128(n));
        desk.write(desk.story.put_person(person, details(given, family)));
    }
    let names: Vec<String> = desk
        .story
        .people()
        .iter()
        .map(|person| person.details().name.to_string())
        .collect();
    assert_eq!(
        names,
        ["Linnet Garrowby", "Ada Oakhollow", "Piers Oakhollow"]
    );
}

#[test]
fn details_changed_on_two_tablets_stand_side_by_side_until_settled() {
    let mut one = Desk::new(1);
    one.write(one.story.put_person(PERSON, details("Orla", "Pennyquick")));
    let mut two = Desk::new(2);
    two.hear(&one);
    one.write(
        one.story
            .put_person(PERSON, details("Orla", "Pennyquick-Vane")),
    );
    two.write(
        two.story
            .put_person(PERSON, details("Orlaith", "Pennyquick")),
    );
    one.hear(&two);
    let person = one.story.person(&PERSON).unwrap();
    assert_eq!(person.versions().versions().len(), 2);

    one.write(
        one.story
            .put_person(PERSON, details("Orlaith", "Pennyquick-Vane")),
    );
    let person = one.story.person(&PERSON).unwrap();
    assert!(matches!(person.versions(), Heads::One(_)));
    assert_eq!(person.details().name.to_string(), "Orlaith Pennyquick-Vane");
}
