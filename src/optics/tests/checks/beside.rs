//! Beside the one equation: slips of distance, eyes off their line of sight, lenses over lenses, the near technique.

use crate::{any_lens, apart, assert_near, lens};
use optics::retinoscopy::near_technique::{self, Caution as NearCaution, allowance};
use optics::retinoscopy::slips::{Slip, moved};
use optics::retinoscopy::{
    Caution, HandStep, HeldOver, Neutral, Setup, WorkingDistance, WorkingLens, net,
};
use optics::retinoscopy::{off_sight, over_lens};
use optics::{Cell, SphereCyl};
use proptest::prelude::*;

fn at(cm: f64) -> WorkingDistance {
    WorkingDistance::from_cm(cm).unwrap()
}

fn matching(cm: f64) -> Setup {
    let lens = WorkingLens::new(100.0 / cm, Cell::Back).unwrap();
    Setup::new(at(cm), Some(lens))
}

// Computed from the formula.
#[test]
fn a_slip_is_said_in_one_sentence() {
    let said = |slip: Slip| slip.sentence();
    assert_eq!(
        said(Slip::WrongDistance {
            truly: at(55.0),
            assumed: at(50.0)
        }),
        "at 55 cm with 50 taken off, the net is 0.18 D too minus"
    );
    assert_eq!(
        said(Slip::to_the_cornea(at(40.0), 12.0).unwrap()),
        "with 40 cm measured to the cornea and 38.8 to the lens, the net is 0.08 D too plus"
    );
    assert_eq!(
        said(Slip::Forgotten(at(50.0))),
        "with 50 cm not taken off, the net is 2.00 D too plus"
    );
    assert_eq!(
        said(Slip::Doubled(at(50.0))),
        "with 50 cm taken off twice, the net is 2.00 D too minus"
    );
}

#[test]
fn a_slip_that_no_distance_has_is_refused() {
    assert!(Slip::to_the_cornea(at(10.5), 12.0).is_err());
    for vertex_mm in [f64::NAN, f64::INFINITY, 0.0, 40.0] {
        assert!(Slip::to_the_cornea(at(67.0), vertex_mm).is_err());
    }
}

// Jackson and others 2004 end at 20 degrees; 5 degrees are common practice, no source.
#[test]
fn beyond_the_table_nothing_is_said() {
    for degrees in [-1.0, 20.1, f64::NAN, f64::INFINITY] {
        assert!(off_sight::shift(degrees).is_err(), "{degrees}");
    }
    for beside in [-1.0, 51.0, f64::NAN] {
        assert!(off_sight::degrees(beside, at(67.0)).is_err(), "{beside}");
    }
    assert!(off_sight::is_close_enough(5.0) && off_sight::is_close_enough(-4.0));
    assert!(!off_sight::is_close_enough(5.1) && !off_sight::is_close_enough(f64::NAN));
}

// Computed from the formula: tan 5° × 67 cm = 5.86 cm.
#[test]
fn five_degrees_in_centimetres() {
    assert_near(off_sight::degrees(5.86, at(67.0)).unwrap(), 5.0, 0.005);
}

// What remains over the glasses is nothing: the definition of neutral.
#[test]
fn an_exact_neutral_leaves_the_worn_lens() {
    let worn = lens(-2.0, -1.25, 170.0);
    let none = SphereCyl::sphere(0.0);
    let found = over_lens::found(&worn, &none, &matching(50.0), 12.0).unwrap();
    assert!(apart(&found.refraction, &worn) < 1e-12);
    assert_eq!(found.sentence(), "−2.00 / −1.25 × 170 stands as it is");
    assert_eq!(found.over.hand, HandStep::TakeOut { lens: 2.0 });
}

// Computed from the formula, worked with a pencil: −1.00 over, 10 mm before the lens, is −1 / 1.01 = −0.99 there.
#[test]
fn the_working_over_a_lens_can_be_followed() {
    let over = SphereCyl::sphere(1.0);
    let setup = Setup::new(at(50.0), None);
    let found = over_lens::found(&lens(1.0, 0.5, 90.0), &over, &setup, 10.0).unwrap();
    let lines: Vec<String> = found
        .working
        .iter()
        .map(|line| format!("{} | {}", line.label, line.value))
        .collect();
    assert_eq!(
        lines,
        [
            "lens in the frame | +1.00 DS",
            "working lens | none",
            "everything in the light’s path | +1.00 DS",
            "take off the distance: 50 cm is 2.00 D | −2.00",
            "found over the lens worn | −1.00 DS",
            "the same at the lens worn | −0.99 DS",
            "lens worn | +1.00 / +0.50 × 90",
            "refraction | +0.51 / −0.50 × 180",
            "refraction to the nearest quarter | +0.50 / −0.50 × 180",
        ]
    );
    assert_eq!(
        found.sentence(),
        "in place of +1.00 / +0.50 × 90 goes 0.00 / +0.50 × 90"
    );
    assert_eq!(
        found.over.hand.sentence(),
        "change the sphere +1.00 to −1.00"
    );
}

// Above about 8 D a combination belongs on a focimeter (common practice, no source), whichever of the two lenses makes it so.
#[test]
fn two_lenses_that_are_strong_together_are_said() {
    let over = SphereCyl::sphere(2.0);
    let found = over_lens::found(
        &SphereCyl::sphere(7.0),
        &over,
        &Setup::new(at(67.0), None),
        12.0,
    );
    assert_eq!(
        found.unwrap().cautions,
        [Caution::StrongLenses { power: 9.0 }]
    );
}

// By hand: +0.50 over, with a +1.50 held at 67 cm, nets 0.01, which is 0.01 at the glasses too: +2.50 becomes +3.01.
#[test]
fn what_is_held_over_nets_like_any_other_neutral() {
    let worn = lens(2.5, -1.0, 90.0);
    let held = HeldOver::new(worn, SphereCyl::sphere(0.5), 10.0).unwrap();
    let setup = Setup::new(at(67.0), Some(WorkingLens::new(1.5, Cell::Back).unwrap()));
    let found = net(&Neutral::OverLens(held), &setup);
    assert!(apart(&found.net, &lens(3.01, -1.0, 90.0)) < 0.01);
    assert_eq!(
        found.hand.sentence(),
        "in place of +2.50 / −1.00 × 90 goes +3.00 / −1.00 × 90"
    );
    assert_eq!(found.in_path.to_string(), "+4.50 / −1.00 × 90");
}

#[test]
fn more_than_is_ever_held_over_is_refused() {
    let worn = SphereCyl::sphere(1.0);
    assert!(HeldOver::new(worn, SphereCyl::sphere(20.25), 10.0).is_err());
    assert!(HeldOver::new(SphereCyl::sphere(40.25), worn, 10.0).is_err());
    assert!(HeldOver::new(worn, worn, 31.0).is_err());
    assert!(HeldOver::new(worn, SphereCyl::sphere(f64::NAN), 10.0).is_err());
}

#[test]
fn what_is_no_number_is_refused_over_a_lens() {
    let good = SphereCyl::sphere(1.0);
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let endless = SphereCyl::sphere(bad);
        let setup = Setup::new(at(67.0), None);
        assert!(over_lens::found(&endless, &good, &setup, 12.0).is_err());
        assert!(over_lens::found(&good, &endless, &setup, 12.0).is_err());
        assert!(over_lens::found(&good, &good, &setup, bad).is_err());
        assert!(allowance(bad, at(50.0)).is_err());
    }
    assert!(over_lens::found(&good, &good, &Setup::new(at(67.0), None), 31.0).is_err());
}

// Kauser and others 2020: 0.3 D more plus than with drops; the 1992 comparison in infants and children: 1.00 for children.
#[test]
fn a_child_near_in_the_dark() {
    let child = allowance(6.0, at(50.0)).unwrap();
    assert_eq!(
        child.cautions(),
        [
            NearCaution::OthersTake { allowance: 1.0 },
            NearCaution::MorePlusThanDrops { by: 0.3 }
        ]
    );
    let elsewhere = allowance(6.0, at(40.0)).unwrap();
    assert_eq!(
        elsewhere.cautions()[0].sentence(),
        "the allowance belongs to 50 cm, and this is 40"
    );
    assert_near(elsewhere.taken_off(), near_technique::USUAL, 0.0);
}

// Hofstetter's least, 15 − 0.25 × age, reaches nothing at 60. Computed: 2.00 − 1.25 = 0.75 D too plus.
#[test]
fn an_old_eye_near_in_the_dark() {
    let old = allowance(60.0, at(50.0)).unwrap();
    assert_eq!(
        old.cautions()[0].sentence(),
        "an eye that does not accommodate needs the whole distance taken off: with 1.25 the net would be 0.75 D too plus"
    );
    let younger = allowance(59.0, at(50.0)).unwrap();
    assert_eq!(younger.cautions(), [NearCaution::NoFigures { up_to: 2.0 }]);
    let gross = lens(2.0, -1.0, 30.0);
    assert!(apart(&old.net(&gross), &lens(0.0, -1.0, 30.0)) < 1e-12);
}

proptest! {
    // One equation: a net with a wrong distance differs from the right one by what the slip says.
    #[test]
    fn a_slip_is_the_difference_of_two_nets(neutral in any_lens(), truly in 10.0..120.0_f64, assumed in 10.0..120.0_f64) {
        let neutral = Neutral::InFrame(neutral);
        let found = |cm: f64| net(&neutral, &Setup::new(at(cm), None)).net.sphere;
        let slip = Slip::WrongDistance { truly: at(truly), assumed: at(assumed) };
        prop_assert!((found(assumed) - found(truly) - slip.too_plus()).abs() < 1e-9);
        prop_assert_eq!(moved(at(assumed), at(truly)) > 0.0, truly < assumed);
    }

    // With no gap an over-lens simply adds: the definition of lenses in contact.
    #[test]
    fn without_a_gap_it_is_a_plain_sum(worn in any_lens(), over in any_lens(), cm in 10.0..120.0_f64) {
        let setup = Setup::new(at(cm), None);
        let found = over_lens::found(&worn, &over, &setup, 0.0).unwrap();
        let sum = worn.vector() + over.vector();
        let refraction = found.refraction.vector();
        prop_assert!((refraction.m - (sum.m - 100.0 / cm)).abs() < 1e-9);
        prop_assert!((refraction.j0 - sum.j0).abs() < 1e-9 && (refraction.j45 - sum.j45).abs() < 1e-9);
    }

    #[test]
    fn an_exact_neutral_over_any_lens_leaves_it(worn in any_lens(), cm in 10.0..120.0_f64, gap in 0.0..30.0_f64) {
        let none = SphereCyl::sphere(0.0);
        let found = over_lens::found(&worn, &none, &matching(cm), gap).unwrap();
        prop_assert!(apart(&found.refraction, &worn) < 1e-9);
    }

    // The ends of every range: what is held over never comes to a focus before the worn lens.
    #[test]
    fn whatever_may_be_held_over_nets(worn in -40.0..=40.0_f64, over in -20.0..=20.0_f64, gap in 0.0..=30.0_f64, cm in 10.0..=120.0_f64,
        working in 0.25..=10.0_f64, spacing in 0.0..=10.0_f64) {
        let held = HeldOver::new(SphereCyl::sphere(worn), SphereCyl::sphere(over), gap).unwrap();
        let working = WorkingLens::new(working, Cell::Front).unwrap();
        let setup = Setup { cell_spacing_mm: spacing, ..Setup::new(at(cm), Some(working)) };
        prop_assert!(net(&Neutral::OverLens(held), &setup).net.sphere.is_finite());
    }

    #[test]
    fn no_finite_number_fells_them(sphere in any::<f64>(), gap in any::<f64>(), degrees in any::<f64>(), age in any::<f64>()) {
        let over = SphereCyl::sphere(sphere);
        let worn = SphereCyl::sphere(1.0);
        if let Ok(found) = over_lens::found(&worn, &over, &matching(50.0), gap) {
            prop_assert!(found.refraction.sphere.is_finite() && !found.sentence().is_empty());
        }
        if let Ok(shift) = off_sight::shift(degrees) {
            prop_assert!(shift.mean_sphere <= 0.0 && shift.sphere <= 0.0);
        }
        if let Ok(allowance) = allowance(age, at(50.0)) {
            prop_assert!(allowance.taken_off() > 0.0 && !allowance.cautions()[0].sentence().is_empty());
        }
    }
}
