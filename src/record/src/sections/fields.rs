//! Fields: each quadrant by confrontation, and the middle on a grid.
//!
//! A grid held at 30 cm covers 10 degrees each way; one that is seen whole does not exclude anything (both from memory).

use ::words::record::sections as say;
use serde::{Deserialize, Serialize};

use super::Filled;
use super::kind::eyes_where;
use super::one_of::one_of;
use crate::check::{Checks, FieldError};
use crate::finding::{Eye, Eyes, Finding};

/// How far each eye sees to the sides, and its middle.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Fields {
    /// How it was tested, where otherwise than by confrontation.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub how: String,
    /// The quadrants of each eye.
    pub quadrants: Eyes<Finding<Quadrants>>,
    /// The grid before each eye.
    pub grid: Eyes<Finding<Grid>>,
    /// Anything else.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub note: String,
}

/// The four quadrants of one eye's field, named by where things are seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Quadrants {
    /// Up, toward the temple.
    pub upper_temporal: Quadrant,
    /// Up, toward the nose.
    pub upper_nasal: Quadrant,
    /// Down, toward the temple.
    pub lower_temporal: Quadrant,
    /// Down, toward the nose.
    pub lower_nasal: Quadrant,
}

/// What of a quadrant is seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Quadrant {
    /// All.
    Full,
    /// Some.
    Reduced,
    /// None.
    Missing,
}

/// What is seen of a grid.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Grid {
    /// Lines are bent.
    pub bent: bool,
    /// Part of it is missing.
    pub missing: bool,
    /// Whether that was there before; none where nobody knows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub known: Option<bool>,
    /// Where, in words.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub place: String,
}

impl Quadrants {
    /// All four full.
    pub const FULL: Self = Self {
        upper_temporal: Quadrant::Full,
        upper_nasal: Quadrant::Full,
        lower_temporal: Quadrant::Full,
        lower_nasal: Quadrant::Full,
    };
}

impl Grid {
    /// Whether it is seen whole and straight.
    pub const fn is_whole(&self) -> bool {
        !self.bent && !self.missing
    }
}

impl Fields {
    /// Everything seen, by both eyes.
    pub fn normal() -> Self {
        let mut normal = Self::default();
        normal.fill_normal();
        normal
    }
}

impl Filled for Fields {
    fn fill_normal(&mut self) -> bool {
        for eye in Eye::BOTH {
            self.quadrants.of_mut(eye).fill(Quadrants::FULL);
            self.grid.of_mut(eye).fill(Grid::default());
        }
        true
    }

    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        for (eye, quadrants) in self.quadrants.each() {
            checks.reason(eye, "quadrants", quadrants);
        }
        for (eye, finding) in self.grid.each() {
            checks.reason(eye, "grid", finding);
            if let Some(grid) = finding.done()
                && !grid.is_whole()
            {
                let name = Checks::name(eye, "grid");
                checks.text(name, &grid.place, say::ask_grid());
            }
        }
        checks.done()
    }

    fn unanswered(&self) -> Vec<Eye> {
        let both = Eyes {
            right: (&self.quadrants.right, &self.grid.right),
            left: (&self.quadrants.left, &self.grid.left),
        };
        eyes_where(&both, |(quadrants, grid)| {
            quadrants.is_blank() && grid.is_blank()
        })
    }
}

one_of! {
    Quadrant {
        Full = say::quadrant_full,
        Reduced = say::quadrant_reduced,
        Missing = say::quadrant_missing,
    }
}
