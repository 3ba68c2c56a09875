//! Sketches: strokes drawn over an outline.
//!
//! A point is kept in ten-thousandths of the outline's width, from its upper left corner, so that it looks the same on any
//! screen.

use ::words::record::sections as say;
use serde::{Deserialize, Serialize};

use super::Filled;
use super::one_of::one_of;
use crate::check::{Checks, FieldError};
use crate::finding::Eye;

/// What was drawn.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Sketches {
    /// Each drawing.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub drawn: Vec<Sketch>,
}

/// One drawing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Sketch {
    /// What it is drawn over.
    pub outline: Outline,
    /// Of which eye; none for a face.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub eye: Option<Eye>,
    /// The strokes in the order in which they were drawn.
    pub strokes: Vec<Stroke>,
    /// What it shows, for whoever can't see it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub caption: String,
}

/// What a drawing is drawn over.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Outline {
    /// Lids and the front of the eye.
    Front,
    /// The lens in the pupil.
    Lens,
    /// The back of the eye, with disc and macula.
    Back,
    /// The disc alone.
    Disc,
    /// A grid or a field.
    Field,
    /// A face, for lids and posture.
    Face,
}

/// One stroke.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Stroke {
    /// Its points in their order.
    pub points: Vec<Point>,
}

/// One point of a stroke; on the wire an array of three.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(from = "(u16, u16, u8)", into = "(u16, u16, u8)")]
pub struct Point {
    /// To the right, in ten-thousandths of the outline's width.
    pub x: u16,
    /// Down, in ten-thousandths of the outline's width.
    pub y: u16,
    /// How hard, 0 to 255.
    pub pressure: u8,
}

impl From<(u16, u16, u8)> for Point {
    fn from((x, y, pressure): (u16, u16, u8)) -> Self {
        Self { x, y, pressure }
    }
}

impl From<Point> for (u16, u16, u8) {
    fn from(point: Point) -> Self {
        (point.x, point.y, point.pressure)
    }
}

/// The outline's width.
const WIDTH: u16 = 10_000;

/// Points of all drawings together, at most nine bytes each: they stay well under what one entry may have.
const MOST_POINTS: usize = 50_000;

impl Filled for Sketches {
    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        let strokes = self.drawn.iter().flat_map(|sketch| &sketch.strokes);
        let points = || strokes.clone().flat_map(|stroke| &stroke.points);
        if points().count() > MOST_POINTS {
            let sentence = say::too_many_points(&MOST_POINTS);
            checks.say("drawn", sentence);
        }
        if points().any(|point| point.x > WIDTH || point.y > WIDTH) {
            checks.say("drawn", say::stroke_outside());
        }
        checks.done()
    }
}

one_of! {
    Outline {
        Front = say::outline_front,
        Lens = say::outline_lens,
        Back = say::outline_back,
        Disc = say::outline_disc,
        Field = say::outline_field,
        Face = say::outline_face,
    }
}
