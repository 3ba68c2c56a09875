//! Acuity on its scales: there and back, and in order.

use crate::assert_near;
use optics::OpticsError;
use optics::acuity::{
    Acuity, Band, Category, EvenLine, FingersAt, LetterScore, LogMar, NearAcuity, Over,
    PartialLine, Print, SIZE_STEP, StandInSource, letter_height_mm, on_chart, stroke_mm,
};
use proptest::prelude::*;

fn fingers(cm: u16) -> Category {
    Category::CountingFingers(FingersAt::from_cm(cm).unwrap())
}

fn any_category() -> impl Strategy<Value = Category> {
    prop_oneof![
        Just(Category::NoPerception),
        Just(Category::PerceptionOfLight),
        Just(Category::HandMovements),
        (1_u16..=600).prop_map(fingers),
    ]
}

fn any_acuity() -> impl Strategy<Value = Acuity> {
    prop_oneof![
        any_category().prop_map(Acuity::Category),
        (-1.0..=3.0).prop_map(|logmar| Acuity::Measured(LogMar::new(logmar).unwrap())),
    ]
}

// The definitions: each name of an acuity leads back to it.
proptest! {
    #[test]
    fn every_scale_comes_back(logmar in -0.99..=2.99_f64, distance in 0.25..=10.0_f64) {
        let acuity = LogMar::new(logmar).unwrap();
        let back = [
            LogMar::from_mar(acuity.mar()),
            LogMar::from_decimal(acuity.decimal()),
            LogMar::from_fraction(distance, acuity.size_at(distance).unwrap()),
        ];
        for found in back {
            prop_assert!((found.unwrap().value() - logmar).abs() < 1e-12);
        }
    }

    // No number at all makes a panic, and what is no number makes no acuity.
    #[test]
    fn any_number_is_taken_or_refused(one in any::<f64>(), two in any::<f64>(), three in any::<f64>()) {
        let made = [
            LogMar::new(one),
            LogMar::from_mar(one),
            LogMar::from_decimal(one),
            LogMar::from_fraction(one, two),
        ];
        for acuity in made.into_iter().flatten() {
            prop_assert!((-1.0..=3.0).contains(&acuity.value()));
            prop_assert!(acuity.mar().is_finite() && acuity.decimal().is_finite());
            let _ = (EvenLine::nearest(acuity), LetterScore::nearest(acuity));
            if let Ok(height) = letter_height_mm(three, acuity) {
                prop_assert!(height > 0.0 && height.is_finite());
            }
        }
        let _ = on_chart(one, two, three);
        if let (Ok(print), false) = (Print::n(one), one.is_nan()) {
            prop_assert!((1.0..=200.0).contains(&print.points()));
            let _ = NearAcuity::new(print, two).map(NearAcuity::acuity);
        }
        let _ = Print::m(one);
    }

    // One letter is 0.02, so a count stands for an acuity within half of that.
    #[test]
    fn a_letter_count_is_the_nearest(logmar in -0.30..=1.70_f64) {
        let acuity = LogMar::new(logmar).unwrap();
        let back = LetterScore::nearest(acuity).unwrap().acuity();
        prop_assert!((back.value() - logmar).abs() <= 0.01 + 1e-12);
    }

    // A total order has one answer for each pair, turned about for the pair turned about, and chains.
    #[test]
    fn acuities_stand_in_one_order(a in any_acuity(), b in any_acuity(), c in any_acuity()) {
        prop_assert_eq!(a.cmp(&b), b.cmp(&a).reverse());
        prop_assert_eq!(a == b, a.cmp(&b).is_eq());
        if a <= b && b <= c {
            prop_assert!(a <= c);
        }
        if let (Acuity::Measured(one), Acuity::Measured(two)) = (a, b) {
            prop_assert_eq!(a > b, one.value() < two.value());
        }
        if let (Acuity::Measured(_), Acuity::Category(_)) = (a, b) {
            prop_assert!(a > b);
        }
        // A better acuity is never in a worse band, save that fingers at 1 m stand beside 1/60 by the table.
        if matches!((a, b), (Acuity::Measured(_), Acuity::Measured(_)) | (Acuity::Category(_), Acuity::Category(_))) && a > b {
            prop_assert!(Band::of(&a) <= Band::of(&b));
        }
    }

    // A paper may not turn the order of the categories about.
    #[test]
    fn stand_ins_keep_the_order(a in any_category(), b in any_category()) {
        for source in [StandInSource::SchulzeBonsel2006, StandInSource::Lange2009] {
            if let (Some(one), Some(two)) = (a.stand_in(source), b.stand_in(source)) && a > b {
                prop_assert!(one <= two);
            }
        }
    }

    // Similar triangles: twice as far needs twice as large.
    #[test]
    fn letters_grow_with_the_distance(distance in 0.25..=5.0_f64, logmar in -0.3..=2.0_f64) {
        let acuity = LogMar::new(logmar).unwrap();
        let (near, far) = (letter_height_mm(distance, acuity).unwrap(), letter_height_mm(2.0 * distance, acuity).unwrap());
        prop_assert!((far / near - 2.0).abs() < 1e-12);
        prop_assert!((near / stroke_mm(distance, acuity).unwrap() - 5.0).abs() < 1e-12);
    }

    // Distance over size: nearer print of the same size is a worse acuity.
    #[test]
    fn print_held_nearer_is_a_worse_acuity(points in 3.0..=80.0_f64, cm in 10.0..=50.0_f64) {
        let print = Print::n(points).unwrap();
        let at = |cm: f64| NearAcuity::new(print, cm).unwrap().acuity().unwrap().value();
        prop_assert!((at(cm) - at(2.0 * cm) - 2.0_f64.log10()).abs() < 1e-12);
    }
}

// Published: a standard size is the tenth root of ten from the next (ISO 8596), and ten of them are ten times.
#[test]
fn ten_even_lines_are_ten_times() {
    assert_near(SIZE_STEP.powi(10), 10.0, 1e-12);
    let lines: Vec<EvenLine> = EvenLine::all().collect();
    for pair in lines.windows(2) {
        let step = pair[1].acuity().mar() / pair[0].acuity().mar();
        assert_near(step, SIZE_STEP, 1e-12);
    }
}

// A label is a rounded preferred number: within 1.5 % of the exact one, which is the rounding of two figures.
#[test]
fn every_label_is_near_its_line() {
    for line in EvenLine::all() {
        for over in Over::ALL {
            let exact = line.acuity().size_at(over.number()).unwrap();
            assert_near(line.nominal(over) / exact, 1.0, 0.015);
        }
        assert_near(line.decimal() / line.acuity().decimal(), 1.0, 0.015);
        assert_eq!(EvenLine::nearest(line.acuity()), Ok(line));
    }
}

// From memory: 30 letters count as read at 1 m where 20 or more were read at 4 m.
#[test]
fn letters_at_four_metres_and_at_one() {
    let score = |at_4_m, at_1_m| LetterScore::from_chart(at_4_m, at_1_m).map(LetterScore::letters);
    assert_eq!(score(55, None), Ok(85));
    assert_eq!(score(20, None), Ok(50));
    assert_eq!(score(12, Some(27)), Ok(39));
    assert_eq!(score(0, Some(0)), Ok(0));
    assert_eq!(score(70, None), Ok(100));
    assert_eq!(
        score(12, None),
        Err(OpticsError::LettersAtOneMetre { at_4_m: 12 })
    );
    assert_eq!(
        score(71, None).unwrap_err().to_string(),
        "the letter count at 4 m can be 0 to 70 letters, and 71 is outside that"
    );
    assert!(score(12, Some(31)).is_err());
    assert!(LetterScore::new(101).is_err());
}

// Common practice, no source: the order of the categories, and any line above them all.
#[test]
fn the_order_of_seeing() {
    let worst_line = Acuity::Measured(LogMar::new(3.0).unwrap());
    let best_first = [
        worst_line,
        Acuity::Category(fingers(200)),
        Acuity::Category(fingers(30)),
        Acuity::Category(Category::HandMovements),
        Acuity::Category(Category::PerceptionOfLight),
        Acuity::Category(Category::NoPerception),
    ];
    assert!(best_first.is_sorted_by(|better, worse| better > worse));
}

// The same ratio in metres, in feet and as a decimal is one acuity: the definition.
#[test]
fn one_ratio_is_one_acuity() {
    let read = |distance, size| Acuity::Measured(LogMar::from_fraction(distance, size).unwrap());
    assert_eq!(read(6.0, 12.0), read(20.0, 40.0));
    assert_eq!(
        read(6.0, 12.0),
        Acuity::Measured(LogMar::from_decimal(0.5).unwrap())
    );
    assert_eq!(LogMar::new(-0.0), LogMar::new(0.0));
}

// Jaeger numbers are catalogue numbers without a size.
#[test]
fn print_is_read_and_jaeger_refused() {
    let read = |text: &str| text.parse::<Print>();
    for (text, printed) in [
        ("N8", "N8"),
        ("n 4.5", "N4.5"),
        ("0,8 M", "0.8 M"),
        ("M1.6", "1.6 M"),
    ] {
        let print = read(text).unwrap();
        assert_eq!(print.to_string(), printed);
        assert_eq!(read(printed), Ok(print));
    }
    assert_eq!(
        read("J5").unwrap_err().to_string(),
        "“J5” has no size of its own, since cards differ: write the print as N or M"
    );
    for text in [
        "", "8", "N", "N-8", "Ninf", "Mnan", "M1e1", "N0", "N900", "M",
    ] {
        assert!(read(text).is_err(), "{text}");
    }
}

#[test]
fn refusals_are_sentences() {
    assert_eq!(
        LogMar::new(4.0).unwrap_err().to_string(),
        "the acuity can be −1 to 3 logMAR, and 4 is outside that"
    );
    assert_eq!(
        LogMar::from_decimal(0.0).unwrap_err().to_string(),
        "the decimal acuity must be above 0"
    );
    assert_eq!(
        LogMar::from_mar(f64::NAN).unwrap_err().to_string(),
        "the angle resolved is not a number"
    );
    assert_eq!(
        EvenLine::nearest(LogMar::new(2.5).unwrap())
            .unwrap_err()
            .to_string(),
        "no line of an even chart is near logMAR 2.5: its lines are −0.3 to 2.0"
    );
    assert!(PartialLine::new(8, 0).is_err());
    assert!(FingersAt::from_cm(0).is_err());
    assert!(FingersAt::from_cm(601).is_err());
}
