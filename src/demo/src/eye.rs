//! An eye as it truly is, whatever anybody finds.

use optics::{PowerVector, SphereCyl};
use record::{Amount, Eyes};

use crate::chance::Chance;
use crate::course::Course;

/// One eye as it is.
#[derive(Clone, Copy, Debug)]
pub struct TrueEye {
    /// Its refraction.
    pub refraction: PowerVector,
    /// What it reads with the best lens, in logMAR.
    pub best: f64,
    /// How much its lens is clouded: 0 not at all, 3 densely.
    pub clouded: f64,
    /// The pupil in ordinary light, in millimetres.
    pub pupil_mm: f64,
    /// The pressure in mmHg.
    pub pressure: f64,
    /// The cup's height as a part of the disc's.
    pub cup: f64,
}

impl TrueEye {
    /// How much its lens is clouded, in words.
    pub fn amount(&self) -> Amount {
        match self.clouded {
            clouded if clouded < 0.5 => Amount::Clear,
            clouded if clouded < 1.5 => Amount::Mild,
            clouded if clouded < 2.5 => Amount::Moderate,
            _ => Amount::Dense,
        }
    }

    /// The refraction as somebody finds it who is off by so much in mean sphere and in each component of the cylinder.
    pub fn found(&self, spread: [f64; 3], chance: &mut Chance) -> SphereCyl {
        SphereCyl::from(PowerVector {
            m: chance.about(self.refraction.m, spread[0]),
            j0: chance.about(self.refraction.j0, spread[1]),
            j45: chance.about(self.refraction.j45, spread[2]),
        })
    }
}

/// Two eyes of one person. How they spread, and how alike they are, is from memory: mean sphere +0.75 ± 2 D, cylinders against
/// the rule, the fellow eye much alike with its oblique cylinder mirrored, pressure 15.5 ± 2.5 mmHg, cups 0.35 ± 0.1.
pub fn pair(course: Course, chance: &mut Chance) -> Eyes<TrueEye> {
    let right = TrueEye {
        refraction: PowerVector {
            m: chance.about(0.75, 2.0),
            j0: chance.about(-0.2, 0.35),
            j45: chance.about(0.0, 0.2),
        },
        best: best(course, chance),
        clouded: clouded(course, chance),
        pupil_mm: pupil(course, chance),
        pressure: chance.about(15.5, 2.3).clamp(9.0, 20.5),
        cup: chance.about(0.35, 0.1).clamp(0.1, 0.7),
    };
    let left = TrueEye {
        refraction: PowerVector {
            m: chance.about(right.refraction.m, 0.35),
            j0: chance.about(right.refraction.j0, 0.2),
            j45: chance.about(-right.refraction.j45, 0.15),
        },
        best: chance.about(right.best, 0.05),
        clouded: chance.about(right.clouded, 0.2).max(0.0),
        pupil_mm: chance.about(right.pupil_mm, 0.1).max(1.2),
        pressure: chance.about(right.pressure, 0.8),
        cup: chance.about(right.cup, 0.03).clamp(0.05, 0.8),
    };
    Eyes { right, left }
}

fn best(course: Course, chance: &mut Chance) -> f64 {
    match course {
        Course::LowVision => chance.about(1.0, 0.12).clamp(0.75, 1.25),
        Course::Clouding => chance.about(0.25, 0.06),
        _ => chance.about(0.18, 0.08).max(-0.05),
    }
}

fn clouded(course: Course, chance: &mut Chance) -> f64 {
    match course {
        Course::Clouding => chance.about(0.9, 0.2).max(0.6),
        Course::Implants => 0.0,
        _ => chance.about(0.5, 0.3).clamp(0.0, 1.2),
    }
}

/// Old pupils are small: about 3 mm in ordinary light (from memory).
fn pupil(course: Course, chance: &mut Chance) -> f64 {
    match course {
        Course::SmallPupils => chance.about(1.8, 0.15).clamp(1.4, 2.0),
        _ => chance.about(3.0, 0.45).clamp(2.2, 4.5),
    }
}

/// A year later. Eyes of 75 and over change by −0.65 D in ten years, with nuclear cataract by −0.96 D (Fotedar et al. 2008,
/// Ophthalmology 115:1273-1278); how fast a lens clouds here, and acuity falls, is this project's own choice.
pub fn a_year_older(eyes: &Eyes<TrueEye>, course: Course, chance: &mut Chance) -> Eyes<TrueEye> {
    let clouding = course == Course::Clouding;
    let drift = match course {
        Course::Implants => 0.0,
        Course::Clouding => chance.about(-0.18, 0.06),
        _ => chance.about(-0.065, 0.04),
    };
    let (clouds, dims) = if clouding { (0.4, 0.07) } else { (0.05, 0.01) };
    eyes.map(|eye| TrueEye {
        refraction: PowerVector {
            m: eye.refraction.m + drift,
            j0: eye.refraction.j0 - 0.02,
            j45: eye.refraction.j45,
        },
        best: eye.best + dims,
        clouded: if course == Course::Implants {
            0.0
        } else {
            eye.clouded + clouds
        },
        pupil_mm: (eye.pupil_mm - 0.03).max(1.2),
        ..*eye
    })
}
