//! What is worth a second thought about how an eye was examined. Each asks, none blocks.

use super::{Setup, WorkingDistance, slips};
use crate::SphereCyl;
use crate::cells::{CHECK_ON_FOCIMETER_FROM, Cell};
use crate::format::{plain, power};
use ::words::optics::retinoscopy as say;

/// From this many dioptres a difference is worth saying: half a trial-lens step.
pub const WORTH_SAYING: f64 = 0.125;

/// One caution, with the figures that it speaks of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Caution {
    /// The working lens does not match the distance.
    Mismatch {
        /// Its engraved power in dioptres.
        lens: f64,
        /// The distance.
        distance: WorkingDistance,
        /// How much too plus the frame is once the lens is out, in dioptres; too minus where negative.
        left_too_plus: f64,
    },
    /// The working lens acts otherwise at the back cell than its engraving says.
    CellMatters {
        /// Its engraved power in dioptres.
        lens: f64,
        /// The cell that it stands in.
        cell: Cell,
        /// What it does at the back cell, in dioptres.
        acts_as: f64,
    },
    /// The distance is short or long, so a slip in measuring it weighs more, or the reflex is hard to judge.
    UnusualDistance {
        /// The distance.
        distance: WorkingDistance,
    },
    /// Strong lenses were added by their engraved powers.
    StrongLenses {
        /// The stronger principal power's size in dioptres.
        power: f64,
    },
}

/// All that apply, the gravest first.
pub(super) fn all(in_path: &SphereCyl, setup: &Setup) -> Vec<Caution> {
    [
        mismatch(setup),
        cell_matters(setup),
        unusual_distance(setup),
        strong_lenses(in_path),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn mismatch(setup: &Setup) -> Option<Caution> {
    let lens = setup.working_lens?;
    let left_too_plus = slips::mismatch(setup.distance, lens.at_back(setup.cell_spacing_mm));
    (left_too_plus.abs() >= WORTH_SAYING).then_some(Caution::Mismatch {
        lens: lens.power(),
        distance: setup.distance,
        left_too_plus,
    })
}

fn cell_matters(setup: &Setup) -> Option<Caution> {
    let lens = setup.working_lens?;
    let acts_as = lens.at_back(setup.cell_spacing_mm);
    ((acts_as - lens.power()).abs() >= WORTH_SAYING).then_some(Caution::CellMatters {
        lens: lens.power(),
        cell: lens.cell(),
        acts_as,
    })
}

fn unusual_distance(setup: &Setup) -> Option<Caution> {
    let distance = setup.distance;
    (!distance.is_usual()).then_some(Caution::UnusualDistance { distance })
}

fn strong_lenses(in_path: &SphereCyl) -> Option<Caution> {
    let power = in_path.strongest();
    (power >= CHECK_ON_FOCIMETER_FROM).then_some(Caution::StrongLenses { power })
}

impl Caution {
    /// The caution in one plain sentence.
    pub fn sentence(&self) -> String {
        match *self {
            Self::Mismatch {
                lens,
                distance,
                left_too_plus,
            } => say::lens_mismatch(&power(lens), &distance, &slips::off(left_too_plus)),
            Self::CellMatters {
                lens,
                cell,
                acts_as,
            } => say::cell_matters(&power(lens), &cell, &power(acts_as)),
            Self::UnusualDistance { distance } => say::unusual_distance(
                &plain(distance.cm(), 1),
                &format_args!("{:.2}", distance.dioptres_per_cm()),
            ),
            Self::StrongLenses { power } => say::strong_lenses(&format_args!("{power:.2}")),
        }
    }
}
