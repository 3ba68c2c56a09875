//! Drawings in words: what is drawn over, of which eye, and what it shows.

use super::{Lines, Reads, filled};
use crate::sections::{OneOf, Sketch, Sketches};
use ::words::record::reading as say;

impl Sketch {
    /// "back of the eye, left eye".
    pub fn heading(&self) -> String {
        let eye = self.eye.map(|eye| say::sketch_eye(&eye.said()));
        format!("{}{}", self.outline.in_words(), eye.unwrap_or_default())
    }
}

impl Reads for Sketches {
    fn read(&self, lines: &mut Lines) {
        for sketch in &self.drawn {
            let strokes = say::strokes(sketch.strokes.len());
            lines.one(sketch.heading(), filled(&sketch.caption).unwrap_or(strokes));
        }
    }
}
