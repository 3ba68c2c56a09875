//! Pressure in words.

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
            Self::Applanation => "applanation".into(),
            Self::Rebound => "rebound".into(),
            Self::NonContact => "puff of air".into(),
            Self::Other(kind) => filled(kind).unwrap_or_else(|| "another device".into()),
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
            (None, _) => "no reading".into(),
        }
    }
}

impl Taken {
    /// "rebound, 14:05, after dilating drops".
    pub fn heading(&self) -> String {
        let after = if self.after_dilating {
            ", after dilating drops"
        } else {
            ""
        };
        let at = self.at.format("%H:%M");
        format!("{}, {at}{after}", self.device.in_words())
    }
}

impl Reads for Pressure {
    fn read(&self, lines: &mut Lines) {
        for taken in &self.taken {
            let eyes = taken.eyes.map(|found| found.in_words(Readings::in_words));
            if eyes.right.is_none() && eyes.left.is_none() {
                lines.one(taken.heading(), "no reading");
            }
            lines.eyes(taken.heading(), eyes);
            lines.one("how it was borne", &*taken.note);
        }
    }
}
