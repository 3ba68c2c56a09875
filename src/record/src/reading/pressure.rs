//! Pressure in words.

use ::words::record::reading as say;
use optics::format::plain;

use super::{Lines, Reads, filled};
use crate::sections::{Device, Pressure, Readings, Taken};

impl Device {
    /// Each kind; the last is still to be named.
    pub const fn all() -> [Self; 4] {
        [
            Self::Rebound,
            Self::Applanation,
            Self::NonContact,
            Self::Other(String::new()),
        ]
    }

    /// "rebound", or the other's name.
    pub fn in_words(&self) -> String {
        match self {
            Self::Applanation => say::applanation().into(),
            Self::Rebound => say::rebound().into(),
            Self::NonContact => say::puff_of_air().into(),
            Self::Other(kind) => filled(kind).unwrap_or_else(|| say::another_device().into()),
        }
    }
}

impl Readings {
    /// "16 mmHg (15, 16, 17)", the mean first where there are several.
    pub fn in_words(&self) -> String {
        let each: Vec<String> = self.mmhg.iter().map(|mmhg| plain(*mmhg, 1)).collect();
        match (self.mean_mmhg(), each.as_slice()) {
            (Some(_), [only]) => format!("{only} mmHg"),
            (Some(mean), several) => format!("{} mmHg ({})", plain(mean, 1), several.join(", ")),
            (None, _) => say::no_reading().into(),
        }
    }
}

impl Taken {
    /// "rebound, 14:05, after dilating drops".
    pub fn heading(&self) -> String {
        let at = self.at.format("%H:%M");
        format!("{}, {at}{}", self.device.in_words(), self.after())
    }

    /// "rebound, after dilating drops": without the time, so that the pressures of two exams stand on one line.
    fn label(&self) -> String {
        format!("{}{}", self.device.in_words(), self.after())
    }

    fn after(&self) -> &'static str {
        if self.after_dilating {
            say::after_dilating()
        } else {
            ""
        }
    }
}

impl Reads for Pressure {
    fn read(&self, lines: &mut Lines) {
        for taken in &self.taken {
            let eyes = taken.eyes.map(|found| found.in_words(Readings::in_words));
            if eyes.right.is_none() && eyes.left.is_none() {
                lines.one(taken.label(), say::no_reading());
            }
            lines.eyes(taken.label(), eyes);
            lines.one(
                say::pressure_taken_at(),
                taken.at.format("%H:%M").to_string(),
            );
            lines.one(say::how_borne(), &*taken.note);
        }
    }
}
