//! A pair of lenses as it is jotted. How the trade writes one is common practice, no source.

use optics::SphereCyl;
use proptest::prelude::*;
use record::{Eye, Jotted, JottedError};

fn read(text: &str) -> Result<Jotted, JottedError> {
    text.parse()
}

fn lens(written: &str) -> SphereCyl {
    SphereCyl::parse(written).unwrap()
}

#[test]
fn one_pair_in_many_dresses() {
    let texts = [
        "R +2.50/-1.00x90 L +2.25 add +2.50",
        "RE: +2,50 −1,00 × 90; LE: +2,25 DS; Add +2,50",
        "OD +2.50 -1.00 x 90\nOS +2.25\nADD +2.50",
        "rechts +2,50 / −1,00 × 90, links +2,25, Nahzusatz +2,50",
        "right +2.50 / −1.00 × 90 add +2.50, left +2.25 add +2.50",
    ];
    for text in texts {
        let jotted = read(text).unwrap();
        assert_eq!(
            jotted.lenses.right,
            Some(lens("+2.50 / −1.00 × 90")),
            "{text}"
        );
        assert_eq!(jotted.lenses.left, Some(lens("+2.25")), "{text}");
        let adds = [jotted.adds.right, jotted.adds.left];
        assert_eq!(adds, [Some(2.5), Some(2.5)], "{text}");
    }
}

#[test]
fn one_eye_alone_and_two_additions() {
    let left = read("L plano").unwrap();
    assert_eq!(
        (left.lenses.right, left.lenses.left),
        (None, Some(lens("0.00")))
    );
    assert_eq!(left.adds.left, None);
    let unlike = read("R +1.00 add +2.00 L +1.00 add +2.25").unwrap();
    assert_eq!(
        [unlike.adds.right, unlike.adds.left],
        [Some(2.0), Some(2.25)]
    );
}

#[test]
fn what_could_turn_into_a_wrong_lens_is_refused_with_its_place() {
    let said = |text: &str| read(text).unwrap_err().to_string();
    assert_eq!(
        said("+2.50 +2.25"),
        "it names no eye: write R or L before each lens"
    );
    assert_eq!(said(""), "it names no eye: write R or L before each lens");
    assert!(said("R 2.50 L +2.25").starts_with("right eye: “2.50”"));
    assert!(said("R +2.50 L +2.25/-1.00").starts_with("left eye: "));
    assert_eq!(
        said("62 R +2.50"),
        "“62” stands before the first eye: begin with R or L"
    );
    assert_eq!(said("R +2.50 R +2.25"), "the right eye stands there twice");
    assert!(said("R +2.50 add 2.50").starts_with("addition: "));
    assert_eq!(
        said("R +1.00 add +2.00 add +2.25"),
        "it has more than one addition for an eye"
    );
    assert!(read(&"R +1.00 ".repeat(100)).is_err());
}

proptest! {
    /// Any lens of a trial case, written as the record writes it, whichever eye comes first.
    #[test]
    fn what_is_written_here_comes_back(sphere in -80..=80, cylinder in -24..=24, axis in 1_u8..=180, left_first: bool) {
        let quarter = |count: i32| f64::from(count) / 4.0;
        let lens = SphereCyl::new(quarter(sphere), quarter(cylinder), f64::from(axis)).unwrap();
        let [first, second] = if left_first { ["L", "R"] } else { ["R", "L"] };
        let jotted = read(&format!("{first} {lens} {second} 0.00")).unwrap();
        let eye = if left_first { Eye::Left } else { Eye::Right };
        prop_assert_eq!(*jotted.lenses.of(eye), Some(lens));
        let other = if left_first { Eye::Right } else { Eye::Left };
        prop_assert_eq!(*jotted.lenses.of(other), Some(SphereCyl::sphere(0.0)));
    }

    #[test]
    fn no_text_brings_it_down(text in ".{0,60}", pieces in prop::collection::vec(prop::sample::select(vec!["R", " l ", "add", "+2.50", "x90", "−1.00", ":", "é", "plano"]), 0..12)) {
        let _said = read(&text);
        if let Ok(jotted) = read(&pieces.concat()) {
            prop_assert!(jotted.lenses.right.is_some() || jotted.lenses.left.is_some());
        }
    }
}

#[test]
fn a_long_text_is_refused_for_its_length() {
    let short = format!("R +2.50{}", " ".repeat(293));
    assert!(read(&short).is_ok());
    assert_eq!(read(&(short + " ")), Err(JottedError::Long));
}
