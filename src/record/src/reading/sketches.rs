//! Drawings in words: what is drawn over, of which eye, and what it shows.

use super::{Lines, Reads, filled};
use crate::sections::{OneOf, Sketch, Sketches};

impl Sketch {
    /// "back of the eye, left eye".
    pub fn heading(&self) -> String {
        let eye = self.eye.map(|eye| format!(", {} eye", eye.word()));
        format!("{}{}", self.outline.in_words(), eye.unwrap_or_default())
    }
}

impl Reads for Sketches {
    fn read(&self, lines: &mut Lines) {
        for sketch in &self.drawn {
            let strokes = match sketch.strokes.len() {
                0 => "nothing drawn yet".to_owned(),
                1 => "1 stroke".to_owned(),
                many => format!("{many} strokes"),
            };
            lines.one(sketch.heading(), filled(&sketch.caption).unwrap_or(strokes));
        }
    }
}
