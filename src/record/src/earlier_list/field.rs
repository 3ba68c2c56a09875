//! What a column of earlier findings may hold.

use ::words::record::lists as say;
use optics::Eye;
use serde::{Deserialize, Serialize};

use crate::home_list;
use crate::sections::OneOf;

/// What a column may hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Field {
    /// The whole name.
    Name,
    /// The given name.
    Given,
    /// The family name.
    Family,
    /// The date of birth.
    Born,
    /// A number by which others know the person.
    Identifier,
    /// The day of the examination.
    On,
    /// A lens as a whole: `+2.50/−1.00x90`.
    Lens(Eye),
    /// Its sphere alone.
    Sphere(Eye),
    /// Its cylinder alone.
    Cylinder(Eye),
    /// Its axis alone.
    Axis(Eye),
    /// What is added for near, the same to both eyes.
    Add,
    /// What the eye reads with the lens.
    Acuity(Eye),
    /// What the eye reads without.
    Unaided(Eye),
    /// The pressure in mmHg.
    Pressure(Eye),
    /// Anything else, kept in words. Several columns may be notes.
    Note,
}

impl OneOf for Field {
    fn all() -> Vec<Self> {
        let mut all = vec![
            Self::Name,
            Self::Given,
            Self::Family,
            Self::Born,
            Self::Identifier,
            Self::On,
        ];
        for of in Self::OF_AN_EYE {
            all.extend(Eye::BOTH.map(of));
        }
        all.extend([Self::Add, Self::Note]);
        all
    }

    fn in_words(&self) -> &'static str {
        use Eye::{Left, Right};
        match self {
            Self::Name => home_list::Field::Name.in_words(),
            Self::Given => home_list::Field::Given.in_words(),
            Self::Family => home_list::Field::Family.in_words(),
            Self::Born => home_list::Field::Born.in_words(),
            Self::Identifier => home_list::Field::Identifier.in_words(),
            Self::On => say::date_of_exam(),
            Self::Lens(Right) => say::right_lens(),
            Self::Lens(Left) => say::left_lens(),
            Self::Sphere(Right) => say::right_sphere(),
            Self::Sphere(Left) => say::left_sphere(),
            Self::Cylinder(Right) => say::right_cylinder(),
            Self::Cylinder(Left) => say::left_cylinder(),
            Self::Axis(Right) => say::right_axis(),
            Self::Axis(Left) => say::left_axis(),
            Self::Add => say::addition(),
            Self::Acuity(Right) => say::right_acuity_with(),
            Self::Acuity(Left) => say::left_acuity_with(),
            Self::Unaided(Right) => say::right_acuity_without(),
            Self::Unaided(Left) => say::left_acuity_without(),
            Self::Pressure(Right) => say::right_pressure(),
            Self::Pressure(Left) => say::left_pressure(),
            Self::Note => home_list::Field::Note.in_words(),
        }
    }
}

/// Words in headings that name an eye. Common practice, no source.
const EYES: [(Eye, &[&str]); 2] = [
    (Eye::Right, &["r", "re", "od", "right", "rechts", "droit"]),
    (Eye::Left, &["l", "le", "os", "left", "links", "gauche"]),
];

/// A field of either eye.
type OfAnEye = fn(Eye) -> Field;

/// Words in headings that name what was found in an eye; of several the first rule that fits. Common practice, no source.
const FOUND: [(OfAnEye, &[&str]); 7] = [
    (Field::Sphere, &["sph", "sphere"]),
    (Field::Cylinder, &["cyl", "cylinder"]),
    (Field::Axis, &["ax", "axis"]),
    (Field::Pressure, &["iop", "pressure", "mmhg"]),
    (Field::Unaided, &["unaided", "uncorrected", "without"]),
    (Field::Acuity, &["va", "acuity", "vision", "visus"]),
    (Field::Lens, &["rx", "lens", "refraction", "prescription"]),
];

/// Words in headings for the addition, and for the day of the examination. Common practice, no source.
const ADD: &[&str] = &["add", "addition"];
const ON: &[&str] = &["date", "exam", "examined", "visit", "seen", "datum"];

impl Field {
    /// The whole name, or given and family name.
    pub(super) const NAMES: [Self; 3] = [Self::Name, Self::Given, Self::Family];

    /// What is written as a date.
    pub(super) const DAYS: [Self; 2] = [Self::Born, Self::On];

    const OF_AN_EYE: [OfAnEye; 7] = [
        Self::Lens,
        Self::Sphere,
        Self::Cylinder,
        Self::Axis,
        Self::Acuity,
        Self::Unaided,
        Self::Pressure,
    ];

    /// What a heading suggests.
    pub(super) fn of_heading(heading: &str) -> Option<Self> {
        let words = words(heading);
        let has = |known: &[&str]| words.iter().any(|word| known.contains(&word.as_str()));
        if has(ADD) {
            return Some(Self::Add);
        }
        if let Some((eye, _)) = EYES.iter().find(|(_, known)| has(known)) {
            let found = FOUND.iter().find(|(_, known)| has(known));
            return found.map(|(of, _)| of(*eye));
        }
        match home_list::field_of(heading) {
            Some(home_list::Field::Name) => Some(Self::Name),
            Some(home_list::Field::Given) => Some(Self::Given),
            Some(home_list::Field::Family) => Some(Self::Family),
            Some(home_list::Field::Born) => Some(Self::Born),
            Some(home_list::Field::Identifier) => Some(Self::Identifier),
            Some(home_list::Field::Note) => Some(Self::Note),
            Some(home_list::Field::Room | home_list::Field::Unit) => None,
            None => has(ON).then_some(Self::On),
        }
    }
}

/// The words of a heading, small.
pub(super) fn words(heading: &str) -> Vec<String> {
    let lower = heading.to_lowercase();
    let words = lower.split(|c: char| !c.is_alphanumeric());
    words
        .filter(|word| !word.is_empty())
        .map(str::to_owned)
        .collect()
}
