//! All the sweeps of one eye, as they are written down.

use super::bracket::Start;
use super::{Circumstances, EyeBracket, Sweep};
use crate::Meridian;
use serde::{Deserialize, Serialize};

/// What one eye was swept from, under what circumstances, and every sweep in its order.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct Sweeping {
    /// What was expected beforehand, and where from; none where nothing was.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub start: Option<Start>,
    /// The eye's circumstances.
    #[serde(default)]
    pub circumstances: Circumstances,
    /// The sweeps, the first first.
    #[serde(default)]
    pub sweeps: Vec<Sweep>,
}

impl Sweeping {
    /// Whether nothing was written down.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// The two meridians to sweep: the one swept last and the one across it, else the principal ones of what was expected,
    /// else 180 and 90. The one nearer to lying comes first.
    pub fn cross(&self) -> [Meridian; 2] {
        let expected = || self.start.and_then(|start| start.lens.cylinder);
        let last = self.sweeps.last().map(|sweep| sweep.meridian);
        let one = last
            .or_else(|| expected().map(|cylinder| cylinder.axis().power_meridian()))
            .unwrap_or(Meridian::HORIZONTAL);
        if one.lies() {
            [one, one.crossed()]
        } else {
            [one.crossed(), one]
        }
    }

    /// What the sweeps say.
    pub fn bracket(&self) -> EyeBracket {
        EyeBracket::new(self, None)
    }

    /// The same, without reckoning again what `before` says already: every tap of a sweep asks for it.
    pub fn bracket_after(&self, before: &EyeBracket) -> EyeBracket {
        EyeBracket::new(self, Some(before))
    }

    /// How many sweeps both begin with; none where they stand under other conditions.
    pub(super) fn common(&self, other: &Self) -> Option<usize> {
        let alike = self.start == other.start && self.circumstances == other.circumstances;
        let pairs = self.sweeps.iter().zip(&other.sweeps);
        alike.then(|| pairs.take_while(|(one, other)| one == other).count())
    }
}
