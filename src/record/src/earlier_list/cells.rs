//! Lenses, additions and pressures as they stand in cells.

use ::words::record::lists as say;
use optics::SphereCyl;
use optics::written::parse_power;

/// Reads the sphere, or the addition: where a whole column writes its minus signs and no plus, what has no sign is plus.
pub(super) fn power(text: &str, plus_is_left_out: bool) -> Result<f64, String> {
    let bare = text
        .trim()
        .starts_with(|letter: char| letter.is_ascii_digit());
    let read = if bare && plus_is_left_out {
        parse_power(&format!("+{}", text.trim()))
    } else {
        parse_power(text)
    };
    read.map_err(|error| error.to_string())
}

/// Whether a column is one of plain numbers: minus signs stand, and no plus does.
pub(super) fn leaves_plus_out<'a>(values: impl Iterator<Item = &'a str>) -> bool {
    let (mut minus, mut plus) = (false, false);
    for value in values {
        minus |= value.trim().starts_with(['-', '−']);
        plus |= value.trim().starts_with('+');
    }
    minus && !plus
}

/// Puts a lens together. An axis without a cylinder says nothing; a cylinder without an axis is none that anybody could make.
pub(super) fn lens(sphere: f64, cylinder: Option<f64>, axis: &str) -> Result<SphereCyl, String> {
    let Some(cylinder) = cylinder.filter(|cylinder| *cylinder != 0.0) else {
        return Ok(SphereCyl::sphere(sphere));
    };
    if axis.trim().is_empty() {
        return Err(say::no_axis().to_owned());
    }
    let axis = number(axis.trim().trim_end_matches('°'))?;
    SphereCyl::new(sphere, cylinder, axis).map_err(|error| error.to_string())
}

/// Reads a pressure, with its unit or without.
pub(super) fn pressure(text: &str) -> Result<f64, String> {
    let lower = text.trim().to_lowercase();
    number(lower.trim_end_matches("mmhg").trim_end()).map_err(|_| say::no_pressure(&text))
}

fn number(text: &str) -> Result<f64, String> {
    let read: Option<f64> = text.replace(',', ".").parse().ok();
    read.filter(|number| number.is_finite())
        .ok_or_else(|| say::no_number(&text))
}
