//! Signing, amending, and what two tablets do to the same exam.

use std::collections::BTreeSet;

use record::{Body, Draft, ExamId, ExamState, Glasses, Heads, RecordError, SectionKind, Stamp};
use uuid::Uuid;

use crate::desk::{Desk, EXAM};
use crate::samples::{acuity, decision, subjective};

/// One tablet with a signed exam, and another that knows everything but the signature.
fn signed() -> (Desk, Desk) {
    let mut one = Desk::with_exam(1);
    one.put(subjective(3.0), None);
    one.put(decision(Glasses::Prescribe), None);
    let mut two = Desk::new(2);
    two.hear(&one);
    one.sign();
    (one, two)
}

fn state(desk: &Desk) -> ExamState {
    desk.story.exam(&EXAM).unwrap().state()
}

#[test]
fn an_exam_is_open_until_it_is_signed() {
    let (one, two) = signed();
    assert_eq!(state(&two), ExamState::Open);
    assert_eq!(state(&one), ExamState::Signed);
    let exam = one.story.exam(&EXAM).unwrap();
    let signatures = exam.signatures();
    assert_eq!(signatures.len(), 1);
    assert_eq!(signatures[0].signer, "M. Farrow");
    let heads: Vec<_> = SectionKind::ALL
        .into_iter()
        .flat_map(|kind| exam.head_ids(kind))
        .collect();
    assert_eq!(signatures[0].heads, heads);
}

#[test]
fn a_signed_exam_changes_only_with_a_reason() {
    let (mut one, _) = signed();
    for reason in [None, Some("  ".to_owned())] {
        let refused = one.story.put_section(&EXAM, subjective(3.25), reason);
        assert_eq!(
            refused,
            Err(RecordError::ReasonNeeded(SectionKind::Subjective))
        );
    }
    let refused = RecordError::ReasonNeeded(SectionKind::Subjective).to_string();
    assert_eq!(
        refused,
        "this exam is signed: say why the subjective changes"
    );
    // A section that was not there when it was signed is a change as well.
    assert!(one.story.put_section(&EXAM, acuity(9), None).is_err());

    one.put(subjective(3.25), Some("sphere misread"));
    assert_eq!(state(&one), ExamState::Amended);
    let exam = one.story.exam(&EXAM).unwrap();
    let amendments = exam.amendments();
    assert_eq!(amendments.len(), 1);
    assert_eq!(
        (amendments[0].kind, amendments[0].reason),
        (SectionKind::Subjective, "sphere misread")
    );
    assert_eq!(amendments[0].entry.author, "examiner 1");
    assert_eq!(exam.history(SectionKind::Subjective).len(), 2);
}

#[test]
fn an_amended_exam_stays_amended_when_it_is_signed_again() {
    let (mut one, _) = signed();
    one.put(subjective(3.25), Some("sphere misread"));
    one.sign();
    assert_eq!(state(&one), ExamState::Amended);
    assert_eq!(one.story.exam(&EXAM).unwrap().signatures().len(), 2);
    let nothing = one.story.sign(&EXAM, "M. Farrow".into());
    assert_eq!(nothing, Err(RecordError::NothingToSign));
}

#[test]
fn a_change_by_somebody_who_had_not_heard_of_the_signature_is_neither_lost_nor_taken_as_signed() {
    let (mut one, mut two) = signed();
    two.put(subjective(3.5), None);
    one.hear(&two);
    let exam = one.story.exam(&EXAM).unwrap();
    assert_eq!(exam.state(), ExamState::Amended);
    assert_eq!(exam.uncovered(), [SectionKind::Subjective]);
    assert!(exam.amendments().is_empty());
    assert_eq!(
        exam.subjective().settled().unwrap().entry.author,
        "examiner 2"
    );

    one.sign();
    let exam = one.story.exam(&EXAM).unwrap();
    assert!(exam.uncovered().is_empty());
    assert_eq!(exam.state(), ExamState::Signed);
}

#[test]
fn two_amendments_at_once_stand_side_by_side_until_one_names_both() {
    let (mut one, mut two) = signed();
    two.hear(&one);
    let first = one.put(subjective(3.25), Some("sphere misread"));
    let second = two.put(subjective(3.5), Some("slip of the pen"));
    one.hear(&two);
    let exam = one.story.exam(&EXAM).unwrap();
    let Heads::Several(versions) = exam.section(SectionKind::Subjective) else {
        panic!("two tablets wrote a version each")
    };
    let ids: BTreeSet<_> = versions.iter().map(|version| version.entry.id).collect();
    assert_eq!(ids, [first, second].into());
    assert!(versions.is_sorted_by_key(|version| version.entry.stamp));
    assert!(matches!(
        one.story.sign(&EXAM, "M. Farrow".into()),
        Err(RecordError::TwoVersions(_))
    ));

    one.put(subjective(3.5), Some("the second holds"));
    let exam = one.story.exam(&EXAM).unwrap();
    let settled = exam.section(SectionKind::Subjective).settled().unwrap();
    assert!(settled.entry.parents.contains(&first) && settled.entry.parents.contains(&second));
    assert_eq!(exam.history(SectionKind::Subjective).len(), 4);
    assert_eq!(exam.amendments().len(), 3);
}

#[test]
fn a_draft_replaces_only_what_its_writer_saw() {
    let mut one = Desk::with_exam(1);
    one.put(acuity(12), None);
    let draft = Draft {
        exam: EXAM,
        section: acuity(9),
        typing: std::collections::BTreeMap::new(),
        based_on: one.story.exam(&EXAM).unwrap().head_ids(SectionKind::Acuity),
        saved: Stamp::default(),
    };
    let mut two = Desk::new(2);
    two.hear(&one);
    two.put(acuity(18), None);
    one.hear(&two); // while the draft was being typed
    let planned = one.story.put_draft(draft, None).unwrap();
    one.write(planned);
    let exam = one.story.exam(&EXAM).unwrap();
    assert_eq!(exam.unsettled(), [SectionKind::Acuity]);
    assert_eq!(exam.acuity().versions().len(), 2);
}

#[test]
fn what_is_not_on_record_is_refused_by_name() {
    let desk = Desk::new(1);
    let stranger = ExamId::from_uuid(Uuid::from_u128(99));
    let refused = desk.story.put_section(&stranger, acuity(9), None);
    assert_eq!(refused, Err(RecordError::NoSuchExam(stranger)));
    assert_eq!(
        desk.story.sign(&stranger, String::new()),
        Err(RecordError::NoSuchExam(stranger))
    );
    let opened = desk.story.open_exam(
        stranger,
        crate::desk::PERSON,
        String::new(),
        crate::desk::day(2026, 3, 4),
    );
    assert_eq!(opened, Err(RecordError::NoSuchPerson(crate::desk::PERSON)));
}

/// The writing side never lets such an entry through; another program might.
#[test]
fn a_change_with_an_empty_reason_is_no_amendment() {
    let (mut one, _) = signed();
    let planned = one
        .story
        .put_section(&EXAM, subjective(3.25), Some("sphere misread".into()));
    let mut planned = planned.unwrap();
    let Body::Section { reason, .. } = &mut planned.body else {
        panic!("a section was planned")
    };
    *reason = Some(" ".into());
    one.write(planned);
    let exam = one.story.exam(&EXAM).unwrap();
    assert!(exam.amendments().is_empty());
    assert_eq!(exam.uncovered(), [SectionKind::Subjective]);
}
