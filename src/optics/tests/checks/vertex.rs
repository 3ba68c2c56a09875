//! Vertex distance, trial-frame cells and the allowance for a near chart: what the tables in `tests/published` do not hold.

use crate::{assert_lens, assert_near, lens};
use optics::cells::{self, Cell};
use optics::{OpticsError, SphereCyl, far, vertex};

// Computed from the formula: how far a lens must move to change by 0.125 and by 0.25 D.
#[test]
fn how_far_until_it_shows() {
    for (power, eighth_mm, quarter_mm) in [(4.0, 7.8, 15.6), (6.0, 3.5, 6.9), (10.0, 1.2, 2.5)] {
        let change = |mm: f64| power - vertex::effective(power, 0.0, mm).unwrap();
        // The tables give the first-order figure, so a moved lens comes within a tenth of it.
        assert_near(change(eighth_mm), 0.125, 0.0125);
        assert_near(change(quarter_mm), 0.25, 0.025);
    }
}

#[test]
fn a_lens_moved_past_its_focus_is_refused() {
    let error = vertex::effective(50.0, 25.0, 5.0).unwrap_err();
    assert!(matches!(error, OpticsError::PastItsFocus { .. }));
    assert_eq!(
        error.to_string(),
        "a +50.00 D lens comes to a focus within the 20 mm that it is moved"
    );
    assert!(vertex::effective(f64::NAN, 12.0, 0.0).is_err());
}

// A textbook chapter on how to refract: about 4 D is where the distance starts to matter.
#[test]
fn four_dioptres_in_any_meridian_matter() {
    assert!(vertex::matters(&SphereCyl::sphere(-4.0)));
    assert!(vertex::matters(&lens(-3.0, -1.0, 90.0)));
    assert!(!vertex::matters(
        &lens(4.0, -0.5, 90.0).with_sphere_changed(-0.25)
    ));
    assert!(!vertex::matters(&lens(1.0, -3.0, 90.0)));
}

// Computed from the formula.
#[test]
fn ten_dioptres_one_cell_forward() {
    for (power, acts_as) in [(10.0, 10.526), (-10.0, -9.524)] {
        let found = cells::at_back(&SphereCyl::sphere(power), Cell::Middle, 5.0).unwrap();
        assert_near(found.sphere, acts_as, 0.0005);
    }
}

// Computed from the formula: +10 two cells of 5 mm forward is 10 / (1 − 0.1) = 11.111.
#[test]
fn a_frame_adds_up_at_the_back_cell() {
    let frame = [
        (SphereCyl::sphere(10.0), Cell::Front),
        (lens(1.0, -1.0, 90.0), Cell::Back),
    ];
    let together = cells::combined(&frame, 5.0).unwrap();
    assert_lens(together, lens(12.111, -1.0, 90.0));
}

#[test]
fn an_empty_frame_does_nothing_and_a_wild_spacing_is_refused() {
    assert_eq!(cells::combined(&[], 4.0), Ok(SphereCyl::sphere(0.0)));
    assert!(cells::at_back(&SphereCyl::sphere(1.0), Cell::Front, 60.0).is_err());
}

// Computed from the formula: 1/d, and −1.00 found at 3 m is −1.33 for far.
#[test]
fn a_near_chart_has_its_allowance() {
    for (metres, allowance) in [
        (6.0, 0.17),
        (5.0, 0.20),
        (4.0, 0.25),
        (3.0, 0.33),
        (2.0, 0.50),
        (1.5, 0.67),
        (1.0, 1.00),
    ] {
        assert_near(far::allowance(metres).unwrap(), allowance, 0.005);
    }
    let for_far = far::for_far(&SphereCyl::sphere(-1.0), 3.0).unwrap();
    assert_near(for_far.sphere, -1.333, 0.0005);
    assert_near(
        for_far.rounded(optics::Step::Quarter).value.sphere,
        -1.25,
        1e-12,
    );
    assert!(far::allowance(0.0).is_err());
}
