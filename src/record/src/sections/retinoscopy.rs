//! Retinoscopy: what neutralised each eye, and how it was examined. The net is derived, never stored.

use ::words::record::sections as say;
use optics::retinoscopy::{self, EyeBracket, Held, Neutral, Setup, WorkingDistance};
use optics::{format, limits, vertex};
use serde::{Deserialize, Serialize};

use super::kind::{blanks, halves};
use super::{Filled, Swept};
use crate::check::{Checks, FieldError};
use crate::finding::{Eye, Eyes, Finding};
use crate::summary::Age;

/// What neutralised each eye.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Retinoscopy {
    /// Distance and working lens, common to both eyes.
    pub setup: Setup,
    /// The lenses that neutralised each eye, without the working lens.
    pub eyes: Eyes<Finding<Neutral>>,
    /// The sweeps of each eye, where they were written down one by one.
    #[serde(default, skip_serializing_if = "nothing_swept")]
    pub swept: Eyes<Swept>,
    /// From the back of the trial lens to the cornea in millimetres, where it was measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub vertex_mm: Option<f64>,
}

fn nothing_swept(swept: &Eyes<Swept>) -> bool {
    swept.right.is_empty() && swept.left.is_empty()
}

impl Default for Retinoscopy {
    /// 67 cm, no working lens, nothing found yet.
    fn default() -> Self {
        let distance = WorkingDistance::from_cm(USUAL_CM)
            .expect("the usual working distance lies in the range that is accepted");
        Self {
            setup: Setup::new(distance, None),
            eyes: Eyes::default(),
            swept: Eyes::default(),
            vertex_mm: None,
        }
    }
}

/// About an arm's length. Common practice, no source.
const USUAL_CM: f64 = 67.0;

impl Retinoscopy {
    /// Reckons one eye's net and the way to it. Nothing where that eye was not done.
    pub fn net(&self, eye: Eye) -> Option<retinoscopy::Retinoscopy> {
        let neutral = self.eyes.of(eye).done()?;
        Some(retinoscopy::net(neutral, &self.setup))
    }

    /// Where an eye's net holds: "12 mm before the eye"; where nobody measured it and the lens is strong enough for it to
    /// matter, that.
    pub fn held_at(&self, eye: Eye) -> Option<String> {
        match self.vertex_mm {
            Some(mm) => Some(say::held_at(&format::plain(mm, 1))),
            None if vertex::matters(&self.net(eye)?.net) => Some(say::ask_held_at().to_owned()),
            None => None,
        }
    }

    /// The lenses, on the step of the trial case, that an eye's sweeps say would neutralise it at today's distance.
    pub fn proposed(&self, eye: Eye) -> Option<Neutral> {
        self.proposed_by(&self.swept.of(eye).sweeping.bracket())
    }

    /// The same from what the eye's sweeps say, where that was reckoned already.
    pub fn proposed_by(&self, bracket: &EyeBracket) -> Option<Neutral> {
        let held = Held {
            setup: self.setup,
            lens: 0.0,
        };
        bracket.neutral(&held)
    }

    /// Whether an eye's finding is what its sweeps say. It then goes on following them; a finding that was entered otherwise
    /// stays until [`Self::take_proposed`].
    pub fn follows_sweeps(&self, eye: Eye) -> bool {
        self.follows_bracket(eye, &self.swept.of(eye).sweeping.bracket())
    }

    /// The same from what the eye's sweeps say, where that was reckoned already.
    pub fn follows_bracket(&self, eye: Eye, bracket: &EyeBracket) -> bool {
        match self.eyes.of(eye) {
            Finding::Blank => true,
            Finding::Done(neutral) => Some(*neutral) == self.proposed_by(bracket),
            Finding::NotDone { .. } | Finding::Unable { .. } => false,
        }
    }

    /// Makes what the sweeps say an eye's finding; blank while they say too little.
    pub fn take_proposed(&mut self, eye: Eye) {
        *self.eyes.of_mut(eye) = self.proposed(eye).map_or(Finding::Blank, Finding::Done);
    }

    /// Changes what stands about the sweeps of one eye.
    pub fn change_swept(&mut self, eye: Eye, change: impl FnOnce(&mut Swept)) {
        let said = self.swept.of(eye).sweeping.bracket();
        self.change_swept_after(eye, &said, change);
    }

    /// The same from what the sweeps said before, where that was reckoned already.
    pub fn change_swept_after(
        &mut self,
        eye: Eye,
        said: &EyeBracket,
        change: impl FnOnce(&mut Swept),
    ) {
        let follows = self.follows_bracket(eye, said);
        change(self.swept.of_mut(eye));
        if follows {
            let says = self.swept.of(eye).sweeping.bracket_after(said);
            *self.eyes.of_mut(eye) = self
                .proposed_by(&says)
                .map_or(Finding::Blank, Finding::Done);
        }
    }

    /// Changes how the eyes are examined from now on. Each sweep keeps the set-up that it was made with.
    pub fn change_setup(&mut self, setup: Setup) {
        let following = Eye::BOTH.map(|eye| {
            let swept = !self.swept.of(eye).sweeping.sweeps.is_empty();
            (eye, swept && self.follows_sweeps(eye))
        });
        self.setup = setup;
        for (eye, follows) in following {
            if follows {
                self.take_proposed(eye);
            }
        }
    }

    /// What the circumstances of one eye call for, one sentence each.
    pub fn cautions(&self, eye: Eye, age: Option<Age>) -> Vec<String> {
        self.swept.of(eye).cautions(&self.setup, age)
    }
}

impl Filled for Retinoscopy {
    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        checks.range(
            "cell_spacing_mm",
            limits::cell_spacing_mm(self.setup.cell_spacing_mm),
        );
        if let Some(vertex_mm) = self.vertex_mm {
            checks.range("vertex_mm", limits::vertex_mm(vertex_mm));
        }
        for (eye, finding) in self.eyes.each() {
            checks.reason(eye, "retinoscopy", finding);
            match finding.done() {
                Some(Neutral::TwoMeridians { first, second }) => {
                    let [one, other] = ["first", "second"].map(|part| Checks::name(eye, part));
                    checks.range(one, limits::meridian_power(first.power));
                    checks.range(other, limits::meridian_power(*second));
                }
                Some(Neutral::InFrame(lens)) => checks.lens(eye, lens),
                Some(Neutral::OverLens(held)) => {
                    checks.lens(eye, held.worn());
                    checks.lens(eye, held.over());
                }
                None => {}
            }
            self.swept.of(eye).check(eye, &mut checks);
        }
        checks.done()
    }

    fn unanswered(&self) -> Vec<Eye> {
        blanks(&self.eyes)
    }

    fn halves(&self) -> Vec<(Eye, String, bool)> {
        halves(&self.eyes, "retinoscopy")
    }
}
