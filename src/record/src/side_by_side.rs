//! What was found of one eye, from every source, to be looked at side by side.

use optics::SphereCyl;
use optics::retinoscopy::bracket::Source as SweptFrom;
use optics::retinoscopy::{Ellipse, EyeBracket};

use crate::exam::Exam;
use crate::finding::Eye;
use crate::sections::Retinoscopy;
use crate::summary::Source;

/// Where a finding comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FoundBy {
    /// Today's retinoscopy.
    Retinoscopy,
    /// Last time.
    LastTime,
    /// A machine.
    Machine,
    /// The glasses that are worn.
    Worn,
    /// The person chose it.
    Chosen,
}

/// One finding.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beside {
    /// Where it comes from.
    pub by: FoundBy,
    /// What was found, unrounded where it was reckoned.
    pub lens: SphereCyl,
    /// How surely its cylinder is known: it lies in this 90 times in 100. Only where sweeps say so.
    pub within: Option<Ellipse>,
}

impl Beside {
    const fn new(by: FoundBy, lens: SphereCyl) -> Self {
        Self {
            by,
            lens,
            within: None,
        }
    }
}

/// How often the ellipse holds the cylinder.
const HELD: f64 = 0.90;

impl Retinoscopy {
    /// What was found of an eye today, what it was swept from, and what was found last time, today's first; `says` is what its
    /// sweeps say.
    pub fn side_by_side(
        &self,
        eye: Eye,
        says: &EyeBracket,
        last: Option<SphereCyl>,
    ) -> Vec<Beside> {
        let start = self.swept.of(eye).sweeping.start;
        let swept_from = start.and_then(|start| {
            let by = match start.from {
                SweptFrom::Machine => FoundBy::Machine,
                SweptFrom::Worn => FoundBy::Worn,
                SweptFrom::LastTime | SweptFrom::FellowEye => return None,
            };
            Some(Beside::new(by, start.lens))
        });
        let last = last.map(|lens| Beside::new(FoundBy::LastTime, lens));
        let today = self.net(eye).map(|found| Beside {
            within: self.within(eye, says),
            ..Beside::new(FoundBy::Retinoscopy, found.net)
        });
        [today, swept_from, last].into_iter().flatten().collect()
    }

    /// A finding that does not follow the sweeps is not known as surely as they say.
    fn within(&self, eye: Eye, says: &EyeBracket) -> Option<Ellipse> {
        if !self.follows_bracket(eye, says) {
            return None;
        }
        let fit = says.fit().ok()?;
        fit.ellipse(HELD).ok()
    }
}

impl Exam {
    /// What retinoscopy found of an eye and what was chosen in the end, where both were done and are settled.
    pub fn side_by_side(&self, eye: Eye) -> Vec<Beside> {
        let found = self.retinoscopy().settled().map(|version| {
            let says = version.value.swept.of(eye).sweeping.bracket();
            let mut found = version.value.side_by_side(eye, &says, None);
            found.retain(|beside| beside.by == FoundBy::Retinoscopy);
            found
        });
        let chosen = self
            .final_lens(eye)
            .filter(|last| last.source == Source::Subjective)
            .map(|last| Beside::new(FoundBy::Chosen, last.lens));
        let mut both = found.unwrap_or_default();
        both.extend(chosen);
        both
    }
}
