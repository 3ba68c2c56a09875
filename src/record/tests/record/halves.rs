//! Half a finding in a draft: kept, dropped, never written down. The rules are this project's own.

use std::collections::BTreeMap;

use optics::SphereCyl;
use optics::retinoscopy::Neutral;
use proptest::prelude::*;
use record::{Draft, Eye, Finding, Half, Retinoscopy, Section, SectionKind, Stamp};

use crate::desk::EXAM;

const ONE_OF_TWO: Half = Half::Meridians {
    first: 180.0,
    powers: [Some(4.0), None],
};
const NO_AXIS: Half = Half::Lens {
    sphere: Some(3.75),
    cylinder: Some(-1.0),
    axis: None,
};

fn draft(kind: SectionKind) -> Draft {
    Draft {
        exam: EXAM,
        section: Section::empty(kind),
        typing: BTreeMap::new(),
        based_on: Vec::new(),
        saved: Stamp::default(),
    }
}

fn answered(eye: Eye, finding: Finding<Neutral>) -> Section {
    let mut section = Retinoscopy::default();
    *section.eyes.of_mut(eye) = finding;
    Section::Retinoscopy(section)
}

#[test]
fn both_halves_come_back_from_the_drafts_bytes() {
    let mut draft = draft(SectionKind::Retinoscopy);
    draft.put_half(Eye::Right, "retinoscopy", Some(ONE_OF_TWO));
    draft.put_half(Eye::Left, "retinoscopy", Some(NO_AXIS));
    let read = Draft::from_cbor(&draft.to_cbor()).unwrap();
    assert_eq!(read.half(Eye::Right, "retinoscopy"), Some(ONE_OF_TWO));
    assert_eq!(read.half(Eye::Left, "retinoscopy"), Some(NO_AXIS));
}

#[test]
fn a_half_is_asked_about_until_it_is_cleared() {
    let mut draft = draft(SectionKind::Acuity);
    draft.put_half(Eye::Left, "with_glasses", Some(Half::Fingers));
    let asked = draft.check();
    assert_eq!(asked.len(), 1);
    assert_eq!(asked[0].field, "left.with_glasses");
    assert!(asked[0].sentence.starts_with("left eye, with glasses: "));
    draft.put_half(Eye::Left, "with_glasses", None);
    assert_eq!(draft.check(), []);
}

#[test]
fn an_answer_drops_the_half_of_its_own_eye_only() {
    let lens = Neutral::InFrame(SphereCyl::sphere(2.0));
    let reason = "asleep".to_owned();
    for answer in [Finding::Done(lens), Finding::Unable { reason }] {
        let mut draft = draft(SectionKind::Retinoscopy);
        draft.put_half(Eye::Right, "retinoscopy", Some(ONE_OF_TWO));
        draft.put_half(Eye::Left, "retinoscopy", Some(NO_AXIS));
        draft.put(answered(Eye::Right, answer));
        assert_eq!(draft.half(Eye::Right, "retinoscopy"), None);
        assert_eq!(draft.half(Eye::Left, "retinoscopy"), Some(NO_AXIS));
    }
}

#[test]
fn a_blank_finding_leaves_its_half_and_a_reason_is_none() {
    let mut draft = draft(SectionKind::Retinoscopy);
    draft.typing.insert("reason".into(), "fingers".into());
    draft.put_half(Eye::Right, "retinoscopy", Some(ONE_OF_TWO));
    draft.put(answered(Eye::Right, Finding::Blank));
    assert_eq!(draft.half(Eye::Right, "retinoscopy"), Some(ONE_OF_TWO));
    assert_eq!(draft.check().len(), 1);
    assert_eq!(draft.typing["reason"], "fingers");
}

#[test]
fn other_words_are_no_half() {
    for text in [
        "",
        "fingers 30",
        "lens 1 2",
        "lens 1 2 3 4",
        "lens 1 2 x",
        "lens inf ? ?",
        "lens NaN ? ?",
        "lens  1 2 3",
        "meridians ? 1 2",
        "meridians 180 1",
        "over 1 2 3 4 5 6 ?",
        "over 1 2 3 4 5 6",
        "+1.",
    ] {
        assert_eq!(Half::read(text), None, "{text}");
    }
}

proptest! {
    #[test]
    fn every_number_comes_back_as_it_was(
        sphere in prop::option::of(-40.0..40.0), cylinder in prop::option::of(-15.0..15.0), axis in prop::option::of(0.0..180.0),
        first in 0.0..180.0,
    ) {
        let lens = Half::Lens { sphere, cylinder, axis };
        prop_assert_eq!(Half::read(&lens.to_string()), Some(lens));
        let meridians = Half::Meridians { first, powers: [sphere, cylinder] };
        prop_assert_eq!(Half::read(&meridians.to_string()), Some(meridians));
        let held = Half::OverLens { worn: [sphere, cylinder, axis], over: [None, sphere, None], gap_mm: first };
        prop_assert_eq!(Half::read(&held.to_string()), Some(held));
    }
}

#[test]
fn half_a_lens_of_one_pair_is_asked_about_by_its_place() {
    use record::{Part, WornGlasses, WornPair, lens_of_pair};
    let mut draft = draft(SectionKind::WornGlasses);
    let pairs = Finding::Done(vec![WornPair::default(), WornPair::default()]);
    draft.put(WornGlasses { pairs }.into_section());
    draft.put_half(Eye::Left, &lens_of_pair(1), Some(NO_AXIS));
    let asked: Vec<_> = draft
        .check()
        .into_iter()
        .map(|asked| asked.sentence)
        .collect();
    assert_eq!(
        asked,
        ["left eye, lens 2: only half is entered: add the rest, or clear it"]
    );
}

#[test]
fn one_number_too_few_or_too_many_is_no_pair_of_lenses() {
    assert_eq!(Half::read("over 1 2 3 4 5 10"), None);
    assert_eq!(Half::read("over 1 2 3 4 5 6 7 10"), None);
}
