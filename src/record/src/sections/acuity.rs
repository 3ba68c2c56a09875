//! Acuity: what each eye reads on a letter chart.

use serde::{Deserialize, Serialize};

use super::kind::eyes_where;
use crate::check::{Checks, FieldError};
use crate::finding::{Eye, Eyes, Finding};
use crate::sections::{Chart, Filled, Seen};

/// What each eye reads, with the chart that it was read from.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Acuity {
    /// The chart.
    pub chart: Chart,
    /// What each eye read.
    pub eyes: Eyes<EyeAcuity>,
}

/// What one eye read, without and with the glasses that the person wears.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct EyeAcuity {
    /// Without glasses.
    pub unaided: Finding<Seen>,
    /// With the glasses worn for far.
    pub with_glasses: Finding<Seen>,
    /// The better of the two once more, through a pinhole.
    pub pinhole: Finding<Seen>,
}

impl Filled for Acuity {
    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        self.chart.check(&mut checks);
        for (eye, read) in self.eyes.each() {
            for (part, finding) in read.parts() {
                checks.reason(eye, part, finding);
                if let Some(sentence) = finding.done().copied().and_then(Seen::slip) {
                    checks.say(Checks::name(eye, part), sentence);
                }
            }
        }
        checks.done()
    }

    /// The eyes of which nothing was read and nobody said why. A pinhole alone is no answer.
    fn unanswered(&self) -> Vec<Eye> {
        eyes_where(&self.eyes, |read| {
            read.unaided.is_blank() && read.with_glasses.is_blank()
        })
    }

    fn halves(&self) -> Vec<(Eye, String, bool)> {
        let parts = |(eye, read): (Eye, &EyeAcuity)| {
            read.parts()
                .map(|(part, finding)| (eye, part.to_owned(), finding.is_blank()))
        };
        self.eyes.each().into_iter().flat_map(parts).collect()
    }
}

impl EyeAcuity {
    fn parts(&self) -> [(&'static str, &Finding<Seen>); 3] {
        [
            ("unaided", &self.unaided),
            ("with_glasses", &self.with_glasses),
            ("pinhole", &self.pinhole),
        ]
    }
}
