//! Where a lens lies on the plane of crossed cylinders: J0 across, J45 up.
//!
//! The middle of the plane is no cylinder at all, a ring is all axes of one cylinder, and its radius in dioptres is half
//! that cylinder. Two findings that lie close together would be told apart by nobody, whatever their axes say.

use ::words::app::widgets as say;
use optics::retinoscopy::Ellipse;
use optics::{PowerVector, SphereCyl};

/// From one ring to the next, dioptres.
pub const RING: f64 = 0.25;
/// What lies so few rings beyond one lies on it.
const DUST: f64 = 1e-6;
/// The picture is square and so wide.
pub const SIDE: f64 = 280.0;
/// Around the outermost ring, for its figures.
const MARGIN: f64 = 22.0;

/// Where a finding comes from: its shape and its words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum From {
    /// Today's retinoscopy.
    Retinoscopy,
    /// Found last time.
    LastTime,
    /// A machine read it.
    Machine,
    /// The glasses that are worn.
    Worn,
    /// What was chosen in the end.
    Final,
    /// What was chosen in the end in an exam before last time's, so many exams ago.
    Ago(u8),
}

impl From {
    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Retinoscopy => say::retinoscopy(),
            Self::LastTime => say::last_time(),
            Self::Machine => say::machine(),
            Self::Worn => say::worn(),
            Self::Final => say::final_lens(),
            Self::Ago(2) => say::two_exams_ago(),
            Self::Ago(3) => say::three_exams_ago(),
            Self::Ago(_) => say::earlier(),
        }
    }
}

/// One finding.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dot {
    /// Where it comes from.
    pub from: From,
    /// What was found.
    pub lens: SphereCyl,
    /// How surely, where that is known.
    pub ellipse: Option<Ellipse>,
}

impl Dot {
    fn vector(&self) -> PowerVector {
        self.lens.vector()
    }

    /// How far another lies from it on the plane, in dioptres.
    pub fn apart(&self, other: &Self) -> f64 {
        (self.vector() - other.vector()).astigmatism()
    }
}

/// How far the plane reaches from its middle to hold all findings with their ellipses: whole rings, two at least.
pub fn reach(dots: &[Dot]) -> f64 {
    let farthest = dots
        .iter()
        .map(|dot| dot.vector().astigmatism() + dot.ellipse.map_or(0.0, |ellipse| ellipse.major));
    let farthest = farthest.fold(0.0, f64::max);
    ((farthest / RING - DUST).ceil() * RING).max(2.0 * RING)
}

/// Dioptres in the drawing's own units.
pub fn scaled(dioptres: f64, reach: f64) -> f64 {
    dioptres / reach * (SIDE / 2.0 - MARGIN)
}

/// Where a finding lies in the drawing: x to the right, y downwards.
pub fn place(dot: &Dot, reach: f64) -> (f64, f64) {
    let vector = dot.vector();
    (
        SIDE / 2.0 + scaled(vector.j0, reach),
        SIDE / 2.0 - scaled(vector.j45, reach),
    )
}

/// The rings within reach, from the middle outwards, in dioptres.
pub fn rings(reach: f64) -> impl Iterator<Item = f64> {
    let many = (reach / RING).round() as u32;
    (1..=many).map(|ring| f64::from(ring) * RING)
}

/// The finding beside its distance from the first: "+3.00 / −1.00 × 85, 0.26 D from retinoscopy on the plane".
pub fn told(dot: &Dot, first: Option<&Dot>) -> String {
    let lens = dot.lens.rounded(optics::Step::Quarter).value;
    let away = first.filter(|first| first.from != dot.from).map(|first| {
        say::away_from(
            &format_args!("{:.2}", dot.apart(first)),
            &first.from.words(),
        )
    });
    let sure = dot.ellipse.map(|ellipse| {
        say::sure_within(
            &format_args!("{:.2}", ellipse.major),
            &format_args!("{:.2}", ellipse.minor),
        )
    });
    format!(
        "{lens}{}{}",
        away.unwrap_or_default(),
        sure.unwrap_or_default()
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn dot(from: From, cylinder: f64, axis: f64) -> Dot {
        let lens = SphereCyl::new(3.0, cylinder, axis).unwrap();
        Dot {
            from,
            lens,
            ellipse: None,
        }
    }

    // Published: Thibos, Wheeler and Horner 1997, Optom Vis Sci 74:367-375: J0 is positive for minus cylinder at 180, J45
    // at 45, each half the cylinder.
    #[test]
    fn axis_180_lies_right_and_axis_45_up() {
        let middle = SIDE / 2.0;
        let (right, level) = place(&dot(From::Worn, -1.0, 180.0), 1.0);
        assert!(right > middle && (level - middle).abs() < 1e-9);
        let (same, up) = place(&dot(From::Worn, -1.0, 45.0), 1.0);
        assert!(up < middle && (same - middle).abs() < 1e-9);
        assert!((right - middle - scaled(0.5, 1.0)).abs() < 1e-9);
    }

    // Computed from the formula: the same cylinder 10 degrees apart differs by 2 × (1.50 / 2) × sin 10° = 0.26 D.
    #[test]
    fn ten_degrees_of_one_and_a_half() {
        let (one, other) = (
            dot(From::Retinoscopy, -1.5, 90.0),
            dot(From::LastTime, -1.5, 80.0),
        );
        assert!((one.apart(&other) - 0.2605).abs() < 5e-5);
        let words = told(&other, Some(&one));
        assert!(
            words.ends_with("\u{d7} 80, 0.26 D from retinoscopy"),
            "{words}"
        );
        assert_eq!(told(&one, Some(&one)), one.lens.to_string());
    }

    #[test]
    fn the_plane_holds_what_lies_on_it() {
        let mut far = dot(From::Final, -3.0, 30.0);
        assert_eq!(reach(&[]), 0.5);
        assert_eq!(reach(&[far]), 1.5);
        far.ellipse = Some(Ellipse {
            major: 0.3,
            minor: 0.1,
            angle_degrees: 20.0,
        });
        assert_eq!(reach(&[far]), 2.0);
        assert_eq!(rings(0.5).collect::<Vec<_>>(), [0.25, 0.5]);
        let (x, y) = place(&far, reach(&[far]));
        assert!((0.0..SIDE).contains(&x) && (0.0..SIDE).contains(&y));
    }
}
