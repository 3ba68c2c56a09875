//! Pressure: by which device, when, every reading, and the mean derived from them.
//!
//! Devices disagree: in healthy people over 75 a rebound tonometer and one of Goldmann's kind differ by up to about 4 mmHg
//! either way 19 times in 20 (one comparison, seen as an abstract). So readings of two devices are never put together, and a
//! mean is that of one.

use ::words::record::sections as say;
use chrono::NaiveTime;
use optics::limits;
use serde::{Deserialize, Serialize};

use super::Filled;
use super::kind::eyes_where;
use crate::check::{Checks, FieldError, blank};
use crate::finding::{Eye, Eyes, Finding};

/// The pressure in the eyes.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Pressure {
    /// Each time that it was taken, by one device.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub taken: Vec<Taken>,
}

/// What one device said at one time.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Taken {
    /// The device.
    pub device: Device,
    /// When, where the tablet was.
    pub at: NaiveTime,
    /// Whether dilating drops had been given before.
    #[serde(default)]
    pub after_dilating: bool,
    /// The readings of each eye.
    pub eyes: Eyes<Finding<Readings>>,
    /// How the person bore it, and what it says of the readings.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
}

/// What pressure is taken with.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Device {
    /// Applanation of Goldmann's kind, hand-held or at the slit lamp.
    Applanation,
    /// A rebound tonometer.
    Rebound,
    /// A puff of air.
    NonContact,
    /// Another, by its kind.
    Other(String),
}

/// The readings of one eye, in mmHg.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Readings {
    /// Each in its order.
    pub mmhg: Vec<f64>,
}

impl Readings {
    /// Their mean in mmHg; nothing where there are none.
    pub fn mean_mmhg(&self) -> Option<f64> {
        let count = self.mmhg.len();
        (count > 0).then(|| self.mmhg.iter().sum::<f64>() / count as f64)
    }
}

impl Taken {
    /// The mean of an eye in mmHg.
    pub fn mean_mmhg(&self, eye: Eye) -> Option<f64> {
        self.eyes.of(eye).done()?.mean_mmhg()
    }
}

impl Filled for Pressure {
    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        for taken in &self.taken {
            if matches!(&taken.device, Device::Other(kind) if blank(kind)) {
                checks.say("device", say::ask_device());
            }
            for (eye, finding) in taken.eyes.each() {
                checks.reason(eye, "mmhg", finding);
                let Some(readings) = finding.done() else {
                    continue;
                };
                if readings.mmhg.is_empty() {
                    checks.say(Checks::name(eye, "mmhg"), say::ask_reading());
                }
                for reading in &readings.mmhg {
                    checks.range(Checks::name(eye, "mmhg"), limits::pressure_mmhg(*reading));
                }
            }
        }
        checks.done()
    }

    /// An eye that no device was held to, and of which nobody said why.
    fn unanswered(&self) -> Vec<Eye> {
        let unsaid = Eyes {
            right: Eye::Right,
            left: Eye::Left,
        };
        eyes_where(&unsaid, |eye| {
            self.taken
                .iter()
                .all(|taken| taken.eyes.of(*eye).is_blank())
        })
    }
}
