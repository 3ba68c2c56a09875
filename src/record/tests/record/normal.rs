//! What is normal in one tap: it fills what is blank and leaves what stands. The rules are this project's own.

use proptest::prelude::*;
use record::{
    Anterior, Binocular, Fields, Finding, Looks, Part, Posterior, Pupils, Section, SectionKind,
};

use crate::any;

#[test]
fn five_sections_have_such_answers() {
    use SectionKind::{Anterior, Binocular, Fields, Posterior, Pupils};
    let with = SectionKind::ALL
        .into_iter()
        .filter(|kind| Section::empty(*kind).normal_where_blank().is_some());
    let five = [Pupils, Binocular, Anterior, Posterior, Fields];
    assert_eq!(with.collect::<Vec<_>>(), five);
}

#[test]
fn a_blank_section_becomes_the_normal_one() {
    for normal in [
        Pupils::normal().into_section(),
        Binocular::normal().into_section(),
        Anterior::normal().into_section(),
        Posterior::normal().into_section(),
        Fields::normal().into_section(),
    ] {
        let filled = Section::empty(normal.kind()).normal_where_blank();
        assert_eq!(filled, Some(normal));
    }
}

#[test]
fn a_finding_and_a_reason_stay() {
    let scar = Finding::Done(Looks::Other("scar".into()));
    let asleep = Finding::Unable {
        reason: "asleep".into(),
    };
    let mut anterior = Anterior {
        looked_with: "loupe and torch".into(),
        ..Anterior::default()
    };
    anterior.eyes.right.cornea = scar.clone();
    anterior.eyes.left.iris = asleep.clone();
    let filled = anterior.into_section().normal_where_blank().unwrap();
    let filled = Anterior::of(&filled).unwrap();
    assert_eq!(filled.looked_with, "loupe and torch");
    assert_eq!(filled.eyes.right.cornea, scar);
    assert_eq!(filled.eyes.left.iris, asleep);
    assert_eq!(filled.eyes.left.cornea, Finding::NORMAL);
    // What is to be judged or measured is never filled in.
    assert!(filled.eyes.right.angle.is_blank());
}

proptest! {
    #[test]
    fn a_second_tap_changes_nothing(section in any::section()) {
        if let Some(filled) = section.normal_where_blank() {
            prop_assert_eq!(filled.kind(), section.kind());
            prop_assert_eq!(filled.normal_where_blank(), Some(filled));
        }
    }
}
