//! Where things lie in the picture of an eye under the streak.
//!
//! Millimetres from the middle of the pupil, x to the right and y downwards as in every drawing; angles run
//! anticlockwise, as those of an axis do.

/// Half the picture's width, in millimetres.
pub const HALF_WIDTH: f64 = 9.0;
/// Half its height.
pub const HALF_HEIGHT: f64 = 6.4;
/// Longer than anything in the picture: what is drawn so long has no ends.
pub const ENDLESS: f64 = 40.0;

/// A band of light in the pupil, in millimetres across it, from the middle of the pupil.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// One edge.
    pub from: f64,
    /// The other edge, not below the first.
    pub to: f64,
}

impl Band {
    /// A band that covers every pupil.
    pub const WHOLE: Self = Self {
        from: -ENDLESS / 2.0,
        to: ENDLESS / 2.0,
    };

    /// The band so much wider on either side.
    #[must_use]
    pub fn wider(self, by: f64) -> Self {
        Self {
            from: self.from - by,
            to: self.to + by,
        }
    }

    /// From edge to edge.
    pub fn width(self) -> f64 {
        self.to - self.from
    }
}

/// How far a point of the picture lies along a direction, in degrees.
pub fn along(degrees: f64, (x, y): (f64, f64)) -> f64 {
    let angle = degrees.to_radians();
    x * angle.cos() - y * angle.sin()
}

/// A drag along a direction of a sweep: lying sweeps count to the right, standing ones upwards.
pub fn sweep_direction(meridian_degrees: f64) -> f64 {
    if meridian_degrees > 135.0 {
        meridian_degrees - 180.0
    } else {
        meridian_degrees
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Angles run anticlockwise from the right, as the examiner faces the person (ISO 8429); y runs down a screen.
    #[test]
    fn up_the_screen_is_along_ninety() {
        assert!((along(90.0, (0.0, -2.0)) - 2.0).abs() < 1e-12);
        assert!((along(0.0, (3.0, -2.0)) - 3.0).abs() < 1e-12);
        assert!((along(45.0, (1.0, -1.0)) - 2.0_f64.sqrt()).abs() < 1e-12);
        assert!(along(135.0, (1.0, -1.0)).abs() < 1e-12);
    }

    #[test]
    fn the_horizontal_counts_to_the_right() {
        assert!(along(sweep_direction(180.0), (1.0, 0.0)) > 0.0);
        assert!(along(sweep_direction(170.0), (1.0, 0.0)) > 0.0);
        assert!(along(sweep_direction(90.0), (0.0, -1.0)) > 0.0);
    }

    #[test]
    fn a_wider_band_keeps_its_middle() {
        let band = Band {
            from: -1.0,
            to: 2.0,
        }
        .wider(0.5);
        assert_eq!((band.from, band.to, band.width()), (-1.5, 2.5, 4.0));
    }
}
