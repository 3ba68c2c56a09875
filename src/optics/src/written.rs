//! Printing and reading a lens as people write it: `+3.25 / −1.50 × 90`, `+0.75 DS`, `0.00`.
//!
//! Reading is forgiving in dress and strict in meaning. It takes a hyphen or a true minus sign, `x` or `×`, any spaces, a
//! comma or a point, a missing stroke, `plano` or `pl`, a trailing `D`, `DS`, `DC` or `°`. It refuses a power without a
//! sign, a cylinder without an axis, and an axis without a cylinder, since each can turn into a wrong lens. Powers in
//! dioptres, axis 0 to 180 degrees; how the trade writes a lens is common practice, no source.

use crate::format::{plain, power};
use crate::{OpticsError, SphereCyl};
use std::fmt;
use std::str::FromStr;

/// A cylinder that would print as 0.00 is not printed: its axis would be a random number.
const PRINTS_AS_ZERO: f64 = 0.005;

impl fmt::Display for SphereCyl {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.cylinder {
            Some(c) if c.power().abs() >= PRINTS_AS_ZERO => write!(
                f,
                "{} / {} × {}",
                power(self.sphere),
                power(c.power()),
                axis_text(c.axis().degrees())
            ),
            _ => {
                let sphere = power(self.mean_sphere());
                let unit = if sphere == "0.00" { "" } else { " DS" };
                write!(f, "{sphere}{unit}")
            }
        }
    }
}

/// Degrees to one decimal, with 180 where rounding gives 0.
fn axis_text(degrees: f64) -> String {
    let text = plain(degrees, 1);
    if text == "0" { "180".to_owned() } else { text }
}

impl FromStr for SphereCyl {
    type Err = OpticsError;
    fn from_str(text: &str) -> Result<Self, OpticsError> {
        Self::parse(text)
    }
}

impl SphereCyl {
    /// Reads a lens. See the [module](self) for what is taken.
    ///
    /// # Errors
    /// [`OpticsError`] with a sentence: unreadable, no sign, cylinder without axis, axis without cylinder, axis out of range.
    pub fn parse(text: &str) -> Result<Self, OpticsError> {
        let plain_text = undressed(text);
        let whole = || text.trim().to_owned();
        let (powers, axis) = match plain_text.split_once('x') {
            Some((powers, axis)) => (powers, Some(axis.trim_end_matches('°'))),
            None => (plain_text.as_str(), None),
        };
        let (sphere, cylinder) = split_powers(powers);
        let sphere = parse_power_of(sphere, text)?;
        match (cylinder, axis) {
            (None, None) => Ok(Self::sphere(sphere)),
            (None, Some(_)) => Err(OpticsError::NoCylinder { text: whole() }),
            (Some(cylinder), None) if parse_power_of(cylinder, text)? == 0.0 => {
                Ok(Self::sphere(sphere))
            }
            (Some(_), None) => Err(OpticsError::NoAxis { text: whole() }),
            (Some(cylinder), Some(axis)) => {
                let cylinder = parse_power_of(cylinder, text)?;
                Self::new(sphere, cylinder, number(axis, text)?)
            }
        }
    }
}

/// Reads one power with its sign, in dioptres: `+2.50`, `−1.25`, `0.00`, `plano`.
///
/// # Errors
/// [`OpticsError::Unreadable`] or [`OpticsError::NoSign`].
pub fn parse_power(text: &str) -> Result<f64, OpticsError> {
    parse_power_of(&undressed(text), text)
}

/// Sphere and cylinder, parted by a stroke or by the cylinder's own sign.
fn split_powers(powers: &str) -> (&str, Option<&str>) {
    if let Some((sphere, cylinder)) = powers.split_once('/') {
        return (sphere, Some(cylinder));
    }
    let second_sign = powers
        .char_indices()
        .skip(1)
        .find(|(_, c)| matches!(c, '+' | '-'));
    match second_sign {
        Some((at, _)) => (&powers[..at], Some(&powers[at..])),
        None => (powers, None),
    }
}

/// Lower case, without spaces, with one kind of minus, cross and point.
fn undressed(text: &str) -> String {
    text.chars()
        .filter(|c| !c.is_whitespace())
        .map(|c| match c {
            '−' | '–' => '-',
            '×' => 'x',
            ',' => '.',
            other => other.to_ascii_lowercase(),
        })
        .collect()
}

/// Reads one undressed power out of `whole`, which the error shows.
fn parse_power_of(undressed: &str, whole: &str) -> Result<f64, OpticsError> {
    if matches!(undressed, "plano" | "pl") {
        return Ok(0.0);
    }
    let digits = undressed
        .strip_suffix("ds")
        .or_else(|| undressed.strip_suffix("dc"))
        .or_else(|| undressed.strip_suffix('d'))
        .unwrap_or(undressed);
    let value = number(digits, whole)?;
    if value != 0.0 && !digits.starts_with(['+', '-']) {
        return Err(OpticsError::NoSign {
            text: digits.to_owned(),
        });
    }
    Ok(value)
}

/// A decimal number; words such as "inf" that the standard reader takes are refused.
fn number(digits: &str, whole: &str) -> Result<f64, OpticsError> {
    let is_decimal = digits
        .chars()
        .all(|c| c.is_ascii_digit() || matches!(c, '+' | '-' | '.'));
    digits
        .parse()
        .ok()
        .filter(|value: &f64| is_decimal && value.is_finite())
        .ok_or_else(|| OpticsError::Unreadable {
            text: whole.trim().to_owned(),
        })
}
