//! From letters to glyphs: one run of one font in one direction.

use std::ops::Range;

use krilla::text::{GlyphId, KrillaGlyph};
use rustybuzz::ttf_parser::Tag;
use rustybuzz::{Direction, Feature, GlyphInfo, UnicodeBuffer};

use crate::fonts::{Fonts, Heft, One};

/// A run, ready to be drawn from left to right.
#[derive(Clone, Debug)]
pub(crate) struct Run {
    /// The font's place among those of its heft.
    pub font: usize,
    /// Its letters in the order in which they are read.
    pub text: String,
    pub glyphs: Vec<KrillaGlyph>,
    /// In parts of the size.
    pub width: f32,
}

/// Shapes letters that go one way, font by font, in the order in which they stand from left to right.
pub(crate) fn runs(fonts: &Fonts, heft: Heft, text: &str, backward: bool) -> Vec<Run> {
    let mut ranges: Vec<(usize, Range<usize>)> = Vec::new();
    for (at, letter) in text.char_indices() {
        let end = at + letter.len_utf8();
        let place = fonts.place(heft, letter, ranges.last().map(|(place, _)| *place));
        match ranges.last_mut() {
            Some((last, range)) if *last == place => range.end = end,
            _ => ranges.push((place, at..end)),
        }
    }
    if backward {
        ranges.reverse();
    }
    let shape = |(place, range): (usize, Range<usize>)| {
        one(&fonts.each(heft)[place], place, &text[range], backward)
    };
    ranges.into_iter().map(shape).collect()
}

fn one(font: &One, place: usize, text: &str, backward: bool) -> Run {
    let mut buffer = UnicodeBuffer::new();
    buffer.push_str(text);
    buffer.guess_segment_properties();
    buffer.set_direction(if backward {
        Direction::RightToLeft
    } else {
        Direction::LeftToRight
    });
    // Figures of one width, so that they stand under one another.
    let tabular = Feature::new(Tag::from_bytes(b"tnum"), 1, ..);
    let shaped = rustybuzz::shape(&font.face, &[tabular], buffer);
    let em = font.font.units_per_em();
    let infos = shaped.glyph_infos();
    let part = |units: i32| units as f32 / em;
    let glyphs: Vec<KrillaGlyph> = shaped
        .glyph_positions()
        .iter()
        .enumerate()
        .map(|(place, at)| {
            KrillaGlyph::new(
                GlyphId::new(infos[place].glyph_id),
                part(at.x_advance),
                part(at.x_offset),
                part(at.y_offset),
                part(at.y_advance),
                letters(infos, place, text.len()),
                None,
            )
        })
        .collect();
    Run {
        font: place,
        text: text.to_owned(),
        width: glyphs.iter().map(|glyph| glyph.x_advance).sum(),
        glyphs,
    }
}

/// The letters that a glyph stands for: from its own cluster to the next one that begins later in the text.
fn letters(infos: &[GlyphInfo], place: usize, end: usize) -> Range<usize> {
    let start = infos[place].cluster;
    let later = infos
        .iter()
        .map(|info| info.cluster)
        .filter(|cluster| *cluster > start);
    let next = later.min().map_or(end, |next| next as usize);
    start as usize..next
}
