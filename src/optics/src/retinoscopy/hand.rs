//! What the hand does next, once the eye is neutral.
//!
//! Reckoned exactly, and only the lens that is to be put in is rounded, to the trial-lens step that the sphere in the
//! frame belongs to (a quarter dioptre, or an eighth where it is one). A sphere on the step less 67 cm so comes out as
//! though 1.50 had been taken off. The cylinder stays as it is. Common practice, no source.

use super::{Setup, over_lens};
use crate::SphereCyl;
use crate::format::power;
use crate::step::Step;
use ::words::optics::retinoscopy as say;

/// One sphere exchanged for another in the frame, in dioptres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SphereChange {
    /// The sphere in the frame.
    pub from: f64,
    /// The sphere to put in its place.
    pub to: f64,
}

/// The next move, which leaves the net in the frame.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum HandStep {
    /// Take the working lens out: what stays is the net.
    TakeOut {
        /// Its engraved power in dioptres.
        lens: f64,
    },
    /// Take the working lens out and change the sphere, because the lens did not match the distance.
    TakeOutAndChange {
        /// Its engraved power in dioptres.
        lens: f64,
        /// The sphere's change.
        change: SphereChange,
    },
    /// Change the sphere: no working lens stood in the frame.
    Change(SphereChange),
    /// What was held over comes away, and another lens goes in place of the worn one.
    InPlaceOf {
        /// The lens worn.
        worn: SphereCyl,
        /// What goes in its place, on the trial-lens step.
        goes: SphereCyl,
    },
}

impl HandStep {
    /// The move that turns the neutral lens in the frame into the net.
    pub(super) fn new(neutral: &SphereCyl, net: &SphereCyl, setup: &Setup) -> Self {
        let step = Step::of(neutral.sphere);
        let change = SphereChange {
            from: neutral.sphere,
            to: step.nearest(net.sphere),
        };
        match setup.working_lens.map(super::WorkingLens::power) {
            None => Self::Change(change),
            Some(lens) if (change.to - change.from).abs() < step.dioptres() / 2.0 => {
                Self::TakeOut { lens }
            }
            Some(lens) => Self::TakeOutAndChange { lens, change },
        }
    }

    /// The move in words, for the hand: "take the +1.50 out", "change the sphere +3.50 to +2.00".
    pub fn sentence(&self) -> String {
        match self {
            Self::TakeOut { lens } => say::take_out(&power(*lens)),
            Self::TakeOutAndChange { lens, change } => {
                say::take_out_and(&power(*lens), &change.words())
            }
            Self::Change(change) => change.words(),
            Self::InPlaceOf { worn, goes } => over_lens::sentence(worn, goes),
        }
    }
}

impl SphereChange {
    fn words(self) -> String {
        let (from, to) = (power(self.from), power(self.to));
        match (from.as_str(), to.as_str()) {
            ("0.00", _) => say::put_sphere_in(&to),
            (_, "0.00") => say::take_sphere_out(&from),
            _ => say::change_sphere(&from, &to),
        }
    }
}
