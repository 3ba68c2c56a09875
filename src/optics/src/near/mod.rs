//! Help for near: what an eye can still accommodate, the addition to begin with, how far it sees clearly, and how much
//! larger print must be for an eye with low vision.
//!
//! Every figure here is a beginning. Four ways to estimate an addition each differed from the one worn in the end by less
//! than 0.25 D on average, with limits of agreement wider than ±0.50 D (Arq Bras Oftalmol 2013;76:218-220): the trial at the
//! chair, the tray or the lap decides.
//!
//! ```
//! use optics::near::{Share, clear_range, tentative};
//!
//! let add = tentative(40.0, 2.0, Share::Half)?;
//! assert!((add.dioptres() - 1.50).abs() < 1e-9);
//! let clear = clear_range(add.dioptres(), 2.0)?;
//! assert!(clear.contains(40.0));
//! # Ok::<(), optics::OpticsError>(())
//! ```

mod addition;
mod amplitude;
mod low_vision;
mod range;

pub use addition::{AddRange, Share, Tentative, by_age, in_reserve, tentative};
pub use amplitude::{Expected, anderson, donders, hofstetter};
pub use low_vision::{
    FIXED_RESERVE, acuity_reserve, kestenbaum, kestenbaum_for, magnification,
    magnification_at_near_point, magnification_needed, reading_distance_cm,
};
pub use range::{ClearRange, clear_range};
