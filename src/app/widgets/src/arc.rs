//! The half-circle of an axis: where a degree lies, which degree a finger points at, how finely to step.
//!
//! As the examiner faces the person, for both eyes: nought to the right, 90 on top, counted anticlockwise, 180 to the
//! left (the TABO scale, ISO 8429). Nought and 180 are one line, written 180.

/// A point of the picture: x to the right, y downwards.
pub type Point = (f64, f64);

/// Where a degree lies on a circle.
pub fn point_at(centre: Point, radius: f64, degrees: f64) -> Point {
    let angle = degrees.to_radians();
    (
        centre.0 + radius * angle.cos(),
        centre.1 - radius * angle.sin(),
    )
}

/// The degree, 0 to 180, that a point shows as seen from the centre. Below the base line it is the nearer end.
pub fn degrees_at(centre: Point, at: Point) -> f64 {
    let (right, up) = (at.0 - centre.0, centre.1 - at.1);
    if up < 0.0 {
        return if right < 0.0 { 180.0 } else { 0.0 };
    }
    up.atan2(right).to_degrees()
}

/// The axis on the step's grid nearest to a degree; nought is 180.
pub fn snapped(degrees: f64, step: f64) -> f64 {
    let near = ((degrees / step).round() * step).rem_euclid(180.0);
    if near < f64::EPSILON { 180.0 } else { near }
}

/// The step of an axis, degrees, for a cylinder's power in dioptres of either sign.
///
/// A cylinder `C` that stands `t` degrees off leaves a cylinder of `2 C sin t` (obliquely crossed cylinders). Half a
/// step is the most that a step can be off, so each step serves while half of it leaves less than an eighth of a
/// dioptre, the finest lens of the trial case: 5 degrees up to 1.43 D, 2.5 degrees up to 2.87 D, 1 degree beyond.
pub fn axis_step(cylinder: f64) -> f64 {
    const LEAVES_AT_MOST: f64 = 0.125;
    let serves =
        |step: f64| 2.0 * cylinder.abs() * (step / 2.0).to_radians().sin() <= LEAVES_AT_MOST;
    [5.0, 2.5]
        .into_iter()
        .find(|&step| serves(step))
        .unwrap_or(1.0)
}

#[cfg(test)]
mod tests {
    use super::{axis_step, degrees_at, point_at, snapped};

    const CENTRE: (f64, f64) = (160.0, 150.0);

    // ISO 8429: 0 at the examiner's right, 90 on top, 180 at the examiner's left, whichever the eye.
    #[test]
    fn the_scale_runs_as_the_standard_says() {
        assert!(degrees_at(CENTRE, (260.0, 150.0)).abs() < 1e-9);
        assert!((degrees_at(CENTRE, (160.0, 50.0)) - 90.0).abs() < 1e-9);
        assert!((degrees_at(CENTRE, (60.0, 150.0)) - 180.0).abs() < 1e-9);
        assert!((degrees_at(CENTRE, (230.0, 80.0)) - 45.0).abs() < 1e-9);
    }

    #[test]
    fn a_point_and_its_degree_agree() {
        for degrees in 1..180 {
            let degrees = f64::from(degrees);
            assert!((degrees_at(CENTRE, point_at(CENTRE, 90.0, degrees)) - degrees).abs() < 1e-9);
        }
    }

    #[test]
    fn below_the_base_line_is_the_nearer_end() {
        assert!(degrees_at(CENTRE, (230.0, 170.0)).abs() < 1e-9);
        assert!((degrees_at(CENTRE, (90.0, 170.0)) - 180.0).abs() < 1e-9);
    }

    #[test]
    fn nought_is_written_180() {
        assert_eq!(snapped(1.0, 5.0), 180.0);
        assert_eq!(snapped(179.0, 5.0), 180.0);
        assert_eq!(snapped(88.0, 5.0), 90.0);
        assert_eq!(snapped(88.0, 2.5), 87.5);
        assert_eq!(snapped(88.4, 1.0), 88.0);
    }

    // Computed from the formula: 2 × 1.25 × sin 2.5° = 0.109, 2 × 1.50 × sin 2.5° = 0.131;
    // 2 × 2.75 × sin 1.25° = 0.120, 2 × 3.00 × sin 1.25° = 0.131.
    #[test]
    fn the_step_grows_finer_with_the_cylinder() {
        assert_eq!(axis_step(-0.5), 5.0);
        assert_eq!(axis_step(-1.25), 5.0);
        assert_eq!(axis_step(1.5), 2.5);
        assert_eq!(axis_step(-2.75), 2.5);
        assert_eq!(axis_step(-3.0), 1.0);
        assert_eq!(axis_step(6.0), 1.0);
    }
}
