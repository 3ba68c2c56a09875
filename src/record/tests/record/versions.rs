//! Every version of a section with what it changed, and two versions settled in one tap.

use chrono::{DateTime, NaiveDateTime};
use record::{
    Change, DeviceId, ExamState, FarUnit, Fitting, Glasses, Order, Part, RecordError, Said,
    Section, SectionKind, Stamp, Written,
};

use crate::desk::{Desk, EXAM, PERSON, day};
use crate::samples::{acuity, decision, subjective};

/// A clock ten hours behind universal time.
fn far_west(stamp: Stamp) -> NaiveDateTime {
    let ms = i64::try_from(stamp.wall_ms).unwrap() - 36_000_000;
    DateTime::from_timestamp_millis(ms).unwrap().naive_utc()
}

fn versions(desk: &Desk, kind: SectionKind) -> Vec<Written<'_>> {
    desk.story
        .exam(&EXAM)
        .unwrap()
        .versions(kind, &far_west, FarUnit::Metres)
}

/// Which version was replaced, and what became of which line.
type Changes = Vec<(Option<usize>, Vec<(String, Change)>)>;

fn changes(written: &Written<'_>) -> Changes {
    let against = written.against.iter();
    let told = against.map(|against| {
        let lines = against.lines.iter();
        let lines = lines.map(|line| (line.label.clone(), line.change()));
        (against.number, lines.collect())
    });
    told.collect()
}

#[test]
fn every_version_says_who_when_where_why_and_what_it_changed() {
    let mut desk = Desk::with_exam(7);
    desk.put(subjective(2.0), None);
    desk.put(decision(Glasses::Prescribe), None);
    desk.sign();
    desk.put(subjective(2.25), Some("read again"));
    let all = versions(&desk, SectionKind::Subjective);
    let [first, second] = all.as_slice() else {
        panic!("{all:?}")
    };
    assert_eq!((first.number, second.number), (1, 2));
    assert_eq!(
        (first.author(), first.device()),
        ("examiner 7", DeviceId([7; 16]))
    );
    // Written in the morning of 4 March in universal time: there it is still the third.
    assert_eq!(first.at.date(), day(2026, 3, 3));
    assert_eq!((first.reason, second.reason), (None, Some("read again")));
    assert_eq!(
        (&*first.signed_by, &*second.signed_by),
        (&["M. Farrow"][..], &[][..])
    );
    assert_eq!((first.stands, second.stands), (false, true));
    let [(None, added)] = &*changes(first) else {
        panic!("{first:?}")
    };
    assert!(added.iter().all(|(_, change)| *change == Change::Added));
    assert_eq!(
        changes(second),
        [(Some(1), vec![("lens".to_owned(), Change::Changed)])]
    );
    let lens = &second.against[0].lines[0];
    let (Some(Said::Eyes(before)), Some(Said::Eyes(now))) = (&lens.before, &lens.now) else {
        panic!("{lens:?}")
    };
    assert_eq!(
        (before.right.as_str(), now.right.as_str()),
        ("+2.00 DS", "+2.25 DS")
    );
}

/// Two tablets that wrote the same section without knowing of each other.
fn two_heads(first: Section, one_says: Section, two_says: Section) -> Desk {
    let mut one = Desk::with_exam(1);
    one.put(first, None);
    let mut two = Desk::new(2);
    two.hear(&one);
    one.put(one_says, None);
    two.put(two_says, None);
    one.hear(&two);
    one
}

#[test]
fn two_heads_stand_beside_one_another_each_against_what_both_replaced() {
    let desk = two_heads(acuity(18), acuity(12), acuity(9));
    let exam = desk.story.exam(&EXAM).unwrap();
    let standing = exam.standing(SectionKind::Acuity, &far_west, FarUnit::Metres);
    let [one, two] = standing.as_slice() else {
        panic!("{standing:?}")
    };
    // The second tablet's clock stands behind.
    assert_eq!((one.author(), two.author()), ("examiner 2", "examiner 1"));
    for head in [one, two] {
        assert_eq!(
            changes(head),
            [(Some(1), vec![("unaided".to_owned(), Change::Changed)])]
        );
    }
}

#[test]
fn the_chosen_one_is_written_in_place_of_both_and_both_stay_readable() {
    let mut desk = two_heads(acuity(18), acuity(12), acuity(9));
    let standing =
        desk.story
            .exam(&EXAM)
            .unwrap()
            .standing(SectionKind::Acuity, &far_west, FarUnit::Metres);
    let chosen = standing[1].version.entry.id;
    let planned = desk
        .story
        .settle(&EXAM, SectionKind::Acuity, chosen)
        .unwrap();
    desk.write(planned);
    let exam = desk.story.exam(&EXAM).unwrap();
    assert_eq!(exam.unsettled(), []);
    assert_eq!(
        exam.section(SectionKind::Acuity).settled().unwrap().value,
        &acuity(12)
    );
    let all = versions(&desk, SectionKind::Acuity);
    assert_eq!(all.len(), 4);
    let unaided = || vec![("unaided".to_owned(), Change::Changed)];
    let mut settled = changes(&all[3]);
    settled.sort_by_key(|(number, _)| *number);
    let (from_one, from_two) = (settled[0].clone(), settled[1].clone());
    // One of the two is what it says already.
    assert_eq!([from_one.0, from_two.0], [Some(2), Some(3)]);
    assert_eq!([from_one.1, from_two.1], [unaided(), Vec::new()]);
    assert!(all[3].reason.unwrap().contains("that of examiner 1 holds"));
}

#[test]
fn settling_a_signed_exam_is_an_amendment_that_says_why() {
    let mut one = Desk::with_exam(1);
    one.put(decision(Glasses::LeaveAlone), None);
    one.put(acuity(18), None);
    one.sign();
    let mut two = Desk::new(2);
    two.hear(&one);
    one.put(acuity(12), Some("read again"));
    two.put(acuity(9), Some("read once more"));
    one.hear(&two);
    let standing =
        one.story
            .exam(&EXAM)
            .unwrap()
            .standing(SectionKind::Acuity, &far_west, FarUnit::Metres);
    let chosen = standing[1].version.entry.id;
    let planned = one
        .story
        .settle(&EXAM, SectionKind::Acuity, chosen)
        .unwrap();
    one.write(planned);
    let exam = one.story.exam(&EXAM).unwrap();
    assert_eq!(exam.state(), ExamState::Amended);
    assert_eq!(exam.uncovered(), []);
    let last = exam.amendments().pop().unwrap();
    assert!(
        last.reason.ends_with("that of examiner 1 holds"),
        "{}",
        last.reason
    );
}

#[test]
fn what_is_settled_already_is_not_settled_again() {
    let mut desk = Desk::with_exam(1);
    let only = desk.put(acuity(18), None);
    let refused = desk.story.settle(&EXAM, SectionKind::Acuity, only);
    assert_eq!(
        refused,
        Err(RecordError::NothingToSettle(SectionKind::Acuity))
    );
    let mut both = two_heads(acuity(18), acuity(12), acuity(9));
    let first = versions(&both, SectionKind::Acuity)[0].version.entry.id;
    let refused = both.story.settle(&EXAM, SectionKind::Acuity, first);
    assert_eq!(
        refused,
        Err(RecordError::NothingToSettle(SectionKind::Acuity))
    );
    both.put(acuity(6), None);
    let heads = both
        .story
        .exam(&EXAM)
        .unwrap()
        .head_ids(SectionKind::Acuity);
    let refused = both.story.settle(&EXAM, SectionKind::Acuity, heads[0]);
    assert_eq!(
        refused,
        Err(RecordError::NothingToSettle(SectionKind::Acuity))
    );
}

/// What follows signing has two versions as any other section has.
#[test]
fn sections_written_after_signing_are_settled_as_well() {
    let named = |made_by: &str| {
        Order {
            made_by: made_by.into(),
            ..Order::default()
        }
        .into_section()
    };
    let desk = two_heads(
        named("harbour works"),
        named("island works"),
        named("harbour works, rush"),
    );
    let exam = desk.story.exam(&EXAM).unwrap();
    assert_eq!(exam.unsettled(), [SectionKind::Order]);
    let standing = exam.standing(SectionKind::Order, &far_west, FarUnit::Metres);
    assert_eq!(standing.len(), 2);
    assert!(
        desk.story
            .settle(&EXAM, SectionKind::Order, standing[0].version.entry.id)
            .is_ok()
    );
    assert_eq!(exam.versions(Fitting::KIND, &far_west, FarUnit::Metres), []);
}

#[test]
fn a_draft_settles_only_when_it_knew_of_both() {
    let desk = two_heads(acuity(18), acuity(12), acuity(9));
    let exam = desk.story.exam(&EXAM).unwrap();
    let heads = exam.head_ids(SectionKind::Acuity);
    assert!(exam.would_settle(SectionKind::Acuity, &heads));
    assert!(!exam.would_settle(SectionKind::Acuity, &heads[..1]));
    assert_eq!(desk.story.exams_of(&PERSON).len(), 1);
}
