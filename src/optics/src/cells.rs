//! The cells of a trial frame, one before the other.
//!
//! A lens of power F that stands t metres in front of the back cell acts there as `F / (1 − t F)`, added to what the back
//! cell holds; where three cells are filled, the light is followed from one to the next. Dioptres and millimetres; cells are usually 3 to 5 mm apart (common practice, no source) and 0 to 10 mm is
//! accepted. The formula is [`crate::vertex`]'s, and like it is for thin lenses in parallel light. Adding the engraved
//! powers of strong lenses is an approximation: above about 8 D the combination belongs on a focimeter (common practice,
//! no source).

use crate::{OpticsError, SphereCyl, contact, limits, vertex};
use ::words::optics::lens as say;
use serde::{Deserialize, Serialize};
use std::fmt;

/// From this power in dioptres in any meridian a combination is worth checking on a focimeter.
pub const CHECK_ON_FOCIMETER_FROM: f64 = 8.0;

/// The distance between neighbouring cells that is taken where nobody measured it, in millimetres.
pub const USUAL_SPACING_MM: f64 = 4.0;

/// A cell of the trial frame, named from the eye outward.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Cell {
    /// Nearest the eye: where the strongest sphere goes.
    #[default]
    Back,
    /// One in front of the back cell.
    Middle,
    /// Two in front of the back cell.
    Front,
}

impl Cell {
    /// All cells, from the eye outward.
    pub const ALL: [Self; 3] = [Self::Back, Self::Middle, Self::Front];

    /// How many cells this one stands in front of the back cell.
    pub const fn places_forward(self) -> u8 {
        match self {
            Self::Back => 0,
            Self::Middle => 1,
            Self::Front => 2,
        }
    }

    /// How far this cell stands in front of the back cell, in millimetres.
    pub fn forward_mm(self, spacing_mm: f64) -> f64 {
        f64::from(self.places_forward()) * spacing_mm
    }
}

impl fmt::Display for Cell {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Back => say::cell_back(),
            Self::Middle => say::cell_middle(),
            Self::Front => say::cell_front(),
        })
    }
}

/// What a lens in a cell does at the back cell; form and axis stay.
///
/// # Errors
/// [`OpticsError::OutOfRange`] for the spacing; otherwise as [`vertex::effective`].
pub fn at_back(lens: &SphereCyl, cell: Cell, spacing_mm: f64) -> Result<SphereCyl, OpticsError> {
    let spacing_mm = limits::cell_spacing_mm(spacing_mm)?;
    vertex::effective_sphero_cyl(lens, cell.forward_mm(spacing_mm), 0.0)
}

/// What all the lenses in a frame do together at the back cell, in minus form. An empty frame does nothing.
///
/// Light is followed from the front: what leaves a cell runs on to the next and meets what stands there. Bringing each lens
/// to the back cell by itself would leave out that a lens in the middle cell receives light that the front one has bent:
/// three lenses of +6.00, 4 mm apart, are +18.77 together, not +18.45.
///
/// ```
/// use optics::{Cell, SphereCyl, cells};
///
/// let frame = Cell::ALL.map(|cell| (SphereCyl::sphere(6.0), cell));
/// assert_eq!(cells::combined(&frame, 4.0)?.to_string(), "+18.77 DS");
/// # Ok::<(), optics::OpticsError>(())
/// ```
///
/// # Errors
/// As [`at_back`]; [`OpticsError::NotANumber`] for an endless power.
pub fn combined(lenses: &[(SphereCyl, Cell)], spacing_mm: f64) -> Result<SphereCyl, OpticsError> {
    let spacing_mm = limits::cell_spacing_mm(spacing_mm)?;
    let mut light = SphereCyl::sphere(0.0);
    for cell in Cell::ALL.into_iter().rev() {
        let mut here = vec![vertex::effective_sphero_cyl(&light, spacing_mm, 0.0)?];
        let in_cell = lenses.iter().filter(|(_, stands)| *stands == cell);
        here.extend(in_cell.map(|(lens, _)| *lens));
        light = contact::together(&here)?;
    }
    Ok(light)
}
