//! Retinoscopy over a lens that stays where it is: last time's glasses, or a machine's reading put up in the frame.
//!
//! ```text
//! refraction = lens worn + (what was neutral over it − 1 / working distance), moved from over it to its place
//! ```
//!
//! What stands over the worn lens is reckoned by the one equation of [`crate::retinoscopy`] at its own place, the
//! distance measured to there. Its net is brought back by the gap as [`crate::vertex`] does it, and added as
//! [`crate::contact`] adds, so cylinders may cross at any angle. Dioptres at the worn lens; the gap 0 to 30 mm. The
//! worn lens is taken as engraved, for a thin lens. Both steps stand in every optics text.
//!
//! ```
//! use optics::SphereCyl;
//! use optics::retinoscopy::{Setup, WorkingDistance, WorkingLens, over_lens};
//! use optics::Cell;
//!
//! let glasses = SphereCyl::parse("+2.50 / −1.00 × 90")?;
//! let setup = Setup::new(WorkingDistance::from_cm(67.0)?, Some(WorkingLens::new(1.5, Cell::Back)?));
//! // A +1.50 alone is not quite enough: +0.50 more is neutral.
//! let over = SphereCyl::sphere(0.50);
//! let found = over_lens::found(&glasses, &over, &setup, 10.0)?;
//! assert_eq!(found.refraction.to_string(), "+3.01 / −1.00 × 90");
//! assert_eq!(found.sentence(), "in place of +2.50 / −1.00 × 90 goes +3.00 / −1.00 × 90");
//! # Ok::<(), optics::OpticsError>(())
//! ```

use super::{Caution, HandStep, HeldOver, Neutral, Retinoscopy, Setup, caution};
use crate::{Line, OpticsError, SphereCyl, Step, contact, limits, vertex};
use ::words::optics::retinoscopy as say;

/// What was found over a worn lens.
#[derive(Debug, Clone, PartialEq)]
pub struct OverLens {
    /// The lens worn.
    pub worn: SphereCyl,
    /// What was found over it, at its own place. Its hand says what to do with the lenses held over.
    pub over: Retinoscopy,
    /// The refraction at the worn lens in minus form, unrounded.
    pub refraction: SphereCyl,
    /// The working, line by line, from what was observed to the refraction on the trial-lens step.
    pub working: Vec<Line>,
    /// What is worth a second thought, the gravest first.
    pub cautions: Vec<Caution>,
}

/// The refraction from a worn lens and what was neutral over it, without the working lens, so many millimetres before it.
///
/// # Errors
/// [`OpticsError::OutOfRange`] for the gap; [`OpticsError::NotANumber`] for an endless lens;
/// [`OpticsError::PastItsFocus`] where what stands over comes to a focus within the gap.
pub fn found(
    worn: &SphereCyl,
    over: &SphereCyl,
    setup: &Setup,
    gap_mm: f64,
) -> Result<OverLens, OpticsError> {
    let gap = limits::over_gap_mm(gap_mm)?;
    let over = super::net(&Neutral::InFrame(*over), setup);
    let moved = vertex::effective_sphero_cyl(&over.net, gap, 0.0)?;
    let refraction = contact::together(&[*worn, moved])?;
    let in_path = contact::together(&[*worn, over.in_path])?;
    Ok(OverLens {
        worn: *worn,
        working: working(worn, &over, &moved, &refraction),
        cautions: caution::all(&in_path, setup),
        over,
        refraction,
    })
}

/// The refraction from what was held over a worn lens, as [`super::net`] gives it.
///
/// # Panics
/// Never: what is held over is refused where, with the strongest working lens, it could come to a focus within the gap.
pub(super) fn net(held: &HeldOver, setup: &Setup) -> Retinoscopy {
    let found = found(held.worn(), held.over(), setup, held.gap_mm())
        .expect("what is held over reaches beyond the gap");
    let in_path = contact::together(&[found.worn, found.over.in_path])
        .expect("lenses that are worn and held are finite");
    Retinoscopy {
        in_path,
        net: found.refraction,
        hand: HandStep::InPlaceOf {
            worn: found.worn,
            goes: found.goes(),
        },
        working: found.working,
        cautions: found.cautions,
    }
}

/// The lines of what was found over, up to its net, and how it joins the worn lens.
fn working(
    worn: &SphereCyl,
    over: &Retinoscopy,
    moved: &SphereCyl,
    refraction: &SphereCyl,
) -> Vec<Line> {
    let to_net = over
        .working
        .iter()
        .take_while(|line| line.label != say::net());
    let mut lines: Vec<Line> = to_net.cloned().collect();
    lines.extend([
        Line::new(say::found_over(), over.net),
        Line::new(say::same_at_worn(), moved),
        Line::new(say::lens_worn(), worn),
        Line::new(say::refraction(), refraction),
        Line::new(
            say::refraction_rounded(),
            refraction.rounded(Step::Quarter).value,
        ),
    ]);
    lines
}

impl OverLens {
    /// The refraction on the quarter step and in the worn lens's form of cylinder.
    fn goes(&self) -> SphereCyl {
        let refraction = if self.worn.cylinder_power() > 0.0 {
            self.refraction.plus_form()
        } else {
            self.refraction
        };
        refraction.rounded(Step::Quarter).value
    }

    /// What it comes to in one plain sentence.
    pub fn sentence(&self) -> String {
        sentence(&self.worn, &self.goes())
    }
}

/// What is to be done about a worn lens, in one plain sentence.
pub(super) fn sentence(worn: &SphereCyl, goes: &SphereCyl) -> String {
    let (worn, goes) = (worn.to_string(), goes.to_string());
    if goes == worn {
        say::stands(&worn)
    } else {
        say::in_place_of(&worn, &goes)
    }
}
