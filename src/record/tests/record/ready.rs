//! Whether an exam can be signed, and what is said where it can't.

use record::{
    Acuity, Decision, EyeAcuity, Eyes, Finding, Glasses, Recall, RecordError, Retinoscopy, Section,
    SectionKind,
};

use crate::desk::{Desk, EXAM};
use crate::samples::{acuity, bytes, decision, retinoscopy, seen, subjective};

fn missing(desk: &Desk) -> Vec<String> {
    desk.story.exam(&EXAM).unwrap().ready_to_sign()
}

fn sign(desk: &Desk) -> Result<(), RecordError> {
    desk.story.sign(&EXAM, "M. Farrow".into()).map(|_| ())
}

#[test]
fn a_decision_is_enough_where_nothing_else_was_begun() {
    let mut desk = Desk::with_exam(1);
    assert_eq!(
        missing(&desk),
        ["nothing is decided yet: fill in the decision"]
    );
    assert_eq!(sign(&desk), Err(RecordError::NoDecision));
    desk.put(decision(Glasses::LeaveAlone), None);
    assert!(missing(&desk).is_empty());
    assert_eq!(sign(&desk), Ok(()));
}

#[test]
fn an_empty_decision_decides_nothing() {
    let mut desk = Desk::with_exam(1);
    desk.put(Section::empty(SectionKind::Decision), None);
    let sentence = "nothing is decided yet: fill in the decision".to_owned();
    assert_eq!(sign(&desk), Err(RecordError::NotReady(vec![sentence])));
}

#[test]
fn what_was_begun_has_to_be_finished() {
    let mut desk = Desk::with_exam(1);
    desk.put(decision(Glasses::LeaveAlone), None);
    let right = EyeAcuity {
        unaided: Finding::Done(seen(9, 0)),
        ..EyeAcuity::default()
    };
    let left = EyeAcuity {
        pinhole: Finding::Done(seen(9, 0)),
        ..EyeAcuity::default()
    };
    desk.put(
        Section::Acuity(Acuity {
            eyes: Eyes { right, left },
            ..Acuity::default()
        }),
        None,
    );
    desk.put(Section::Retinoscopy(Retinoscopy::default()), None);
    assert_eq!(
        missing(&desk),
        [
            "acuity: the left eye is blank: enter it, or say why it was not done",
            "retinoscopy: the right eye is blank: enter it, or say why it was not done",
            "retinoscopy: the left eye is blank: enter it, or say why it was not done",
        ]
    );
    assert!(matches!(sign(&desk), Err(RecordError::NotReady(said)) if said == missing(&desk)));
}

#[test]
fn a_field_out_of_range_stands_in_the_way() {
    let mut desk = Desk::with_exam(1);
    desk.put(
        Section::Decision(Decision {
            glasses: Some(Glasses::LeaveAlone),
            recall: Some(Recall {
                months: 12,
                reason: String::new(),
            }),
            ..Decision::default()
        }),
        None,
    );
    assert_eq!(
        missing(&desk),
        ["decision: say why the recall is then: a reason goes with every interval"]
    );
}

#[test]
fn prescribing_needs_a_lens() {
    let mut desk = Desk::with_exam(1);
    desk.put(decision(Glasses::Prescribe), None);
    assert_eq!(
        missing(&desk),
        ["you prescribe, but neither eye has a lens yet"]
    );
    desk.put(subjective(3.0), None);
    assert!(missing(&desk).is_empty());
}

#[test]
fn one_eye_may_go_without_a_lens_if_somebody_says_why() {
    let Section::Retinoscopy(found) = retinoscopy("+2.00 DS") else {
        unreachable!("a retinoscopy section was made")
    };
    let with_left = |left| {
        let mut desk = Desk::with_exam(1);
        desk.put(decision(Glasses::Prescribe), None);
        let eyes = Eyes {
            left,
            ..found.eyes.clone()
        };
        desk.put(
            Section::Retinoscopy(Retinoscopy {
                eyes,
                ..found.clone()
            }),
            None,
        );
        missing(&desk)
    };
    let reason = "false eye".to_owned();
    assert!(with_left(Finding::Unable { reason }).is_empty());
    let said = with_left(Finding::Blank);
    assert!(said.contains(
        &"you prescribe, but the left eye has no lens: enter one or say why not".to_owned()
    ));
}

#[test]
fn two_versions_have_to_be_settled_first() {
    let mut one = Desk::with_exam(1);
    one.put(decision(Glasses::LeaveAlone), None);
    let mut two = Desk::new(2);
    two.hear(&one);
    one.put(acuity(9), None);
    two.put(acuity(12), None);
    one.hear(&two);
    assert_eq!(
        missing(&one),
        ["there are two versions of the acuity: settle which one holds"]
    );
    assert_eq!(
        sign(&one),
        Err(RecordError::TwoVersions(SectionKind::Acuity))
    );
    one.put(acuity(12), None);
    assert_eq!(sign(&one), Ok(()));
}

/// Two decisions are unsettled, not missing.
#[test]
fn two_decisions_are_not_none() {
    let mut one = Desk::with_exam(1);
    let mut two = Desk::new(2);
    two.hear(&one);
    one.put(decision(Glasses::LeaveAlone), None);
    two.put(decision(Glasses::Prescribe), None);
    one.hear(&two);
    assert_eq!(
        sign(&one),
        Err(RecordError::TwoVersions(SectionKind::Decision))
    );
}

#[test]
fn what_a_newer_version_wrote_is_not_signed_unseen() {
    let mut desk = Desk::with_exam(1);
    desk.put(decision(Glasses::LeaveAlone), None);
    // The frozen entry of an unknown kind, made to rest on this exam's opening.
    let opening = desk.written[1].id;
    let frozen = bytes("carried/unknown-kind");
    let mut unread = record::Entry::from_cbor(&frozen).unwrap();
    unread.parents = vec![opening];
    desk.story.admit(unread).unwrap();
    assert!(desk.story.exam(&EXAM).unwrap().has_unread());
    assert_eq!(desk.story.unread().count(), 1);
    assert_eq!(sign(&desk), Err(RecordError::WrittenByNewer));
}
