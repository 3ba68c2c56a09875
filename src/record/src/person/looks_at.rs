//! What a person looks at all day: for that, and not for a chart, are glasses made.

use ::words::record::person as say;
use optics::format;
use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::check::{FieldError, blank};

/// Something that a person looks at, and how far away it is.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct LooksAt {
    /// What: the television, a book, knitting, faces at the table.
    pub what: String,
    /// How far it is from the eyes, in centimetres, where somebody measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_cm: Option<u16>,
}

/// What old people are often found to look at. Common practice, no source.
pub const LOOKED_AT: &[fn() -> &'static str] = &[
    say::television,
    say::reading,
    say::knitting_there,
    say::puzzles,
    say::screen_in_hand,
    say::window,
];

/// The nearest and the farthest that is taken for a distance of something looked at, in centimetres. Own choice: a magnifier,
/// and the far end of a lounge.
const BETWEEN_CM: std::ops::RangeInclusive<u16> = 5..=2000;

/// From here on metres read better. Own choice.
const IN_METRES_FROM_CM: u16 = 100;

/// Why a typed distance can't be read.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{}", say::no_distance(.0))]
pub struct NoDistance(String);

impl LooksAt {
    /// Reads a distance in centimetres: `2.8 m`, `35 cm`, `2,8`. A number alone is in metres below 10 and in centimetres from
    /// there on, for nobody sits 10 m from a television nor 9 cm from a book. Nothing for nothing.
    ///
    /// # Errors
    /// [`NoDistance`] for what is none.
    pub fn read_distance(text: &str) -> Result<Option<u16>, NoDistance> {
        let written = text.trim().to_lowercase().replace(',', ".");
        if written.is_empty() {
            return Ok(None);
        }
        let refused = || NoDistance(text.trim().to_owned());
        let (number, unit) = match written.strip_suffix("cm") {
            Some(number) => (number, Some(1.0)),
            None => match written.strip_suffix('m') {
                Some(number) => (number, Some(100.0)),
                None => (written.as_str(), None),
            },
        };
        let number: f64 = number.trim().parse().map_err(|_| refused())?;
        let cm = number * unit.unwrap_or(if number < 10.0 { 100.0 } else { 1.0 });
        if (0.0..=f64::from(u16::MAX)).contains(&cm) {
            Ok(Some(cm.round() as u16))
        } else {
            Err(refused())
        }
    }

    /// The distance as it is written: `2.8 m`, `35 cm`; nothing where nobody measured.
    pub fn distance(&self) -> String {
        match self.at_cm {
            None => String::new(),
            Some(cm) if cm >= IN_METRES_FROM_CM => {
                format!("{} m", format::plain(f64::from(cm) / 100.0, 2))
            }
            Some(cm) => format!("{cm} cm"),
        }
    }

    pub(super) fn check(&self) -> Option<FieldError> {
        let say = |sentence: &str| Some(FieldError::new("looks_at", sentence));
        if blank(&self.what) {
            return say(say::ask_looked_at());
        }
        match self.at_cm {
            Some(cm) if !BETWEEN_CM.contains(&cm) => say(say::looked_at_range()),
            _ => None,
        }
    }
}

impl std::fmt::Display for LooksAt {
    /// `television at 2.8 m`, `reading at 35 cm`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.what.trim())?;
        match self.at_cm {
            None => Ok(()),
            Some(_) => f.write_str(&say::at_distance(&self.distance())),
        }
    }
}
