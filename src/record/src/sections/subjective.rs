//! Subjective: the lenses that the person chose, at the distance of the chart.

use optics::limits;
use optics::{SphereCyl, vertex};
use serde::{Deserialize, Serialize};

use super::kind::{blanks, halves};
use crate::check::{Checks, FieldError};
use crate::finding::{Eye, Eyes, Finding};
use crate::sections::{Chart, Filled, Seen, Started};

/// The lenses that the person chose.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Subjective {
    /// The chart. The lenses focus the eye at the distance where it was used.
    pub chart: Chart,
    /// The chart was nearer than far, and the lenses are given as found all the same: the person looks no farther than the
    /// room.
    #[serde(default, skip_serializing_if = "is_not")]
    pub for_the_room: bool,
    /// From the back of the trial lens to the cornea in millimetres, where it was measured.
    pub vertex_mm: Option<f64>,
    /// What is added for near, the same to both eyes.
    pub add: Option<NearAdd>,
    /// The lens of each eye.
    pub eyes: Eyes<Finding<SubjectiveEye>>,
    /// What each eye started from, where it was carried over from retinoscopy.
    #[serde(default, skip_serializing_if = "nothing_started")]
    pub started: Eyes<Option<Started>>,
}

#[allow(clippy::trivially_copy_pass_by_ref, reason = "serde passes it so")]
const fn is_not(given: &bool) -> bool {
    !*given
}

fn nothing_started(started: &Eyes<Option<Started>>) -> bool {
    started.right.is_none() && started.left.is_none()
}

/// One eye's lens, and what it reads with it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SubjectiveEye {
    /// The lens for the distance of the chart.
    pub lens: SphereCyl,
    /// What the eye reads with it, where that was tried.
    pub acuity: Option<Seen>,
}

/// What is added to the far lenses for near.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct NearAdd {
    /// Dioptres, above zero.
    pub power: f64,
    /// The distance in centimetres for which it is meant.
    pub at_cm: f64,
}

/// From this many metres on a chart counts as far. Common practice, no source.
pub(crate) const FAR_M: f64 = 6.0;

impl Subjective {
    /// Whether the chart stood nearer than what counts as far.
    pub fn chart_is_near(&self) -> bool {
        self.chart.used_at_m < FAR_M
    }

    /// Whether a lens is strong enough for its distance from the eye to matter, and no distance is written down.
    pub fn wants_vertex(&self) -> bool {
        self.vertex_mm.is_none()
            && self
                .eyes
                .each()
                .iter()
                .filter_map(|(_, finding)| finding.done())
                .any(|eye| vertex::matters(&eye.lens))
    }
}

impl Filled for Subjective {
    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        self.chart.check(&mut checks);
        if let Some(vertex_mm) = self.vertex_mm {
            checks.range("vertex_mm", limits::vertex_mm(vertex_mm));
        }
        if let Some(add) = self.add {
            checks.range("add.power", limits::add(add.power));
            checks.range("add.at_cm", limits::near_cm(add.at_cm));
        }
        for (eye, finding) in self.eyes.each() {
            checks.reason(eye, "lens", finding);
            if let Some(found) = finding.done() {
                checks.lens(eye, &found.lens);
                if let Some(sentence) = found.acuity.and_then(Seen::slip) {
                    checks.say(Checks::name(eye, "acuity"), sentence);
                }
            }
        }
        checks.done()
    }

    fn unanswered(&self) -> Vec<Eye> {
        blanks(&self.eyes)
    }

    fn halves(&self) -> Vec<(Eye, String, bool)> {
        halves(&self.eyes, "lens")
    }
}
