//! The working distance.
//!
//! `1 / distance in metres`, in dioptres, from the centimetres as measured. 67 cm is 1.49 D and is usually called 1.50:
//! the exact value is reckoned with, the usual one is shown beside it. Measured from the retinoscope to the trial lens,
//! not to the cornea. 10 to 120 cm are accepted; 40 to 80 are usual, shorter ones are deliberate for a dull reflex
//! (common practice, no source).

use crate::OpticsError;
use crate::format::plain;
use crate::limits;
use crate::step::Step;
use crate::vergence;
use ::words::optics::retinoscopy as say;
use serde::{Deserialize, Serialize};
use std::fmt;

/// How far the retinoscope is from the trial lens.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct WorkingDistance {
    cm: f64,
}

impl WorkingDistance {
    /// Takes a distance in centimetres, 10 to 120.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] outside that.
    pub fn from_cm(cm: f64) -> Result<Self, OpticsError> {
        Ok(Self {
            cm: limits::distance_cm(cm)?,
        })
    }

    /// Centimetres as measured.
    pub const fn cm(self) -> f64 {
        self.cm
    }

    /// The exact reciprocal in dioptres: 1.4925 for 67 cm.
    pub fn dioptres(self) -> f64 {
        vergence::reciprocal(self.cm / 100.0)
    }

    /// What the distance is usually called, in quarter dioptres: 1.50 for 67 cm.
    pub fn usual_dioptres(self) -> f64 {
        Step::Quarter.nearest(self.dioptres())
    }

    /// What the distance is usually called, in words: "1.50" for 67 cm.
    pub fn usual(self) -> String {
        format!("{:.2}", self.usual_dioptres())
    }

    /// How much the result changes for each centimetre that the distance is out, `1 / (100 w²)` in dioptres, w in metres.
    pub fn dioptres_per_cm(self) -> f64 {
        self.dioptres() / self.cm
    }

    /// Whether the distance lies in the usual 40 to 80 cm.
    pub fn is_usual(self) -> bool {
        (40.0..=80.0).contains(&self.cm)
    }
}

/// "67 cm is 1.49 D, usually called 1.50"; the second half is left out where both are the same.
impl fmt::Display for WorkingDistance {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let exact = format!("{:.2}", self.dioptres());
        let usual = self.usual();
        f.write_str(&say::distance_is(&plain(self.cm, 1), &exact))?;
        if exact == usual {
            Ok(())
        } else {
            f.write_str(&say::usually_called(&usual))
        }
    }
}

impl TryFrom<f64> for WorkingDistance {
    type Error = OpticsError;
    fn try_from(cm: f64) -> Result<Self, OpticsError> {
        Self::from_cm(cm)
    }
}

impl From<WorkingDistance> for f64 {
    fn from(distance: WorkingDistance) -> Self {
        distance.cm
    }
}
