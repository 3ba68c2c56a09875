//! Worn glasses: each pair, what its lenses measure, and the state that it is in.

use ::words::record::sections as say;
use optics::prism::Prism;
use optics::{SphereCyl, limits};
use serde::{Deserialize, Serialize};

use super::kind::pair_halves;
use super::one_of::one_of;
use super::{Filled, LensForm, UsedFor};
use crate::check::{Checks, FieldError};
use crate::finding::{Eye, Eyes, Finding};
use crate::jotted::Jotted;

/// The glasses that the person has.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct WornGlasses {
    /// Each pair; an empty list where the person has none.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub pairs: Finding<Vec<WornPair>>,
}

/// One pair.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct WornPair {
    /// What it is used for.
    pub used_for: UsedFor,
    /// How its lenses are made.
    pub form: LensForm,
    /// How its lenses were measured.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub measured: Option<HowMeasured>,
    /// Its lenses.
    pub lenses: Eyes<Finding<WornLens>>,
    /// Between the optical centres, in millimetres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub centres_mm: Option<f64>,
    /// The state of the lenses: scratched, dirty, in the wrong frame.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub lens_state: String,
    /// The state of the frame: bent, broken, a missing pad.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub frame_state: String,
    /// The name engraved or written on it; blank where nobody looked, empty where there is none.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub name_on_it: Finding<String>,
    /// Whether and when it is worn, in words.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub worn: String,
}

/// One lens as measured.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WornLens {
    /// Its power; of a multifocal lens that for far.
    pub lens: SphereCyl,
    /// The addition in dioptres.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub add_d: Option<f64>,
    /// The prism at the pupil's centre.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub prism: Option<Prism>,
}

/// How the lenses of a pair were measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HowMeasured {
    /// With a focimeter.
    Focimeter,
    /// By neutralising with trial lenses.
    ByHand,
    /// Not measured: copied from an order or a prescription.
    Copied,
}

impl WornPair {
    /// A pair whose lenses were read as they are jotted.
    pub fn jotted(jotted: &Jotted) -> Self {
        let lens = |eye: Eye| {
            let lens = *jotted.lenses.of(eye);
            lens.map_or(Finding::Blank, |lens| {
                Finding::Done(WornLens {
                    lens,
                    add_d: *jotted.adds.of(eye),
                    prism: None,
                })
            })
        };
        Self {
            lenses: Eyes {
                right: lens(Eye::Right),
                left: lens(Eye::Left),
            },
            ..Self::default()
        }
    }
}

impl WornGlasses {
    /// The lens for far of an eye, of the first pair that is for far and was measured.
    pub fn far_lens(&self, eye: Eye) -> Option<&SphereCyl> {
        let pairs = self.pairs.done()?.iter();
        let mut lenses = pairs
            .filter(|pair| pair.used_for.is_for_far())
            .filter_map(|pair| pair.lenses.of(eye).done());
        lenses.next().map(|worn| &worn.lens)
    }

    /// Whether any pair has more than one power.
    pub fn has_multifocals(&self) -> bool {
        let pairs = self.pairs.done().into_iter().flatten();
        pairs.into_iter().any(|pair| pair.form.is_multifocal())
    }
}

impl Filled for WornGlasses {
    fn halves(&self) -> Vec<(Eye, String, bool)> {
        let pairs = self.pairs.done().into_iter().flatten();
        pair_halves(pairs.map(|pair| &pair.lenses))
    }

    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        checks.reason_of("pairs", &self.pairs);
        for pair in self.pairs.done().into_iter().flatten() {
            checks.optional("centres_mm", pair.centres_mm, limits::centre_distance_mm);
            checks.reason_of("name_on_it", &pair.name_on_it);
            for (eye, finding) in pair.lenses.each() {
                checks.reason(eye, "lens", finding);
                if let Some(worn) = finding.done() {
                    checks.lens(eye, &worn.lens);
                    checks.optional(Checks::name(eye, "add_d"), worn.add_d, limits::add);
                    checks.prism(eye, worn.prism);
                }
            }
        }
        checks.done()
    }
}

one_of! {
    HowMeasured {
        Focimeter = say::by_focimeter,
        ByHand = say::by_hand,
        Copied = say::by_copy,
    }
}
