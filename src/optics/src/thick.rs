//! The vertex powers of a thick lens, from its surfaces.
//!
//! ```text
//! back vertex power   F'v = F1 / (1 − (t/n) F1) + F2
//! front vertex power  Fv  = F2 / (1 − (t/n) F2) + F1
//! ```
//!
//! F1 the front and F2 the back surface power in dioptres, t the thickness in metres, n the refractive index. Where a surface
//! is toric, what stands before the sum is taken in each of its own principal meridians, and the sum is that of two lenses
//! in contact, so that the meridians of the surfaces may cross at any angle. Paraxial; in parallel light from the far side.
//! Ranges are those of [`crate::limits`]: index 1.3 to 2.0, thickness 0 to 30 mm, surfaces −60 to +60 D, and t F / n
//! below 1. The formulas stand in every optics text; worked examples are in
//! `tests/published`. A trial lens and a prescription are named by their back vertex power; a focimeter reads that power
//! with the back of the lens on its stop.
//!
//! ```
//! use optics::{SphereCyl, ThickLens};
//!
//! let lens = ThickLens::new(SphereCyl::sphere(10.25), SphereCyl::sphere(-3.0), 4.0, 1.586)?;
//! assert_eq!(lens.back_vertex_power().to_string(), "+7.52 DS");
//! assert_eq!(lens.front_vertex_power().to_string(), "+7.27 DS");
//! # Ok::<(), optics::OpticsError>(())
//! ```

use crate::{OpticsError, SphereCyl, contact, limits, vertex};

/// A lens of two surfaces and a thickness, all within what a lens can be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ThickLens {
    back_vertex: SphereCyl,
    front_vertex: SphereCyl,
}

impl ThickLens {
    /// A lens from the powers of its front and back surface in dioptres, its thickness in millimetres and its index.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for a surface in any meridian, the thickness or the index;
    /// [`OpticsError::PastItsFocus`] for a surface so strong that light comes to a focus inside the lens.
    pub fn new(
        front: SphereCyl,
        back: SphereCyl,
        thickness_mm: f64,
        index: f64,
    ) -> Result<Self, OpticsError> {
        for meridian in front.principal().into_iter().chain(back.principal()) {
            limits::surface(meridian.power)?;
        }
        let reduced_mm = limits::thickness_mm(thickness_mm)? / limits::index(index)?;
        let through = |surface| vertex::effective_sphero_cyl(surface, reduced_mm, 0.0);
        Ok(Self {
            back_vertex: contact::together(&[through(&front)?, back])?,
            front_vertex: contact::together(&[through(&back)?, front])?,
        })
    }

    /// The power measured from the back of the lens, in minus form.
    pub const fn back_vertex_power(&self) -> SphereCyl {
        self.back_vertex
    }

    /// The power measured from the front of the lens, in minus form.
    pub const fn front_vertex_power(&self) -> SphereCyl {
        self.front_vertex
    }
}
