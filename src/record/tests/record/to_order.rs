//! The pair that an exam's lenses make. A near pair holds the addition in its sphere: common practice, no source.

use optics::SphereCyl;
use record::{
    Eyes, Finding, LensForm, NearAdd, OrderedLens, Section, Subjective, SubjectiveEye, UsedFor,
};

use crate::desk::{Desk, EXAM};

fn ordered(used_for: UsedFor) -> record::OrderedPair {
    let mut desk = Desk::with_exam(1);
    let lens = SphereCyl::new(1.0, -0.5, 90.0).unwrap();
    let eye = SubjectiveEye { lens, acuity: None };
    let unable = Finding::Unable {
        reason: "asleep".into(),
    };
    desk.put(
        Section::Subjective(Subjective {
            eyes: Eyes {
                right: Finding::Done(eye),
                left: unable,
            },
            add: Some(NearAdd {
                power: 2.25,
                at_cm: 40.0,
            }),
            vertex_mm: Some(12.0),
            ..Subjective::default()
        }),
        None,
    );
    desk.story.exam(&EXAM).unwrap().pair_to_order(used_for)
}

#[test]
fn far_is_as_chosen_and_an_eye_without_a_lens_has_none() {
    let pair = ordered(UsedFor::Far);
    let lens = SphereCyl::new(1.0, -0.5, 90.0).unwrap();
    assert_eq!(pair.lenses.right, Some(OrderedLens::new(lens)));
    assert_eq!(pair.lenses.left, None);
    assert_eq!(pair.vertex_mm, Some(12.0));
    assert_eq!(pair.form, LensForm::SingleVision);
}

#[test]
fn near_holds_the_addition_in_its_sphere() {
    let right = ordered(UsedFor::Near).lenses.right.unwrap();
    // +1.00 and an addition of +2.25, by hand.
    assert_eq!(right.lens, SphereCyl::new(3.25, -0.5, 90.0).unwrap());
    assert_eq!(right.add_d, None);
}

#[test]
fn for_both_the_addition_stands_beside_the_lens() {
    let pair = ordered(UsedFor::FarAndNear);
    assert!(pair.form.is_multifocal());
    let right = pair.lenses.right.unwrap();
    assert_eq!(right.lens, SphereCyl::new(1.0, -0.5, 90.0).unwrap());
    assert_eq!(right.add_d, Some(2.25));
}
