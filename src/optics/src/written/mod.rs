//! Printing and reading a lens as people write it: `+3.25 / −1.50 × 90`, `+0.75 DS`, `0.00`.
//!
//! Reading is forgiving in dress and strict in meaning. It takes
//!
//! - a hyphen or a true minus sign, a point, a comma or a raised point before the decimals, any spaces or none;
//! - a stroke, a semicolon, a comma or nothing between the parts: a comma between two digits is a decimal comma, unless the
//!   number has its decimals already, and any other comma parts;
//! - `D`, `DS`, `DC`, `sph`, `cyl` behind a power, or `sph`, `cyl` ahead of it;
//! - `x`, `×`, `ax`, `axis` or `@` before the axis, `°` or `deg` behind it, or no mark at all where nothing else can be meant;
//! - `plano`, `plan`, `pl` or `∞` for a power of 0;
//! - two plano cylinders at right angles (`+2.00 DC × 180 / +1.00 DC × 90`), and the powers of two meridians
//!   (`+2.00 @ 90 / +1.00 @ 180`): an `@` behind each of two powers names meridians, as on an optical cross, while a
//!   single one behind a cylinder names its axis, for a sphero-cylinder has no other angle.
//!
//! It refuses a power without a sign, a cylinder without an axis, and an axis without a cylinder, since each can turn into a
//! wrong lens. A refusal says at which character ([`WrittenError`]). Powers in dioptres, axis 0 to 180 degrees; how the trade
//! writes a lens is common practice, no source.
//!
//! ```
//! use optics::SphereCyl;
//!
//! let lens = SphereCyl::parse("sph +2,00 cyl -1,00 ax 30")?;
//! assert_eq!(lens.to_string(), "+2.00 / −1.00 × 30");
//!
//! let refused = SphereCyl::parse("+2.00 / 1.00 × 30").unwrap_err();
//! assert_eq!(refused.to_string(), "“1.00” (character 9) has no sign: write +1.00 or −1.00");
//! # Ok::<(), optics::OpticsError>(())
//! ```

mod dress;
mod mistake;
mod read;
mod scan;

pub use dress::{Decimal, Dress, Dressed, Mark, Minus, Plano};
pub use mistake::{Mistake, WrittenError};

use crate::{OpticsError, SphereCyl};
use std::str::FromStr;

impl FromStr for SphereCyl {
    type Err = OpticsError;
    fn from_str(text: &str) -> Result<Self, OpticsError> {
        Self::parse(text)
    }
}

impl SphereCyl {
    /// Reads a lens. See the [module](crate::written) for what is taken.
    ///
    /// # Errors
    /// [`OpticsError::Written`] with a sentence that says at which character.
    pub fn parse(text: &str) -> Result<Self, OpticsError> {
        read::lens(text)
    }
}

/// Reads one power with its sign, in dioptres: `+2.50`, `−1.25 D`, `0.00`, `plano`.
///
/// ```
/// assert_eq!(optics::written::parse_power("−1,25 D"), Ok(-1.25));
/// ```
///
/// # Errors
/// [`OpticsError::Written`] with a sentence that says at which character.
pub fn parse_power(text: &str) -> Result<f64, OpticsError> {
    read::power(text)
}
