//! How an eye was examined: what was observed, from which everything else follows.

use super::WorkingDistance;
use crate::cells::{Cell, USUAL_SPACING_MM};
use crate::sphere_cyl::finite;
use crate::{CylinderSign, Meridian, MeridianPower, OpticsError, SphereCyl, Step, limits, vertex};
use ::words::optics::retinoscopy as say;
use serde::{Deserialize, Serialize};

/// A working lens standing in the trial frame while the reflex was judged. Always a plus sphere.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "WorkingLensFields", into = "WorkingLensFields")]
pub struct WorkingLens {
    power: f64,
    cell: Cell,
}

impl WorkingLens {
    /// A working lens of this power in dioptres, +0.25 to +10.00.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] outside that.
    pub fn new(power: f64, cell: Cell) -> Result<Self, OpticsError> {
        Ok(Self {
            power: limits::working_lens(power)?,
            cell,
        })
    }

    /// The engraved power in dioptres.
    pub const fn power(self) -> f64 {
        self.power
    }

    /// The cell that it stands in.
    pub const fn cell(self) -> Cell {
        self.cell
    }

    /// What it does at the back cell, in dioptres.
    pub fn at_back(self, spacing_mm: f64) -> f64 {
        vertex::moved(self.power, self.cell.forward_mm(spacing_mm))
    }
}

/// Distance and working lens, common to both eyes.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "SetupFields")]
pub struct Setup {
    /// From the retinoscope to the trial lens.
    pub distance: WorkingDistance,
    /// The working lens, if one stood in the frame.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub working_lens: Option<WorkingLens>,
    /// Between neighbouring cells of the trial frame, 0 to 10 mm.
    pub cell_spacing_mm: f64,
    /// The step of the trial lenses.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub step: Step,
    /// The sign of the cylinders that the examiner works with.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub cylinders: CylinderSign,
}

fn is_usual<T: Default + PartialEq>(choice: &T) -> bool {
    *choice == T::default()
}

impl Setup {
    /// A setup with the cells at their usual distance.
    pub const fn new(distance: WorkingDistance, working_lens: Option<WorkingLens>) -> Self {
        Self {
            distance,
            working_lens,
            cell_spacing_mm: USUAL_SPACING_MM,
            step: Step::Quarter,
            cylinders: CylinderSign::Minus,
        }
    }

    /// Everything in the light's path at the back cell beside the lens to be found, less the distance, in dioptres: the one
    /// equation without its lens.
    fn beside_the_lens(&self) -> f64 {
        self.working_lens_at_back() - self.distance.dioptres()
    }

    /// What the working lens does at the back cell in dioptres, 0 where none stands in the frame.
    pub fn working_lens_at_back(&self) -> f64 {
        self.working_lens
            .map_or(0.0, |lens| lens.at_back(self.cell_spacing_mm))
    }

    /// The refraction along a meridian that this lens would be neutral for, in dioptres.
    pub fn refraction(&self, lens: f64) -> f64 {
        lens + self.beside_the_lens()
    }

    /// The lens that would be neutral along a meridian of this refraction, in dioptres.
    pub fn lens_for(&self, refraction: f64) -> f64 {
        refraction - self.beside_the_lens()
    }
}

/// The lenses that neutralised an eye, **without** the working lens.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", try_from = "NeutralFields")]
pub enum Neutral {
    /// One lens for each principal meridian.
    TwoMeridians {
        /// The lens that neutralises the meridian named.
        first: MeridianPower,
        /// The lens that neutralises the meridian 90 degrees from it, in dioptres.
        second: f64,
    },
    /// The sphero-cylinder as it stands in the frame.
    InFrame(SphereCyl),
    /// The lens held over glasses that stay on.
    OverLens(HeldOver),
}

/// A lens held over one that stays where it is: the glasses worn, or a machine's reading put up in the frame.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "HeldOverFields", into = "HeldOverFields")]
pub struct HeldOver {
    worn: SphereCyl,
    over: SphereCyl,
    gap_mm: f64,
}

impl HeldOver {
    /// What was neutral over a worn lens, **without** the working lens, held so many millimetres before it, 0 to 30.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for the gap, or where either lens is stronger than any that is held or worn.
    pub fn new(worn: SphereCyl, over: SphereCyl, gap_mm: f64) -> Result<Self, OpticsError> {
        limits::sphere(worn.strongest())?;
        limits::held_over(over.strongest())?;
        Ok(Self {
            worn,
            over,
            gap_mm: limits::over_gap_mm(gap_mm)?,
        })
    }

    /// The lens worn.
    pub const fn worn(&self) -> &SphereCyl {
        &self.worn
    }

    /// What was neutral over it.
    pub const fn over(&self) -> &SphereCyl {
        &self.over
    }

    /// How far before it, in millimetres.
    pub const fn gap_mm(&self) -> f64 {
        self.gap_mm
    }
}

impl Neutral {
    /// The lens at one meridian (0 to 180 degrees) and the lens 90 degrees from it, in dioptres.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for the meridian or either power.
    pub fn two_meridians(meridian_deg: f64, first: f64, second: f64) -> Result<Self, OpticsError> {
        Ok(Self::TwoMeridians {
            first: MeridianPower {
                meridian: Meridian::new(meridian_deg)?,
                power: limits::meridian_power(first)?,
            },
            second: limits::meridian_power(second)?,
        })
    }

    /// The lens that is put in to neutralise the eye: minus form from two meridians, as it stands from the frame, what is held
    /// over from over a worn lens.
    pub fn lens(&self) -> SphereCyl {
        self.lens_with(CylinderSign::Minus)
    }

    /// The same, with a cylinder of this sign from two meridians; what stands in the frame stands as it does.
    pub fn lens_with(&self, cylinders: CylinderSign) -> SphereCyl {
        match *self {
            Self::TwoMeridians { first, second } => {
                SphereCyl::from_meridians(first, second).with_cylinder(cylinders)
            }
            Self::InFrame(lens) => lens,
            Self::OverLens(held) => held.over,
        }
    }
}

#[derive(Serialize, Deserialize)]
struct WorkingLensFields {
    power: f64,
    cell: Cell,
}

impl TryFrom<WorkingLensFields> for WorkingLens {
    type Error = OpticsError;
    fn try_from(fields: WorkingLensFields) -> Result<Self, OpticsError> {
        Self::new(fields.power, fields.cell)
    }
}

impl From<WorkingLens> for WorkingLensFields {
    fn from(lens: WorkingLens) -> Self {
        Self {
            power: lens.power,
            cell: lens.cell,
        }
    }
}

#[derive(Deserialize)]
struct SetupFields {
    distance: WorkingDistance,
    #[serde(default)]
    working_lens: Option<WorkingLens>,
    cell_spacing_mm: f64,
    #[serde(default)]
    step: Step,
    #[serde(default)]
    cylinders: CylinderSign,
}

impl TryFrom<SetupFields> for Setup {
    type Error = OpticsError;
    fn try_from(fields: SetupFields) -> Result<Self, OpticsError> {
        Ok(Self {
            distance: fields.distance,
            working_lens: fields.working_lens,
            cell_spacing_mm: limits::cell_spacing_mm(fields.cell_spacing_mm)?,
            step: fields.step,
            cylinders: fields.cylinders,
        })
    }
}

#[derive(Deserialize)]
#[serde(rename_all = "snake_case")]
enum NeutralFields {
    TwoMeridians { first: MeridianPower, second: f64 },
    InFrame(SphereCyl),
    OverLens(HeldOver),
}

impl TryFrom<NeutralFields> for Neutral {
    type Error = OpticsError;
    fn try_from(fields: NeutralFields) -> Result<Self, OpticsError> {
        match fields {
            NeutralFields::TwoMeridians { first, second } => {
                finite(say::power_in_meridian(), first.power)?;
                finite(say::power_in_meridian(), second)?;
                Ok(Self::TwoMeridians { first, second })
            }
            NeutralFields::InFrame(lens) => Ok(Self::InFrame(lens)),
            NeutralFields::OverLens(held) => Ok(Self::OverLens(held)),
        }
    }
}

#[derive(Serialize, Deserialize)]
struct HeldOverFields {
    worn: SphereCyl,
    over: SphereCyl,
    gap_mm: f64,
}

impl TryFrom<HeldOverFields> for HeldOver {
    type Error = OpticsError;
    fn try_from(fields: HeldOverFields) -> Result<Self, OpticsError> {
        Self::new(fields.worn, fields.over, fields.gap_mm)
    }
}

impl From<HeldOver> for HeldOverFields {
    fn from(held: HeldOver) -> Self {
        Self {
            worn: held.worn,
            over: held.over,
            gap_mm: held.gap_mm,
        }
    }
}
