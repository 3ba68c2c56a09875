//! Two records of one person: joined, and taken apart again.

use std::collections::{BTreeMap, BTreeSet};

use proptest::prelude::*;
use proptest::sample::Index;
use record::{
    Body, Born, Entry, EntryId, ExamId, Families, PersonDetails, PersonId, RecordError, Same, Story,
};
use uuid::Uuid;

use crate::desk::{Desk, day, details};

fn person(n: u8) -> PersonId {
    PersonId::from_uuid(Uuid::from_u128(u128::from(n) + 1))
}

fn exam(n: u8) -> ExamId {
    ExamId::from_uuid(Uuid::from_u128(u128::from(n) + 100))
}

/// Two people with an exam each.
fn two() -> Desk {
    let mut desk = Desk::new(1);
    for n in 0..2 {
        let known = details("Orla", ["Pennyquick", "Penniquick"][usize::from(n)]);
        desk.write(desk.story.put_person(person(n), known));
        desk.open(exam(n), person(n), day(2025, 3, 1 + u32::from(n)));
    }
    desk
}

fn join(desk: &mut Desk, kept: u8, other: u8) -> EntryId {
    let planned = desk
        .story
        .say_same(person(kept), person(other), "same face".into());
    desk.write(planned.unwrap())
}

fn part(desk: &mut Desk, same: EntryId) {
    let planned = desk.story.say_apart(same, "her sister".into());
    desk.write(planned.unwrap());
}

/// What the fold shows: everybody, by which details, with which exams.
fn shown(story: &Story) -> Vec<(PersonId, PersonDetails, Vec<ExamId>)> {
    let people = story.people().into_iter();
    let shown = people.map(|person| {
        let exams = story.exams_of(&person.id());
        let exams = exams.iter().map(|exam| exam.id()).collect();
        (person.id(), person.details().clone(), exams)
    });
    shown.collect()
}

#[test]
fn two_that_are_one_are_shown_as_one_with_the_exams_of_both() {
    let mut desk = two();
    let before = shown(&desk.story);
    let same = join(&mut desk, 0, 1);
    let story = &desk.story;
    assert_eq!(
        shown(story),
        [(
            person(0),
            details("Orla", "Pennyquick"),
            vec![exam(1), exam(0)]
        )]
    );
    // An address or an exam of the other name leads to the one that is kept.
    assert_eq!(story.person(&person(1)).unwrap().id(), person(0));
    assert_eq!(story.exams_of(&person(1)).len(), 2);
    assert_eq!(story.joined(&person(1))[0].entry.id, same);
    assert_eq!(story.name_of(&person(1)).unwrap(), "Orla Penniquick");

    part(&mut desk, same);
    assert_eq!(shown(&desk.story), before);
    assert!(desk.story.joined(&person(0)).is_empty());
}

#[test]
fn what_is_written_of_either_while_they_are_one_is_written_of_the_one_that_is_kept() {
    let mut desk = two();
    let same = join(&mut desk, 0, 1);
    desk.write(
        desk.story
            .put_person(person(1), details("Orlaith", "Pennyquick")),
    );
    desk.open(exam(5), person(1), day(2026, 1, 1));
    assert_eq!(shown(&desk.story)[0].1, details("Orlaith", "Pennyquick"));
    part(&mut desk, same);
    let names: Vec<_> = shown(&desk.story)
        .into_iter()
        .map(|(_, details, exams)| (details.name.to_string(), exams.len()))
        .collect();
    assert_eq!(
        names,
        [
            ("Orla Penniquick".to_owned(), 1),
            ("Orlaith Pennyquick".to_owned(), 2)
        ]
    );
}

#[test]
fn chains_lead_to_the_one_that_nobody_gave_up() {
    let mut desk = two();
    desk.write(
        desk.story
            .put_person(person(2), details("Orla", "Pennyquick-Vane")),
    );
    join(&mut desk, 0, 1);
    join(&mut desk, 2, 0);
    assert_eq!(shown(&desk.story).len(), 1);
    assert_eq!(desk.story.shown_for(person(1)), person(2));
}

#[test]
fn where_two_tablets_keep_one_another_the_later_word_holds() {
    let mut one = two();
    let mut other = Desk::new(2);
    other.hear(&one);
    join(&mut one, 0, 1);
    join(&mut other, 1, 0);
    let said = one.written.iter().chain(&other.written);
    let said = said.filter_map(|entry| match &entry.body {
        Body::Same(same) => Some((entry.stamp, entry.id, same.clone())),
        _ => None,
    });
    let (_, _, later) = said.max_by_key(|(stamp, id, _)| (*stamp, *id)).unwrap();
    one.hear(&other);
    other.hear(&one);
    assert_eq!(shown(&one.story), shown(&other.story));
    assert_eq!(shown(&one.story).len(), 1);
    assert_eq!(one.story.shown_for(later.other), later.kept);
}

#[test]
fn what_cannot_be_is_refused() {
    let mut desk = two();
    let story = &desk.story;
    let nobody = person(7);
    let say = |kept, other| story.say_same(kept, other, String::new());
    assert_eq!(
        say(person(0), nobody),
        Err(RecordError::NoSuchPerson(nobody))
    );
    assert_eq!(say(person(0), person(0)), Err(RecordError::SameAlready));
    let same = join(&mut desk, 0, 1);
    let again = desk.story.say_same(person(1), person(0), String::new());
    assert_eq!(again, Err(RecordError::SameAlready));
    let first = desk.written[0].id;
    let no_such = desk.story.say_apart(first, String::new());
    assert_eq!(no_such, Err(RecordError::NotSame(first)));
    part(&mut desk, same);
    let twice = desk.story.say_apart(same, String::new());
    assert_eq!(twice, Err(RecordError::NotSame(same)));
}

#[test]
fn people_born_on_one_day_and_called_alike_may_be_one() {
    let mut desk = Desk::new(1);
    let born = Some(Born::Date(day(1938, 3, 12)));
    for (n, given, family, born) in [
        (0, "Orla", "Pennyquick", born),
        (1, "Orla Maud", "Penniquick", born),
        (2, "Pennyquick", "Orla", born),
        (3, "Orla", "Oakhollow", born),
        (4, "Orla", "Pennyquick", Some(Born::Date(day(1938, 3, 13)))),
        (5, "Orla", "Pennyquick", None),
    ] {
        let known = PersonDetails {
            born,
            ..details(given, family)
        };
        desk.write(desk.story.put_person(person(n), known));
    }
    let may_be = |n| {
        let found = desk.story.may_be_same(&person(n));
        found
            .into_iter()
            .map(record::Person::id)
            .collect::<Vec<_>>()
    };
    assert_eq!(may_be(0), [person(2), person(1)]);
    assert_eq!(may_be(3), []);
    assert_eq!(may_be(5), []);
}

/// One thing that somebody at one of two tablets does.
#[derive(Clone, Debug)]
enum Deed {
    Rename(u8, u8),
    Open(u8, u8),
    Same(u8, u8),
    Apart(Index),
    Hear,
}

fn deed() -> impl Strategy<Value = (bool, Deed)> {
    let deed = prop_oneof![
        2 => (0..4_u8, any::<u8>()).prop_map(|(who, n)| Deed::Rename(who, n)),
        2 => (0..4_u8, 0..6_u8).prop_map(|(who, n)| Deed::Open(who, n)),
        3 => (0..4_u8, 0..4_u8).prop_map(|(one, other)| Deed::Same(one, other)),
        2 => any::<Index>().prop_map(Deed::Apart),
        1 => Just(Deed::Hear),
    ];
    (any::<bool>(), deed)
}

fn act(desk: &mut Desk, other: &Desk, deed: &Deed) {
    let planned = match deed {
        Deed::Hear => return desk.hear(other),
        Deed::Rename(who, n) => Ok(desk
            .story
            .put_person(person(*who), details("Orla", &n.to_string()))),
        Deed::Open(who, n) => {
            desk.story
                .open_exam(exam(*n), person(*who), String::new(), day(2026, 1, 1))
        }
        Deed::Same(one, other) => desk
            .story
            .say_same(person(*one), person(*other), String::new()),
        Deed::Apart(at) => {
            let said: Vec<EntryId> = desk
                .written
                .iter()
                .filter(|entry| is_same(entry))
                .map(|entry| entry.id)
                .collect();
            if said.is_empty() {
                return;
            }
            desk.story.say_apart(*at.get(&said), String::new())
        }
    };
    if let Ok(planned) = planned {
        desk.write(planned);
    }
}

fn is_same(entry: &Entry) -> bool {
    matches!(entry.body, Body::Same(_))
}

/// Whom an entry names.
fn about(entry: &Entry, written: &[Entry]) -> BTreeSet<PersonId> {
    match &entry.body {
        Body::Person { person, .. } | Body::ExamOpened { person, .. } => BTreeSet::from([*person]),
        Body::Same(same) => BTreeSet::from([same.kept, same.other]),
        Body::Apart(apart) => {
            let same = written.iter().find(|entry| entry.id == apart.same);
            about(same.unwrap(), written)
        }
        other => panic!("nobody writes {other:?} here"),
    }
}

fn fold<'a>(entries: impl IntoIterator<Item = &'a Entry>) -> Story {
    let mut story = Story::default();
    for entry in entries {
        story.admit(entry.clone()).unwrap();
    }
    story
}

fn histories() -> impl Strategy<Value = (Vec<Entry>, Vec<Entry>)> {
    prop::collection::vec(deed(), 1..25).prop_flat_map(|deeds| {
        let mut one = Desk::new(1);
        for n in 0..4 {
            one.write(one.story.put_person(person(n), details("Orla", "Tern")));
        }
        let mut two = Desk::new(2);
        two.hear(&one);
        for (second, deed) in &deeds {
            if *second {
                act(&mut two, &one, deed);
            } else {
                act(&mut one, &two, deed);
            }
        }
        let entries = [one.written, two.written].concat();
        (Just(entries.clone()), Just(entries).prop_shuffle())
    })
}

proptest! {
    #[test]
    fn the_order_does_not_matter((written, shuffled) in histories()) {
        let story = fold(&shuffled);
        prop_assert_eq!(story.waiting(), 0);
        prop_assert_eq!(story, fold(&written));
    }

    /// To join two and take it back is as if nothing had been said, whatever else was, and in whatever order it comes.
    #[test]
    fn joined_and_taken_back_is_never_joined((written, shuffled) in histories(), one in 0..4_u8, other in 0..4_u8, at in any::<Index>()) {
        let mut desk = Desk::new(3);
        desk.story = fold(&written);
        desk.clock.witness(written.iter().map(|entry| entry.stamp).max().unwrap());
        let before = shown(&desk.story);
        if let Ok(planned) = desk.story.say_same(person(one), person(other), String::new()) {
            let same = desk.write(planned);
            part(&mut desk, same);
        }
        let mut all = shuffled;
        let at = at.index(all.len() + 1);
        for entry in desk.written {
            // The taking back comes before what it takes back.
            all.insert(at, entry);
        }
        prop_assert_eq!(shown(&fold(&all)), before);
    }

    /// Folded family by family, everybody is shown as the fold of everything shows them.
    #[test]
    fn a_family_alone_is_shown_as_among_all((written, shuffled) in histories()) {
        // An exam's name is never given to two people outside of these histories.
        let mut opened = BTreeMap::new();
        let once = |entry: &Entry| match entry.body {
            Body::ExamOpened { exam, .. } => *opened.entry(exam).or_insert(entry.id) == entry.id,
            _ => true,
        };
        let shuffled: Vec<Entry> = shuffled.into_iter().filter(once).collect();
        let mut families = Families::default();
        for entry in &written {
            families.take(entry);
        }
        let mut apart = Vec::new();
        for family in (0..4).map(|n| families.of(person(n))).collect::<BTreeSet<_>>() {
            let theirs: Vec<&Entry> = shuffled.iter().filter(|entry| about(entry, &written).is_subset(&family)).collect();
            let story = fold(theirs);
            prop_assert_eq!(story.waiting(), 0);
            apart.extend(shown(&story));
        }
        apart.sort_by_key(|(person, ..)| *person);
        let mut together = shown(&fold(&shuffled));
        together.sort_by_key(|(person, ..)| *person);
        prop_assert_eq!(apart, together);
    }

    /// What was taken back leaves no trace in what is shown: only the statements that stand count.
    #[test]
    fn only_what_stands_counts((written, shuffled) in histories()) {
        let back: Vec<EntryId> = written.iter().filter_map(|entry| match &entry.body {
            Body::Apart(apart) => Some(apart.same),
            _ => None,
        }).collect();
        let stands = written.iter().filter(|entry| !back.contains(&entry.id) && !matches!(entry.body, Body::Apart(_)));
        prop_assert_eq!(shown(&fold(&shuffled)), shown(&fold(stands)));
    }

    /// Nobody is lost: everybody who was put down is shown, or somebody is for them, and every exam is shown once.
    #[test]
    fn nobody_and_nothing_is_lost((written, shuffled) in histories()) {
        let story = fold(&shuffled);
        for n in 0..4 {
            let shown_for = story.shown_for(person(n));
            prop_assert_eq!(story.shown_for(shown_for), shown_for);
            prop_assert!(story.people().iter().any(|person| person.id() == shown_for));
        }
        let mut exams: Vec<ExamId> = shown(&story).into_iter().flat_map(|(_, _, exams)| exams).collect();
        exams.sort_unstable();
        let mut opened: Vec<ExamId> = written.iter().filter_map(|entry| match entry.body {
            Body::ExamOpened { exam, .. } => Some(exam),
            _ => None,
        }).collect();
        opened.sort_unstable();
        opened.dedup();
        prop_assert_eq!(exams, opened);
    }
}

/// What an older reader does not know it carries; what it knows it reads back the same.
#[test]
fn a_statement_comes_back_as_it_went() {
    let mut desk = two();
    let same = join(&mut desk, 0, 1);
    part(&mut desk, same);
    for entry in &desk.written {
        assert_eq!(Entry::from_cbor(&entry.to_cbor()).as_ref(), Ok(entry));
    }
    let bodies: Vec<&str> = desk.written.iter().map(|entry| entry.body.kind()).collect();
    assert_eq!(bodies[4..], ["same-person", "two-persons"]);
    let said = Same {
        kept: person(0),
        other: person(1),
        why: "same face".into(),
    };
    assert_eq!(desk.written[4].body, Body::Same(said));
}
