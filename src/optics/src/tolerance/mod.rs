//! Finished spectacles as ordered against as measured.
//!
//! ```text
//! off = |measured − ordered|      within where off ≤ limit, both in whole hundredths
//! axis: the small way round, modulo 180      pair: (right − left) measured − (right − left) ordered
//! ```
//!
//! A [`Standard`] is a table of limits with its edition, its source, and for each cell whether it was seen in print or
//! only remembered; a [`Verdict`] carries that on. Both lenses are put into one sign form first, so most plus meridian
//! stands against most plus meridian, cylinder against cylinder. The limit on both principal meridians is taken by the
//! stronger one, as the tables of ANSI Z80.1-1999 say; the prism limits that are stated as a displacement are reckoned
//! with the stronger lens of the pair along that direction, which is this project's reading.
//!
//! Dioptres, degrees, prism dioptres and millimetres, in the ranges of [`crate::limits`]. A reading is never rounded
//! toward its limit: what lies between two hundredths counts as the farther, save that an eighth of a dioptre counts as
//! the 0.12 that it is written as. A pass that one more step of the focimeter would fail is [`Outcome::Borderline`]
//! (common practice, no source).
//!
//! ```
//! use optics::tolerance::{ANSI_Z80_1_2015, Finished, Measured, Ordered, Outcome, ReadTo};
//! use optics::{Eyes, SphereCyl};
//!
//! let ordered = Finished::new(SphereCyl::sphere(-2.0))?;
//! let measured = Finished::new(SphereCyl::sphere(-2.12))?;
//! let report = ANSI_Z80_1_2015.judge(
//!     &Ordered(Eyes { right: ordered, left: ordered }),
//!     &Measured { lenses: Eyes { right: measured, left: ordered }, read_to: ReadTo::Sixteenth },
//! );
//! assert_eq!(report.verdicts[0].outcome, Outcome::Borderline);
//! assert_eq!(
//!     report.verdicts[0].sentence(),
//!     "right power along 180: ordered −2.00, measured −2.12, 0.12 off where 0.13 is allowed: within, but borderline"
//! );
//! # Ok::<(), optics::OpticsError>(())
//! ```

mod finished;
mod judge;
mod reckoning;
mod standard;
mod tables;
mod verdict;

pub use finished::{Finished, Measured, Ordered, ReadTo};
pub use reckoning::Hundredths;
pub use standard::{Allowed, Band, Basis, Imbalance, PowerRow, PrismRow, Standard};
pub use tables::{ANSI_Z80_1_2015, ANSI_Z80_1_2015_PROGRESSIVE, ISO_21987_2017};
pub use verdict::{Outcome, Report, Unjudged, Verdict, What, Why};
