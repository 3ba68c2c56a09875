//! Near: where the person reads, what they accept for it, how far it is clear, and what low vision needs beside it.
//!
//! The addition to begin with is derived ([`Near::tentative`]) and never stored; the trial at the chair decides.

use ::words::record::sections as say;
use optics::acuity::{NearAcuity, Print};
use optics::near::{Share, Tentative, hofstetter, tentative};
use optics::{OpticsError, limits};
use serde::{Deserialize, Serialize};

use super::Filled;
use super::kind::{blanks, halves};
use crate::check::{Checks, FieldError};
use crate::finding::{Eye, Eyes, Finding};
use crate::summary::Age;

/// What helps near by.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Near {
    /// What is read or done there, and where: the tray, the lap, the table.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub task: String,
    /// How far away that is, measured from the eyes, in centimetres.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub distance_cm: Finding<f64>,
    /// The amplitude of accommodation where it was measured, in dioptres.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub amplitude_d: Finding<f64>,
    /// The addition that each eye accepted, in dioptres.
    pub accepted_d: Eyes<Finding<f64>>,
    /// Between what distances it is clear with that.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub clear: Finding<ClearBetween>,
    /// What both eyes read with that.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub read: Finding<PrintRead>,
    /// What magnifies, where an addition is not enough.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub magnified: Finding<Magnified>,
}

/// Between what distances it is clear.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct ClearBetween {
    /// The nearest, in centimetres.
    pub nearest_cm: f64,
    /// The farthest, in centimetres.
    pub farthest_cm: f64,
}

/// Print that was read, and how far away. A size without its distance says nothing of the eye.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct PrintRead {
    /// The smallest print.
    pub print: PrintSize,
    /// In centimetres from the eyes.
    pub at_cm: f64,
}

/// A size of print. A number of Jaeger's is none, for no size belongs to it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PrintSize {
    /// In points: N8 is 8.
    N(f64),
    /// In M units.
    M(f64),
}

/// What magnifies.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Magnified {
    /// How many times.
    pub times: f64,
    /// By what: a hand magnifier, a stand, a screen.
    pub by: String,
}

impl PrintRead {
    /// The acuity that it is.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] for a size or a distance that nobody reads.
    pub fn acuity(&self) -> Result<NearAcuity, OpticsError> {
        let print = match self.print {
            PrintSize::N(points) => Print::n(points)?,
            PrintSize::M(units) => Print::m(units)?,
        };
        NearAcuity::new(print, self.at_cm)
    }
}

impl Near {
    /// The addition to begin with at the distance measured: from the amplitude measured, else from Hofstetter's mean at this
    /// age. Nothing where neither distance nor age is known.
    pub fn tentative(&self, age: Option<Age>) -> Option<Tentative> {
        let years = age.map(|age| f64::from(age.years));
        let amplitude = match self.amplitude_d.done() {
            Some(measured) => *measured,
            None => hofstetter(years?).ok()?.mean,
        };
        let share = years.map_or(Ok(Share::Half), Share::for_age).ok()?;
        tentative(*self.distance_cm.done()?, amplitude, share).ok()
    }
}

impl Filled for Near {
    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        checks.number("distance_cm", &self.distance_cm, limits::near_cm);
        checks.number("amplitude_d", &self.amplitude_d, limits::amplitude);
        for (eye, add) in self.accepted_d.each() {
            checks.measured(eye, "accepted_d", add, limits::add_or_none);
        }
        checks.reason_of("clear", &self.clear);
        if let Some(clear) = self.clear.done() {
            checks.range("clear.nearest_cm", limits::near_cm(clear.nearest_cm));
            checks.range("clear.farthest_cm", limits::clear_to_cm(clear.farthest_cm));
            if clear.nearest_cm > clear.farthest_cm {
                checks.say("clear", say::near_beyond_far());
            }
        }
        checks.reason_of("read", &self.read);
        if let Some(Err(error)) = self.read.done().map(PrintRead::acuity) {
            checks.say("read", error.to_string());
        }
        checks.reason_of("magnified", &self.magnified);
        if let Some(magnified) = self.magnified.done() {
            checks.range("magnified.times", limits::magnified(magnified.times));
            checks.text("magnified.by", &magnified.by, say::ask_magnifier());
        }
        checks.done()
    }

    fn unanswered(&self) -> Vec<Eye> {
        blanks(&self.accepted_d)
    }

    fn halves(&self) -> Vec<(Eye, String, bool)> {
        halves(&self.accepted_d, "accepted_d")
    }
}
