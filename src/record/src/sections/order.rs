//! The glasses that are to be made, as they go to whoever makes them.
//!
//! An order is a document of its own: it says what was sent, whatever becomes of the prescription afterwards. Beside the
//! exam's lenses it holds what only a face and a frame can tell.

use ::words::record::sections as say;
use chrono::NaiveDate;
use optics::prism::Prism;
use optics::tolerance::{Finished, Ordered};
use optics::{OpticsError, SphereCyl, limits};
use serde::{Deserialize, Serialize};

use super::kind::lens_of_pair;
use super::{Filled, LensForm, UsedFor};
use crate::check::{Checks, FieldError};
use crate::finding::{Eye, Eyes};

/// The glasses that are to be made.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Order {
    /// Each pair.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub pairs: Vec<OrderedPair>,
    /// Who makes them.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub made_by: String,
    /// On which day it was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sent_on: Option<NaiveDate>,
}

/// One pair.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct OrderedPair {
    /// What it is for.
    pub used_for: UsedFor,
    /// How its lenses are made.
    pub form: LensForm,
    /// Its lenses; none where a frame's eye stays as it is.
    pub lenses: Eyes<Option<OrderedLens>>,
    /// From the back of the lens to the cornea in the frame, in millimetres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub vertex_mm: Option<f64>,
    /// The frame, its size and colour.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub frame: String,
    /// Material, tint, coating.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub lens_note: String,
    /// The name to be engraved, so that glasses find their person in a care home.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub engraved: Option<String>,
}

/// One lens as ordered.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct OrderedLens {
    /// Its power; of a multifocal lens that for far.
    pub lens: SphereCyl,
    /// The addition of a multifocal lens, in dioptres.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub add_d: Option<f64>,
    /// Prescribed prism.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub prism: Option<Prism>,
    /// From the middle of the bridge to where the lens is centred, in millimetres.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub centre_mm: Option<f64>,
    /// The height of the segment or fitting cross above the lowest point of the lens, in millimetres.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height_mm: Option<f64>,
}

impl OrderedLens {
    /// A lens of this power and nothing else.
    pub const fn new(lens: SphereCyl) -> Self {
        Self {
            lens,
            add_d: None,
            prism: None,
            centre_mm: None,
            height_mm: None,
        }
    }

    /// What it is to be compared with once it is made.
    pub(super) fn finished(&self) -> Result<Finished, OpticsError> {
        finished(&self.lens, self.add_d, self.prism, self.height_mm)
    }
}

/// A lens for comparing, as ordered or as measured.
pub(super) fn finished(
    lens: &SphereCyl,
    add_d: Option<f64>,
    prism: Option<Prism>,
    height_mm: Option<f64>,
) -> Result<Finished, OpticsError> {
    let mut finished = Finished::new(*lens)?.with_prism(prism.unwrap_or(Prism::NONE))?;
    if let Some(add) = add_d {
        finished = finished.with_add(add)?;
    }
    if let Some(height) = height_mm {
        finished = finished.with_segment(height)?;
    }
    Ok(finished)
}

impl OrderedPair {
    /// What it is to be compared with once it is made; nothing where it has not two lenses, or one that no field accepts.
    pub(super) fn ordered(&self) -> Option<Ordered> {
        Some(Ordered(Eyes {
            right: self.lenses.right?.finished().ok()?,
            left: self.lenses.left?.finished().ok()?,
        }))
    }
}

impl Filled for Order {
    fn halves(&self) -> Vec<(Eye, String, bool)> {
        let each = self.pairs.iter().enumerate().flat_map(|(place, pair)| {
            let lenses = pair.lenses.each().into_iter();
            lenses.map(move |(eye, lens)| (eye, lens_of_pair(place), lens.is_none()))
        });
        each.collect()
    }

    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        for pair in &self.pairs {
            checks.optional("vertex_mm", pair.vertex_mm, limits::vertex_mm);
            if let Some(name) = &pair.engraved {
                checks.text("engraved", name, say::ask_engraved());
            }
            if pair.lenses.right.is_none() && pair.lenses.left.is_none() {
                checks.say("lenses", say::no_lens());
            }
            for (eye, lens) in pair.lenses.each() {
                let Some(lens) = lens else {
                    continue;
                };
                let name = |part| Checks::name(eye, part);
                checks.lens(eye, &lens.lens);
                checks.optional(name("add_d"), lens.add_d, limits::add);
                checks.prism(eye, lens.prism);
                checks.optional(name("centre_mm"), lens.centre_mm, limits::half_distance_mm);
                checks.optional(name("height_mm"), lens.height_mm, limits::segment_mm);
                if pair.form.is_multifocal() && lens.add_d.is_none() {
                    let sentence = say::no_addition(&eye.said(), &pair.form.word());
                    checks.say(name("add_d"), sentence);
                }
            }
        }
        checks.done()
    }
}
