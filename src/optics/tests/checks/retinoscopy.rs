//! The one retinoscopy equation, the working, the hand and the cautions.

use crate::{assert_lens, assert_near, lens};
use optics::retinoscopy::{Caution, HandStep, Neutral, Retinoscopy, Setup, WorkingDistance};
use optics::retinoscopy::{WorkingLens, net};
use optics::{Cell, CylinderSign, Meridian, SphereCyl, Step};

fn at(cm: f64) -> WorkingDistance {
    WorkingDistance::from_cm(cm).unwrap()
}

fn bare(cm: f64) -> Setup {
    Setup::new(at(cm), None)
}

fn with_lens(cm: f64, power: f64, cell: Cell) -> Setup {
    Setup::new(at(cm), Some(WorkingLens::new(power, cell).unwrap()))
}

fn found(neutral: SphereCyl, setup: &Setup) -> Retinoscopy {
    net(&Neutral::InFrame(neutral), setup)
}

// Computed from the formula.
// By hand: neutral with +4.00 along 180 and +2.50 along 90 is +2.50 with +1.50 × 90, which less 1.50 is +1.00 / +1.50 × 90.
#[test]
fn whoever_works_with_plus_cylinders_has_the_other_sphere_in_the_frame() {
    let neutral = Neutral::two_meridians(180.0, 4.0, 2.5).unwrap();
    let setup = Setup {
        cylinders: CylinderSign::Plus,
        ..bare(67.0)
    };
    let found = net(&neutral, &setup);
    assert_eq!(found.in_path.to_string(), "+2.50 / +1.50 × 90");
    assert_eq!(found.hand.sentence(), "change the sphere +2.50 to +1.00");
    let minus = net(&neutral, &bare(67.0)).net;
    assert!(found.net.vector().distance(&minus.vector()) < 1e-12);
    // What stands in the frame stands as it is.
    let frame = Neutral::InFrame(lens(4.0, -1.5, 180.0));
    assert_eq!(
        net(&frame, &setup).in_path.to_string(),
        "+4.00 / −1.50 × 180"
    );
}

#[test]
fn reciprocals_of_the_distance() {
    for (cm, exact) in [
        (100.0, 1.0),
        (80.0, 1.25),
        (75.0, 1.333),
        (70.0, 1.429),
        (67.0, 1.493),
        (66.0, 1.515),
        (65.0, 1.538),
        (60.0, 1.667),
        (57.0, 1.754),
        (50.0, 2.0),
        (45.0, 2.222),
        (40.0, 2.5),
        (33.0, 3.03),
        (25.0, 4.0),
        (20.0, 5.0),
    ] {
        assert_near(at(cm).dioptres(), exact, 0.0005);
    }
}

// 67 cm goes with 1.50: common practice, no source.
#[test]
fn the_usual_value_is_shown_beside_the_exact_one() {
    assert_eq!(at(67.0).usual(), "1.50");
    assert_eq!(at(67.0).to_string(), "67 cm is 1.49 D, usually called 1.50");
    assert_eq!(at(50.0).to_string(), "50 cm is 2.00 D");
}

// Computed from the formula: about 1 / (100 w²) for each centimetre.
#[test]
fn a_centimetre_weighs_more_the_nearer_one_is() {
    for (cm, each) in [(67.0, 0.022), (50.0, 0.040), (40.0, 0.0625), (25.0, 0.16)] {
        assert_near(at(cm).dioptres_per_cm(), each, 0.0005);
    }
}

// Computed from the formula.
#[test]
fn a_sphere_at_67_and_a_sphero_cylinder_at_50() {
    let sphere = found(SphereCyl::sphere(3.0), &bare(67.0));
    assert_near(sphere.net.sphere, 1.507, 0.0005);
    assert_eq!(
        sphere.net.rounded(Step::Quarter).value,
        SphereCyl::sphere(1.5)
    );

    let astigmatic = found(lens(-0.5, -1.25, 90.0), &bare(50.0));
    assert_lens(astigmatic.net, lens(-2.5, -1.25, 90.0));
}

// Computed from the formula: nearer than assumed leaves the net too plus, farther too minus.
#[test]
fn a_wrong_distance() {
    for (truly, assumed, too_plus) in [
        (62.0, 67.0, 0.120),
        (55.0, 50.0, -0.182),
        (35.0, 40.0, 0.357),
    ] {
        let neutral = SphereCyl::sphere(2.0);
        let wrong = found(neutral, &bare(assumed)).net.sphere;
        let right = found(neutral, &bare(truly)).net.sphere;
        assert_near(wrong - right, too_plus, 0.0005);
    }
}

// Computed from the formula: neutral at 67 cm, moving in to 57 shows with, out to 77 against.
#[test]
fn moving_in_and_out_from_neutral() {
    let short_of_neutral = |cm: f64| at(cm).dioptres() - at(67.0).dioptres();
    assert_near(short_of_neutral(57.0), 0.262, 0.0005);
    assert_near(short_of_neutral(77.0), -0.194, 0.0005);
}

// Computed from the formula: a vertical streak neutral with +4.00 and a horizontal one with +2.50 are
// +4.00/−1.50×180, net +2.51/−1.50×180 at 67 cm.
#[test]
fn a_standing_streak_gives_the_lying_meridian() {
    let meridian = Meridian::tested_by_streak(90.0).unwrap();
    let neutral = Neutral::two_meridians(meridian.degrees(), 4.0, 2.5).unwrap();
    let result = net(&neutral, &bare(67.0));
    assert_lens(result.in_path, lens(4.0, -1.5, 180.0));
    assert_lens(result.net, lens(2.507, -1.5, 180.0));
}

// The same eye named from its other meridian, and an eye alike in both: the definition of a cylinder.
#[test]
fn either_meridian_may_be_named_first() {
    let one = Neutral::two_meridians(30.0, 1.0, 3.0).unwrap().lens();
    let other = Neutral::two_meridians(120.0, 3.0, 1.0).unwrap().lens();
    assert_eq!(one, other);
    assert_lens(one, lens(3.0, -2.0, 120.0));
    let alike = Neutral::two_meridians(30.0, 1.0, 1.0).unwrap().lens();
    assert_eq!(alike, SphereCyl::sphere(1.0));
}

// A +1.50 goes with 67 cm: common practice, no source.
#[test]
fn a_matching_lens_is_only_taken_out() {
    let result = found(lens(2.0, -0.75, 10.0), &with_lens(67.0, 1.5, Cell::Back));
    assert_eq!(result.hand.sentence(), "take the +1.50 out");
    assert_near(result.in_path.sphere, 3.5, 1e-12);
    assert_near(result.net.sphere, 2.0075, 0.0005);
    assert_eq!(result.cautions, []);
}

// Without a working lens 67 cm comes off as though it were 1.50: common practice, no source.
#[test]
fn without_a_lens_the_sphere_changes() {
    for (from, sentence) in [
        (3.5, "change the sphere +3.50 to +2.00"),
        (-1.0, "change the sphere −1.00 to −2.50"),
        (0.5, "change the sphere +0.50 to −1.00"),
        (0.0, "put a −1.50 sphere in"),
        (1.5, "take the +1.50 sphere out"),
        (2.12, "change the sphere +2.12 to +0.62"),
    ] {
        let hand = found(SphereCyl::sphere(from), &bare(67.0)).hand;
        assert_eq!(hand.sentence(), sentence);
    }
}

// Computed from the formula: +1.50 where 50 cm wants +2.00 leaves 0.50 too much plus in the frame.
#[test]
fn a_lens_that_does_not_match_is_said_and_put_right() {
    let result = found(SphereCyl::sphere(2.0), &with_lens(50.0, 1.5, Cell::Back));
    assert_near(result.net.sphere, 1.5, 1e-12);
    assert_eq!(
        result.hand.sentence(),
        "take the +1.50 out and change the sphere +2.00 to +1.50"
    );
    let [caution @ Caution::Mismatch { left_too_plus, .. }] = result.cautions.as_slice() else {
        panic!("{:?}", result.cautions);
    };
    assert_near(*left_too_plus, 0.5, 1e-12);
    assert_eq!(
        caution.sentence(),
        "a +1.50 does not match the distance (50 cm is 2.00 D): with it taken out, the frame is 0.50 D too plus; \
         the net already allows for it"
    );
}

// Computed from the formula: +2.00 at 67 cm leaves 0.51 too little plus.
#[test]
fn a_lens_too_strong_leaves_too_much_minus() {
    let result = found(SphereCyl::sphere(1.0), &with_lens(67.0, 2.0, Cell::Back));
    assert_near(result.net.sphere, 1.5075, 0.0005);
    assert_eq!(
        result.hand.sentence(),
        "take the +2.00 out and change the sphere +1.00 to +1.50"
    );
    let sentence = result.cautions[0].sentence();
    assert!(sentence.contains("0.51 D too minus"), "{sentence}");
}

// Computed from the formula: +1.50 two cells of 4 mm forward is 1.5 / (1 − 0.012) = 1.518.
#[test]
fn a_forward_working_lens_is_brought_to_the_back_cell() {
    let result = found(SphereCyl::sphere(2.0), &with_lens(67.0, 1.5, Cell::Front));
    assert_near(result.in_path.sphere, 3.518, 0.0005);
    assert_eq!(result.hand, HandStep::TakeOut { lens: 1.5 });
}

// Computed by following the light from the retinoscope lens by lens, which the module's note on forward cells leaves out:
// at 67 cm and one cell of 4 mm the net differs by about 0.02 D.
#[test]
fn what_the_forward_cell_leaves_out_is_as_small_as_said() {
    let (lens_power, forward_m, distance_m) = (1.5, 0.004, 0.67);
    let leaving_lens = lens_power - 1.0 / (distance_m - forward_m);
    let at_back = leaving_lens / (1.0 - forward_m * leaving_lens);
    let followed = 2.0 + at_back;
    let result = found(SphereCyl::sphere(2.0), &with_lens(67.0, 1.5, Cell::Middle));
    assert_near(result.net.sphere - followed, 0.018, 0.0005);
}

// Computed from the formula: +4.00 two cells of 4 mm forward is 4 / (1 − 0.032) = 4.132.
#[test]
fn a_strong_forward_working_lens_is_said() {
    let result = found(SphereCyl::sphere(2.0), &with_lens(25.0, 4.0, Cell::Front));
    let acts_as = result.cautions.iter().find_map(|caution| match caution {
        Caution::CellMatters { acts_as, .. } => Some(*acts_as),
        _ => None,
    });
    assert_near(acts_as.unwrap(), 4.132, 0.0005);
}

// 40 to 80 cm are usual, and above about 8 D a combination belongs on a focimeter: common practice, no source.
#[test]
fn odd_distances_and_strong_lenses_are_said() {
    let near = found(SphereCyl::sphere(2.0), &bare(20.0));
    assert_eq!(
        near.cautions[0].sentence(),
        "20 cm is outside the usual 40 to 80: each centimetre out changes the result by 0.25 D, so measure it"
    );
    let strong = found(lens(-7.0, -1.5, 90.0), &bare(67.0));
    assert_eq!(strong.cautions, [Caution::StrongLenses { power: 8.5 }]);
    assert_eq!(found(SphereCyl::sphere(7.0), &bare(67.0)).cautions, []);
}

// Computed from the formula, worked with a pencil.
#[test]
fn the_working_can_be_followed_line_by_line() {
    let neutral = Neutral::two_meridians(90.0, 4.0, 2.5).unwrap();
    let result = net(&neutral, &with_lens(67.0, 1.5, Cell::Back));
    let lines: Vec<String> = result
        .working
        .iter()
        .map(|line| format!("{} | {}", line.label, line.value))
        .collect();
    assert_eq!(
        lines,
        [
            "neutral in the meridian 90 | +4.00",
            "neutral in the meridian 180 | +2.50",
            "together | +4.00 / −1.50 × 90",
            "working lens in the back cell | +1.50",
            "everything in the light’s path | +5.50 / −1.50 × 90",
            "take off the distance: 67 cm is 1.49 D, usually called 1.50 | −1.49",
            "net | +4.01 / −1.50 × 90",
            "net to the nearest quarter | +4.00 / −1.50 × 90",
        ]
    );
}

#[test]
fn a_plus_cylinder_in_the_frame_stays_a_plus_cylinder() {
    let result = found(lens(1.0, 1.5, 30.0), &bare(50.0));
    assert_lens(result.net, lens(-1.0, 1.5, 30.0));
}

#[test]
fn distances_and_lenses_out_of_range_are_refused() {
    for cm in [0.0, -67.0, 9.9, 121.0, 670.0, f64::NAN] {
        assert!(WorkingDistance::from_cm(cm).is_err(), "{cm}");
    }
    for power in [0.0, -1.5, 15.0, f64::NAN] {
        assert!(WorkingLens::new(power, Cell::Back).is_err(), "{power}");
    }
    assert!(Neutral::two_meridians(200.0, 1.0, 1.0).is_err());
    assert!(Neutral::two_meridians(90.0, 90.0, 1.0).is_err());
}
