//! Finished spectacles: laws of the comparison, its words, and what is refused.

use crate::lens;
use optics::prism::{Base, Prism};
use optics::tolerance::{
    ANSI_Z80_1_2015, ANSI_Z80_1_2015_PROGRESSIVE, Basis, Finished, Hundredths, ISO_21987_2017,
    Measured, Ordered, Outcome, ReadTo, Report, Standard, Unjudged, Verdict, What, Why,
};
use optics::{Eye, Eyes, SphereCyl};
use proptest::prelude::*;

const STANDARDS: [&Standard; 3] = [
    &ANSI_Z80_1_2015,
    &ANSI_Z80_1_2015_PROGRESSIVE,
    &ISO_21987_2017,
];

fn plain(lens: SphereCyl) -> Finished {
    Finished::new(lens).unwrap()
}

/// The same lens before both eyes, ordered and measured.
fn judge(standard: &Standard, ordered: Finished, measured: Finished, read_to: ReadTo) -> Report {
    let both = |lens| Eyes {
        right: lens,
        left: lens,
    };
    let lenses = both(measured);
    standard.judge(&Ordered(both(ordered)), &Measured { lenses, read_to })
}

/// What of a report does not depend on the form in which a lens is written.
fn essence(report: &Report) -> Vec<(Hundredths, Hundredths, Outcome, Basis, String)> {
    let verdicts = report.verdicts.iter();
    verdicts
        .map(|one| (one.off, one.limit, one.outcome, one.basis, one.sentence()))
        .collect()
}

/// A lens as a focimeter gives it, to a hundredth of a dioptre and a whole degree.
fn reading() -> impl Strategy<Value = SphereCyl> {
    (-2000..=2000_i32, -600..=600_i32, 1..=180_i32)
        .prop_map(|(s, c, a)| lens(f64::from(s) / 100.0, f64::from(c) / 100.0, f64::from(a)))
}

fn any_standard() -> impl Strategy<Value = &'static Standard> {
    (0..STANDARDS.len()).prop_map(|at| STANDARDS[at])
}

fn any_step() -> impl Strategy<Value = ReadTo> {
    prop_oneof![
        Just(ReadTo::Eighth),
        Just(ReadTo::Sixteenth),
        Just(ReadTo::Hundredth)
    ]
}

/// The same lens with every power's sign turned.
fn negated(lens: SphereCyl) -> SphereCyl {
    let axis = lens.cylinder.map_or(180.0, |c| c.axis().degrees());
    SphereCyl::new(-lens.sphere, -lens.cylinder_power(), axis).unwrap()
}

proptest! {
    #[test]
    fn the_form_of_either_side_changes_nothing(standard in any_standard(), order in reading(), found in reading(), step in any_step()) {
        let as_written = essence(&judge(standard, plain(order), plain(found), step));
        let other_order = judge(standard, plain(order.transposed()), plain(found), step);
        let other_found = judge(standard, plain(order), plain(found.transposed()), step);
        prop_assert_eq!(&essence(&other_order), &as_written);
        prop_assert_eq!(&essence(&other_found), &as_written);
    }

    #[test]
    fn what_is_as_ordered_is_within(standard in any_standard(), order in reading(), step in any_step()) {
        let report = judge(standard, plain(order), plain(order), step);
        prop_assert!(report.verdicts.iter().all(|one| one.off == Hundredths(0)));
        prop_assert_ne!(report.outcome(), Outcome::Outside);
        // A whole step is less than every limit but the remembered 0.09.
        let fine = judge(standard, plain(order), plain(order), ReadTo::Hundredth);
        prop_assert_eq!(fine.outcome(), Outcome::Within);
    }

    #[test]
    fn too_much_and_too_little_weigh_the_same(standard in any_standard(), order in reading(), by in 0..40_i32) {
        let off = |by| plain(order.with_sphere_changed(f64::from(by) / 100.0));
        let more = judge(standard, plain(order), off(by), ReadTo::Hundredth);
        let less = judge(standard, plain(order), off(-by), ReadTo::Hundredth);
        let stands = |report: &Report| report.verdicts.iter().map(|one| (one.off, one.limit, one.outcome)).collect::<Vec<_>>();
        prop_assert_eq!(stands(&more), stands(&less));
    }

    #[test]
    fn plus_and_minus_lenses_weigh_the_same(standard in any_standard(), order in reading(), found in reading()) {
        let report = judge(standard, plain(order), plain(found), ReadTo::Hundredth);
        let mirrored = judge(standard, plain(negated(order)), plain(negated(found)), ReadTo::Hundredth);
        prop_assert_eq!(report.outcome(), mirrored.outcome());
        let worst = |report: &Report| report.verdicts.iter().map(Verdict::margin).min();
        prop_assert_eq!(worst(&report), worst(&mirrored));
    }

    #[test]
    fn farther_off_is_never_better(standard in any_standard(), order in reading(), by in 0..60_i32) {
        let at = |by| judge(standard, plain(order), plain(order.with_sphere_changed(f64::from(by) / 100.0)), ReadTo::Sixteenth);
        let rank = |report: &Report| match report.outcome() {
            Outcome::Within => 0,
            Outcome::Borderline => 1,
            Outcome::Outside => 2,
        };
        prop_assert!(rank(&at(by)) <= rank(&at(by + 1)));
    }

    #[test]
    fn a_turned_pair_of_axes_is_as_far_off(order in 1..=180_i32, found in 1..=180_i32, turn in 0..180_i32) {
        let turned = |axis: i32| f64::from((axis + turn - 1) % 180 + 1);
        let off = |order, found| {
            let report = judge(&ANSI_Z80_1_2015, plain(lens(1.0, -1.0, order)), plain(lens(1.0, -1.0, found)), ReadTo::Hundredth);
            report.verdicts.iter().find(|one| one.what == What::Axis(Eye::Right)).unwrap().off
        };
        let apart = off(f64::from(order), f64::from(found));
        prop_assert_eq!(apart, off(turned(order), turned(found)));
        prop_assert_eq!(apart, off(f64::from(found), f64::from(order)));
        prop_assert!(apart <= Hundredths(9000));
    }

    // Equal prism added to what was ordered and to what was measured leaves the difference; ANSI has one limit for all.
    #[test]
    fn prescribed_prism_is_taken_off_first(h in -500..500_i32, v in -500..500_i32, off_h in -90..90_i32, off_v in -90..90_i32) {
        let prism = |h: i32, v: i32| Prism::new(f64::from(h) / 100.0, f64::from(v) / 100.0).unwrap();
        let at = |order, found| {
            let eyes = |right| {
                let left = plain(SphereCyl::sphere(-4.0));
                Eyes { right: left.with_prism(right).unwrap(), left }
            };
            let report = ANSI_Z80_1_2015.judge(&Ordered(eyes(order)), &Measured { lenses: eyes(found), read_to: ReadTo::Hundredth });
            report.verdicts.iter().map(|one| (one.off, one.limit)).collect::<Vec<_>>()
        };
        let without = at(Prism::NONE, prism(off_h, off_v));
        prop_assert_eq!(without, at(prism(h, v), prism(h + off_h, v + off_v)));
    }

    #[test]
    fn no_number_makes_anything_fall_over(
        standard in any_standard(), s in any::<f64>(), c in -20.0..20.0_f64, axis in 0.0..=180.0_f64,
        add in any::<f64>(), h in any::<f64>(), v in -60.0..60.0_f64, mm in 0.0..60.0_f64, step in any_step(),
    ) {
        let power = SphereCyl { sphere: s, ..lens(0.0, c, axis) };
        let whole = |power| {
            let lens = Finished::new(power)?.with_add(add)?.with_segment(mm)?;
            lens.with_prism(Prism::new(h, v)?)
        };
        for power in [power, SphereCyl { sphere: s % 40.0, ..power }] {
            if let (Ok(lens), Ok(order)) = (whole(power).or_else(|_| Finished::new(power)), Finished::new(SphereCyl::sphere(1.0))) {
                for report in [judge(standard, lens, order, step), judge(standard, order, lens, step)] {
                    let said: Vec<String> = report.verdicts.iter().map(Verdict::sentence).collect();
                    prop_assert!(said.iter().all(|said| !said.contains("NaN") && !said.contains("inf")));
                    let _ = report.sentence();
                }
            }
        }
    }
}

#[test]
fn endless_numbers_are_refused() {
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert!(Finished::new(SphereCyl::sphere(bad)).is_err());
        let good = plain(SphereCyl::sphere(1.0));
        assert!(good.with_add(bad).is_err() && good.with_segment(bad).is_err());
    }
}

#[test]
fn a_verdict_says_its_reason() {
    let said = |standard: &Standard, order, found| -> Vec<String> {
        let report = judge(standard, plain(order), plain(found), ReadTo::Sixteenth);
        report.verdicts.iter().map(Verdict::sentence).collect()
    };
    let ansi = said(
        &ANSI_Z80_1_2015,
        lens(-1.0, -0.5, 180.0),
        lens(-1.0, -0.62, 9.0),
    );
    assert_eq!(
        ansi[..4],
        [
            "right power along 180: ordered −1.00, measured −1.00, 0.00 off where 0.13 is allowed: within",
            "right power along 90: ordered −1.50, measured −1.62, 0.12 off where 0.13 is allowed: within, but borderline",
            "right cylinder: ordered −0.50, measured −0.62, 0.12 off where 0.13 is allowed: within, but borderline",
            "right axis: ordered 180, measured 9, 9 off where 7 is allowed: outside by 2",
        ]
    );
    let iso = said(
        &ISO_21987_2017,
        SphereCyl::sphere(7.0),
        SphereCyl::sphere(7.15),
    );
    assert_eq!(
        iso[0],
        "right power along 180: ordered +7.00, measured +7.15, 0.15 off where 0.12 is allowed: outside by 0.03 (the limit is from memory, not checked against the standard)"
    );
}

#[test]
fn the_pair_is_judged_by_its_names() {
    let order = plain(SphereCyl::sphere(-2.0));
    let inward = Prism::toward(0.5, Base::In, Eye::Right).unwrap() + Prism::new(0.0, -0.4).unwrap();
    let lenses = Eyes {
        right: order.with_prism(inward).unwrap(),
        left: order,
    };
    let report = ANSI_Z80_1_2015.judge(
        &Ordered(Eyes {
            right: order,
            left: order,
        }),
        &Measured {
            lenses,
            read_to: ReadTo::Hundredth,
        },
    );
    let said: Vec<String> = report.verdicts[2..].iter().map(Verdict::sentence).collect();
    assert_eq!(
        said,
        [
            "horizontal prism of the pair: ordered 0.00 in, measured 0.50 in, 0.50 off where 0.67 is allowed: within",
            "vertical prism of the pair: ordered 0.00 up, measured 0.40 down, 0.40 off where 0.33 is allowed: outside by 0.07",
        ]
    );
    assert_eq!(report.sentence(), "outside tolerance by ANSI Z80.1-2015");
}

// Every cell of this table is remembered, so every verdict by it must say so until somebody opens the standard.
#[test]
fn what_is_remembered_says_so() {
    let order = plain(lens(-2.0, -1.0, 90.0))
        .with_add(2.0)
        .unwrap()
        .with_segment(18.0)
        .unwrap();
    let report = judge(&ISO_21987_2017, order, order, ReadTo::Hundredth);
    assert_eq!(report.verdicts.len(), 14);
    assert!(
        report
            .verdicts
            .iter()
            .all(|one| one.basis == Basis::FromMemory)
    );
    assert_eq!(
        report.sentence(),
        "within tolerance by ISO 21987:2017; limits from memory, to be checked against the standard"
    );
    let seen = judge(&ANSI_Z80_1_2015, order, order, ReadTo::Hundredth);
    assert!(seen.verdicts.iter().all(|one| one.basis == Basis::Seen));
    assert_eq!(seen.sentence(), "within tolerance by ANSI Z80.1-2015");
}

#[test]
fn what_is_not_judged_is_named() {
    let order = plain(lens(-2.0, -0.1, 90.0)).with_add(2.0).unwrap();
    let found = plain(lens(-2.0, -0.1, 90.0)).with_segment(18.0).unwrap();
    let report = judge(
        &ANSI_Z80_1_2015_PROGRESSIVE,
        order,
        found,
        ReadTo::Sixteenth,
    );
    let left_out: Vec<String> = report.unjudged.iter().map(Unjudged::sentence).collect();
    assert_eq!(
        left_out,
        [
            "right axis: the table has no limit for it",
            "right addition: ordered, but not measured",
            "right segment height: measured, but not ordered",
            "left axis: the table has no limit for it",
            "left addition: ordered, but not measured",
            "left segment height: measured, but not ordered",
            "horizontal prism of the pair: the table has no limit for it",
            "vertical prism of the pair: the table has no limit for it",
        ]
    );
    assert!(report.sentence().ends_with("; 8 things not judged"));
}

#[test]
fn an_axis_needs_a_cylinder_on_both_sides() {
    let sphere = plain(SphereCyl::sphere(-2.0));
    let toric = plain(lens(-2.0, -0.5, 90.0));
    let lost = judge(&ANSI_Z80_1_2015, toric, sphere, ReadTo::Sixteenth);
    assert!(
        lost.unjudged
            .iter()
            .any(|one| one.what == What::Axis(Eye::Left) && one.why == Why::NotMeasured)
    );
    assert_eq!(lost.outcome(), Outcome::Outside);
    let gained = judge(&ANSI_Z80_1_2015, sphere, toric, ReadTo::Sixteenth);
    assert!(gained.unjudged.is_empty());
    assert_eq!(gained.outcome(), Outcome::Outside);
}

// A pass that one more step would fail is not a clean one: common practice, no source.
#[test]
fn a_coarser_focimeter_makes_more_of_them_borderline() {
    let stands = |off: f64, read_to| {
        let order = plain(SphereCyl::sphere(-2.0));
        judge(
            &ANSI_Z80_1_2015,
            order,
            plain(SphereCyl::sphere(-2.0 - off)),
            read_to,
        )
        .verdicts[0]
            .outcome
    };
    for (off, read_to, expected) in [
        (0.0, ReadTo::Eighth, Outcome::Within),
        (0.02, ReadTo::Eighth, Outcome::Borderline),
        (0.07, ReadTo::Sixteenth, Outcome::Within),
        (0.08, ReadTo::Sixteenth, Outcome::Borderline),
        (0.12, ReadTo::Hundredth, Outcome::Within),
        (0.13, ReadTo::Hundredth, Outcome::Borderline),
        (0.14, ReadTo::Eighth, Outcome::Outside),
    ] {
        assert_eq!(stands(off, read_to), expected, "{off} read to {read_to:?}");
    }
}
