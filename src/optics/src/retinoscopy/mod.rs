//! The one retinoscopy equation.
//!
//! ```text
//! net = everything in the light's path at neutrality − 1 / working distance (m)
//! ```
//!
//! in dioptres at the back cell, along each meridian; the working distance has no axis, so the sphere changes and the
//! cylinder stays. A working lens in the frame is part of everything in the path. Whether one was there changes only what
//! the hand must do next: take it out, or change the sphere. Where a working lens does not match the distance the net is
//! exact all the same, but what stays in the frame after taking it out is off by the mismatch, and that is said.
//!
//! The subtraction of the reciprocal stands in every text on refraction, and in Arch Ophthalmol 1935;14:458-463. Beam
//! parallel or diverging; motion judged against the trial lens nearest the eye. A working lens in a forward cell is
//! brought to the back cell as in parallel light (see [`crate::cells`]); in the diverging light of the retinoscope it acts
//! weaker than that by about `2 t / w²` dioptres: 0.02 D for a cell 4 mm forward at 67 cm. Ranges are those of
//! [`crate::limits`].
//!
//! Beside it: how the [`reflex`] runs, the [`bracket`] that sweeps make, a lens from single meridians ([`meridian_fit`]),
//! [`slips`] of distance, eyes [`off_sight`], retinoscopy over a worn lens ([`over_lens`]) and the [`near_technique`].

pub mod bracket;
mod caution;
mod circumstances;
mod distance;
mod eye_bracket;
mod hand;
mod least_squares;
mod meridians;
pub mod near_technique;
mod next_move;
pub mod off_sight;
pub mod over_lens;
pub mod reflex;
mod setup;
pub mod slips;
mod sweep;
mod sweeping;
mod working;

pub use caution::{Caution, WORTH_SAYING};
pub use circumstances::{Circumstances, Media, Reflex};
pub use distance::WorkingDistance;
pub use eye_bracket::{EyeAdvice, EyeBracket, Held};
pub use hand::{HandStep, SphereChange};
pub use meridians::{
    AXIS_WITHIN, CROSS_SCATTER, CROSS_WITHIN, Ellipse, Fit, FitError, Measured, meridian_fit,
};
pub use next_move::{NextMove, Take};
pub use setup::{HeldOver, Neutral, Setup, WorkingLens};
pub use sweep::{Beam, Brightness, Motion, Speed, Sweep};
pub use sweeping::Sweeping;

use crate::{Line, SphereCyl};

/// One eye's result, with the way to it.
#[derive(Debug, Clone, PartialEq)]
pub struct Retinoscopy {
    /// Everything in the light's path at neutrality, at the back cell.
    pub in_path: SphereCyl,
    /// The refraction, unrounded.
    pub net: SphereCyl,
    /// The working, line by line, from what was observed to the net on the trial-lens step.
    pub working: Vec<Line>,
    /// What the hand does next.
    pub hand: HandStep,
    /// What is worth a second thought, the gravest first.
    pub cautions: Vec<Caution>,
}

/// Reckons the net from what neutralised the eye and how it was examined. The form of cylinder stays as it stands in the
/// frame; from two meridians it is the one that the examiner works with.
pub fn net(neutral: &Neutral, setup: &Setup) -> Retinoscopy {
    if let Neutral::OverLens(held) = neutral {
        return over_lens::net(held, setup);
    }
    let lens = neutral.lens_with(setup.cylinders);
    let in_path = lens.with_sphere_changed(setup.working_lens_at_back());
    let net = in_path.with_sphere_changed(-setup.distance.dioptres());
    Retinoscopy {
        working: working::lines(neutral, setup, &in_path, &net),
        hand: HandStep::new(&lens, &net, setup),
        cautions: caution::all(&in_path, setup),
        in_path,
        net,
    }
}

/// The lens that would neutralise an eye of this refraction under this set-up, without the working lens: the same
/// equation solved for the lens. It says where last time's finding would stand on today's ruler.
pub fn expected_neutral(refraction: &SphereCyl, setup: &Setup) -> SphereCyl {
    refraction.with_sphere_changed(setup.lens_for(0.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cells::Cell;

    // The inverse of `net` by construction: what it expects must neutralise to the refraction that it was given.
    #[test]
    fn what_is_expected_nets_to_the_refraction() {
        let refraction = SphereCyl::new(3.25, -1.5, 90.0).unwrap();
        let distance = WorkingDistance::from_cm(50.0).unwrap();
        for lens in [None, Some(WorkingLens::new(1.5, Cell::Front).unwrap())] {
            let setup = Setup::new(distance, lens);
            let expected = Neutral::InFrame(expected_neutral(&refraction, &setup));
            let found = net(&expected, &setup).net;
            assert!(found.vector().distance(&refraction.vector()) < 1e-9);
        }
    }
}
