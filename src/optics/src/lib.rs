//! Lens and eye arithmetic: pure functions over dioptres and degrees, without input, output or a clock.
//!
//! A lens is written as sphere, cylinder and axis ([`SphereCyl`]) and added as a [`PowerVector`]. Everything carries full
//! precision until someone asks for a trial-lens step, and then what was lost is said. The rest of the crate is one rule
//! a file: lenses in [`contact`] and standing [`off_axis`], the [`spread`] of readings and how far
//! [`chi_square`] lets them disagree, [`thick`] lenses, [`vergence`],
//! [`vertex`] distance, the [`cells`] of a trial frame, the one [`retinoscopy`] equation, the allowance for a near chart
//! ([`far`]), [`acuity`] on any scale at any distance, help for [`near`], [`prism`], the [`tolerance`] of finished
//! spectacles, the [`change`] from one prescription to another, and the [`limits`] of what a field accepts.
//!
//! [`sums`] asks most of it in a person's own words, and is how the app and the command reach what no page of an exam
//! needs. What is public without a user there: [`PowerMatrix::trace`] and [`PowerMatrix::determinant`], by which checks
//! from outside hold the matrix; and [`retinoscopy::reflex::Run::middle_mm`], for whoever draws a reflex and not its edges
//! alone.
//!
//! An eye examined at 67 cm with no working lens is neutral with +3.50 in the meridian 180 and +2.00 in the meridian 90:
//!
//! ```
//! use optics::retinoscopy::{self, Neutral, Setup, WorkingDistance};
//!
//! let neutral = Neutral::two_meridians(180.0, 3.50, 2.00)?;
//! let setup = Setup::new(WorkingDistance::from_cm(67.0)?, None);
//! let found = retinoscopy::net(&neutral, &setup);
//!
//! assert_eq!(found.in_path.to_string(), "+3.50 / −1.50 × 180");
//! assert_eq!(found.net.to_string(), "+2.01 / −1.50 × 180");
//! assert_eq!(found.hand.sentence(), "change the sphere +3.50 to +2.00");
//!
//! let to_order = found.net.rounded(optics::Step::Quarter);
//! assert_eq!(to_order.value.to_string(), "+2.00 / −1.50 × 180");
//! assert!(to_order.lost < 0.01);
//! # Ok::<(), optics::OpticsError>(())
//! ```

#![warn(clippy::disallowed_methods)]

pub mod acuity;
mod angle;
pub mod cells;
pub mod change;
pub mod chi_square;
pub mod contact;
mod crossed;
mod cylinder_sign;
mod error;
mod exact;
mod eye;
pub mod far;
pub mod format;
pub mod limits;
mod line;
mod matrix;
pub mod near;
pub mod off_axis;
mod power_vector;
pub mod prism;
pub mod retinoscopy;
mod rounding;
mod sphere_cyl;
pub mod spread;
mod step;
pub mod student;
pub mod sums;
pub mod thick;
pub mod tolerance;
pub mod vergence;
pub mod vertex;
pub mod written;

pub use angle::{Axis, Meridian};
pub use cells::Cell;
pub use crossed::CrossedCylinders;
pub use cylinder_sign::CylinderSign;
pub use error::OpticsError;
pub use eye::{Eye, Eyes};
pub use limits::OutOfRange;
pub use line::Line;
pub use matrix::PowerMatrix;
pub use power_vector::PowerVector;
pub use rounding::Rounded;
pub use sphere_cyl::{Cylinder, MeridianPower, SphereCyl};
pub use spread::Spread;
pub use step::Step;
pub use thick::ThickLens;
pub use written::WrittenError;
