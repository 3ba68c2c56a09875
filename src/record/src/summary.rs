//! Short forms for lists and headings.

use ::words::record::exam as say;
use std::fmt;

use chrono::NaiveDate;
use optics::{SphereCyl, Step};
use serde::{Deserialize, Serialize};

use crate::finding::{Eye, Eyes};
use crate::sections::{Retinoscopy, Subjective};

/// An age in whole years.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Age {
    /// Whole years.
    pub years: u16,
    /// Whether it comes from a date of birth rather than from an age that somebody stated.
    pub exact: bool,
}

impl fmt::Display for Age {
    /// `86`, or `about 86`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.exact {
            write!(f, "{}", self.years)
        } else {
            f.write_str(&say::about_years(&self.years))
        }
    }
}

/// Where an exam's lens for an eye comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// The person chose it.
    Subjective,
    /// Nobody could be asked, or nobody was: it rests on retinoscopy alone.
    Retinoscopy,
}

/// An exam's lens for an eye.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FinalLens {
    /// As chosen, or the net of retinoscopy on the quarter-dioptre step.
    pub lens: SphereCyl,
    /// Where it comes from.
    pub source: Source,
}

impl FinalLens {
    /// The lens that was chosen, else retinoscopy's net on the quarter-dioptre step.
    pub(crate) fn of(
        eye: Eye,
        chosen: Option<&Subjective>,
        found: Option<&Retinoscopy>,
    ) -> Option<Self> {
        if let Some(chosen) = chosen.and_then(|chosen| chosen.eyes.of(eye).done()) {
            return Some(Self {
                lens: chosen.lens,
                source: Source::Subjective,
            });
        }
        Some(Self {
            lens: found?.net(eye)?.net.rounded(Step::Quarter).value,
            source: Source::Retinoscopy,
        })
    }
}

/// What the newest exam with a lens found, for a row in a list.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LastNet {
    /// The day of that exam.
    pub on: NaiveDate,
    /// Each eye's lens, where it had one.
    pub eyes: Eyes<Option<FinalLens>>,
}

impl fmt::Display for LastNet {
    /// `R +3.00 / −1.50 × 90 · L +2.75 DS`, leaving out an eye without a lens.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let right = self.eyes.right.map(|found| format!("R {}", found.lens));
        let left = self.eyes.left.map(|found| format!("L {}", found.lens));
        let both: Vec<String> = [right, left].into_iter().flatten().collect();
        f.write_str(&both.join(" · "))
    }
}
