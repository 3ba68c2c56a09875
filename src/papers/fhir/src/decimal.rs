//! Decimals whose zeros count: FHIR says that 2.50 is not 2.5.

use serde::{Serialize, Serializer};
use serde_json::value::RawValue;

/// A number with so many places after the point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Decimal {
    value: f64,
    places: usize,
}

impl Decimal {
    /// A number with so many places after the point; nothing for what is no number.
    pub fn new(value: f64, places: usize) -> Option<Self> {
        value.is_finite().then_some(Self { value, places })
    }

    /// A power in dioptres: two places, or three where an eighth needs them.
    pub fn dioptres(value: f64) -> Option<Self> {
        let hundredths = value * 100.0;
        let whole = (hundredths - hundredths.round()).abs() < 1e-6;
        Self::new(value, if whole { 2 } else { 3 })
    }
}

impl std::fmt::Display for Decimal {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let written = format!("{:.*}", self.places, self.value);
        let is_zero = written.bytes().all(|byte| b"-0.".contains(&byte));
        f.write_str(if is_zero {
            written.trim_start_matches('-')
        } else {
            &written
        })
    }
}

impl Serialize for Decimal {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let raw = RawValue::from_string(self.to_string());
        raw.map_err(serde::ser::Error::custom)?
            .serialize(serializer)
    }
}
