//! What an eye's subjective started from, with the working distance dealt with.

use ::words::record::sections as say;
use optics::retinoscopy::WorkingDistance;
use optics::{SphereCyl, Step, format};
use serde::{Deserialize, Serialize};

use super::{Retinoscopy, Subjective, SubjectiveEye};
use crate::finding::{Eye, Finding};

/// The lens that today's subjective started from: retinoscopy's net on the quarter step.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Started {
    /// The lens, without the working distance.
    pub lens: SphereCyl,
    /// The working distance that was taken off.
    pub taken_off: WorkingDistance,
}

impl Started {
    /// "starts from retinoscopy: +3.25 / −1.50 × 90, 67 cm taken off".
    pub fn sentence(&self) -> String {
        let cm = format::plain(self.taken_off.cm(), 1);
        say::starts_from_retinoscopy(&self.lens, &cm)
    }
}

impl Retinoscopy {
    /// What a subjective of this eye starts from. Nothing where the eye was not done.
    pub fn start(&self, eye: Eye) -> Option<Started> {
        let net = self.net(eye)?.net;
        Some(Started {
            lens: net.rounded(Step::Quarter).value,
            taken_off: self.setup.distance,
        })
    }
}

impl Subjective {
    /// Starts every eye that has no answer yet from retinoscopy, at its vertex distance where none stands. A lens that stands,
    /// and a reason why there is none, stay.
    pub fn start_from(&mut self, found: &Retinoscopy) {
        self.vertex_mm = self.vertex_mm.or(found.vertex_mm);
        for eye in Eye::BOTH {
            if !self.eyes.of(eye).is_blank() {
                continue;
            }
            if let Some(start) = found.start(eye) {
                *self.eyes.of_mut(eye) = Finding::Done(SubjectiveEye {
                    lens: start.lens,
                    acuity: None,
                });
                *self.started.of_mut(eye) = Some(start);
            }
        }
    }
}
