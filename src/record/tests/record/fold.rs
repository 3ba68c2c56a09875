//! The same entries tell the same story, in whatever order and however often they come.

use std::collections::BTreeSet;

use proptest::prelude::*;
use proptest::sample::Index;
use record::{
    Body, Draft, Entry, EntryId, ExamId, FoldError, Glasses, PersonId, Section, SectionKind, Stamp,
    Story,
};
use uuid::Uuid;

use crate::desk::{Desk, EXAM, PERSON, day, details};
use crate::samples::{acuity, decision, retinoscopy, subjective};

/// One thing that somebody at one of two tablets does.
#[derive(Clone, Debug)]
struct Deed {
    second_tablet: bool,
    what: What,
}

#[derive(Clone, Debug)]
enum What {
    Rename(u8),
    Open(u8),
    Put(u8, u8),
    PutFromOldDraft(u8, u8, Index),
    Sign,
    Hear,
}

fn deed() -> impl Strategy<Value = Deed> {
    let what = prop_oneof![
        2 => any::<u8>().prop_map(What::Rename),
        2 => (0..3_u8).prop_map(What::Open),
        8 => (0..4_u8, any::<u8>()).prop_map(|(kind, value)| What::Put(kind, value)),
        3 => (0..4_u8, any::<u8>(), any::<Index>())
            .prop_map(|(kind, value, at)| What::PutFromOldDraft(kind, value, at)),
        2 => Just(What::Sign),
        3 => Just(What::Hear),
    ];
    (any::<bool>(), what).prop_map(|(second_tablet, what)| Deed {
        second_tablet,
        what,
    })
}

fn section(kind: u8, value: u8) -> Section {
    match kind {
        0 => acuity([9, 12, 18][usize::from(value) % 3]),
        1 => retinoscopy("+4.75 / −1.50 × 90"),
        2 => subjective(f64::from(value) / 16.0),
        _ => decision(Glasses::LeaveAlone),
    }
}

/// Carries a deed out, as far as the record allows it: a refusal writes nothing.
fn act(desk: &mut Desk, other: &Desk, what: &What) {
    let reason = Some("a slip".to_owned());
    let planned = match what {
        What::Hear => return desk.hear(other),
        What::Rename(n) => Ok(desk
            .story
            .put_person(PERSON, details("Orla", &n.to_string()))),
        What::Open(n) => {
            let exam = ExamId::from_uuid(Uuid::from_u128(u128::from(*n) + 1));
            desk.story.open_exam(
                exam,
                PERSON,
                "Saltmarsh Court".into(),
                day(2026, 1, 1 + u32::from(*n)),
            )
        }
        What::Put(kind, value) => desk
            .story
            .put_section(&EXAM, section(*kind, *value), reason),
        What::PutFromOldDraft(kind, value, at) => {
            let section = section(*kind, *value);
            let exam = desk.story.exam(&EXAM).unwrap();
            let history = exam.history(section.kind());
            let based_on = match history.as_slice() {
                [] => Vec::new(),
                some => vec![at.get(some).entry.id],
            };
            let typing = std::collections::BTreeMap::new();
            let draft = Draft {
                exam: EXAM,
                section,
                typing,
                based_on,
                saved: Stamp::default(),
            };
            desk.story.put_draft(draft, reason)
        }
        What::Sign => desk.story.sign(&EXAM, "M. Farrow".into()),
    };
    if let Ok(planned) = planned {
        desk.write(planned);
    }
}

/// What two tablets wrote, each in its own order, first tablet first.
fn history(deeds: &[Deed]) -> Vec<Entry> {
    let mut one = Desk::with_exam(1);
    let mut two = Desk::new(2);
    two.hear(&one);
    for deed in deeds {
        if deed.second_tablet {
            act(&mut two, &one, &deed.what);
        } else {
            act(&mut one, &two, &deed.what);
        }
    }
    [one.written, two.written].concat()
}

fn fold<'a>(entries: impl IntoIterator<Item = &'a Entry>) -> Story {
    let mut story = Story::default();
    for entry in entries {
        story.admit(entry.clone()).unwrap();
    }
    story
}

fn shuffled_histories() -> impl Strategy<Value = (Vec<Entry>, Vec<Entry>)> {
    prop::collection::vec(deed(), 1..25).prop_flat_map(|deeds| {
        let entries = history(&deeds);
        (Just(entries.clone()), Just(entries).prop_shuffle())
    })
}

/// The heads of one section reckoned the long way: versions that no version of that section names as a parent.
fn heads_the_long_way(entries: &[Entry], kind: SectionKind) -> BTreeSet<EntryId> {
    let versions: Vec<&Entry> = entries
        .iter()
        .filter(|entry| is_version(entry, kind))
        .collect();
    let replaced: BTreeSet<EntryId> = versions
        .iter()
        .flat_map(|entry| entry.parents.clone())
        .collect();
    let ids = versions.iter().map(|entry| entry.id);
    ids.filter(|id| !replaced.contains(id)).collect()
}

fn is_version(entry: &Entry, kind: SectionKind) -> bool {
    matches!(&entry.body, Body::Section { section, .. } if section.kind() == kind)
}

proptest! {
    #[test]
    fn the_order_does_not_matter((written, shuffled) in shuffled_histories()) {
        let story = fold(&shuffled);
        prop_assert_eq!(story.waiting(), 0);
        prop_assert_eq!(story, fold(&written));
    }

    #[test]
    fn an_entry_twice_is_an_entry_once((written, shuffled) in shuffled_histories()) {
        let twice = written.iter().chain(&shuffled).chain(&written);
        prop_assert_eq!(fold(twice), fold(&written));
    }

    /// Half the entries, all read through their bytes, then the rest: the state on the way does not matter either.
    #[test]
    fn a_part_and_then_the_rest_is_the_whole((written, shuffled) in shuffled_histories(), at in any::<Index>()) {
        let at = at.index(shuffled.len());
        let mut story = fold(&shuffled[..at]);
        prop_assert_eq!(story.len(), at);
        for entry in &written {
            story.admit(Entry::from_cbor(&entry.to_cbor()).unwrap()).unwrap();
        }
        prop_assert_eq!(story, fold(&written));
    }

    #[test]
    fn no_version_is_ever_lost_and_the_heads_are_what_nothing_replaced((written, shuffled) in shuffled_histories()) {
        let story = fold(&shuffled);
        let exam = story.exam(&EXAM).unwrap();
        for kind in SectionKind::ALL {
            let kept: BTreeSet<EntryId> = exam.history(kind).iter().map(|version| version.entry.id).collect();
            let versions = written.iter().filter(|entry| is_version(entry, kind));
            prop_assert_eq!(kept, versions.map(|entry| entry.id).collect());
            let heads: BTreeSet<EntryId> = exam.head_ids(kind).into_iter().collect();
            prop_assert_eq!(heads, heads_the_long_way(&written, kind));
        }
    }

    /// After a signature that a tablet knew of, nothing is written there without a reason.
    #[test]
    fn a_signed_exam_never_takes_a_change_without_a_reason((_, shuffled) in shuffled_histories(), kind in 0..4_u8) {
        let story = fold(&shuffled);
        let signed = story.exam(&EXAM).unwrap().is_signed();
        prop_assert_eq!(story.put_section(&EXAM, section(kind, 0), None).is_err(), signed);
    }

    /// Whatever is said before signing, and whether signing is refused, agree.
    #[test]
    fn signing_is_refused_exactly_where_something_is_missing((_, shuffled) in shuffled_histories()) {
        let story = fold(&shuffled);
        let ready = story.exam(&EXAM).unwrap().ready_to_sign().is_empty();
        match story.sign(&EXAM, "M. Farrow".into()) {
            Ok(_) | Err(record::RecordError::NothingToSign) => prop_assert!(ready),
            Err(_) => prop_assert!(!ready),
        }
    }
}

#[test]
fn entries_wait_for_their_parents() {
    let mut desk = Desk::with_exam(1);
    desk.put(acuity(9), None);
    let mut story = Story::default();
    for (entry, waiting) in desk.written.iter().rev().zip([1, 2, 0]) {
        story.admit(entry.clone()).unwrap();
        assert_eq!(story.waiting(), waiting);
    }
    assert_eq!(story, desk.story);
}

#[test]
fn an_entry_that_rests_on_itself_waits_for_ever_and_harms_nothing() {
    let mut desk = Desk::with_exam(1);
    let mut entry = desk.written[0].clone();
    entry.id = EntryId::from_uuid(Uuid::from_u128(77));
    entry.parents = vec![entry.id];
    desk.story.admit(entry).unwrap();
    assert_eq!((desk.story.waiting(), desk.story.people().len()), (1, 1));
}

#[test]
fn another_entry_of_the_same_name_is_refused_and_changes_nothing() {
    let mut desk = Desk::with_exam(1);
    let before = desk.story.clone();
    let mut entry = desk.written[0].clone();
    entry.author = "somebody else".into();
    assert_eq!(
        desk.story.admit(entry.clone()),
        Err(FoldError::Clash(entry.id))
    );
    assert_eq!(desk.story, before);
}

/// No tablet opens an exam twice; if one did, in two persons' names, the earliest opening would count in any order.
#[test]
fn of_two_openings_the_earliest_counts() {
    let mut desk = Desk::with_exam(1);
    let other = PersonId::from_uuid(Uuid::from_u128(0xBB));
    desk.write(desk.story.put_person(other, details("Ivo", "Castlemere")));
    desk.open(EXAM, other, day(2026, 3, 5));
    assert_eq!(desk.story.exam(&EXAM).unwrap().person(), PERSON);
    let backwards = fold(desk.written.iter().rev());
    assert_eq!(backwards, desk.story);
    assert_eq!(
        (
            backwards.exams_of(&PERSON).len(),
            backwards.exams_of(&other).len()
        ),
        (1, 0)
    );
}
