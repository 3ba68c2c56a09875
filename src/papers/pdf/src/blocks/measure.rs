//! A measure drawn against its limit: a band for what is allowed, a mark for what was measured.
//!
//! The mark's shape says how it stands as well as its place does: a disc within, a ring at the border, a diamond outside.

use std::f32::consts::TAU;

use papers::{Against, Measure};

use crate::flow::{Flow, SIDE, Shape, height};
use crate::lines::Style;
use crate::look::{GLOW, HAIR, INK, LAMP, SOFT, leading};
use crate::tree::{Kind, Tree};

/// How far the drawing goes, in limits; what is farther out stands at its end.
const REACH: f32 = 1.5;
const HIGH: f32 = 10.0;

pub(super) fn set(flow: &mut Flow<'_>, measure: &Measure) {
    let width = flow.width();
    let (label_width, bar_x, bar_width) = (width * 0.34, SIDE + width * 0.36, width * 0.42);
    let label = flow.broken(&measure.label, Style::bold(flow.look.body), label_width);
    let stands = flow.whole(&measure.stands, Style::bold(flow.look.body));
    let sentence = flow.broken(
        &measure.sentence,
        Style::regular(flow.look.small + 0.5),
        width,
    );
    let first = height(&label).max(leading(flow.look.body));
    flow.room_before_end(first + height(&sentence) + 14.0);
    let node = flow.tree.add(Tree::ROOT, Kind::Part);
    let named = flow.tree.add(node, Kind::Paragraph);
    let top = flow.y;
    flow.lines(named, label, SIDE, label_width, INK);
    let colour = if measure.against == Against::Outside {
        LAMP
    } else {
        INK
    };
    if let Some(part) = measure.part {
        let middle = top + leading(flow.look.body) / 2.0;
        let shapes = drawn(
            part as f32,
            (bar_x, middle),
            bar_width,
            measure.against,
            colour,
        );
        let words = format!("{}: {}", measure.label, measure.sentence);
        flow.drawing(node, words, shapes);
    }
    let word = flow.tree.add(node, Kind::Paragraph);
    let x = SIDE + width - stands.width;
    flow.text(Some(word), stands, x, top, colour);
    flow.y = top + first + 1.0;
    let said = flow.tree.add(node, Kind::Paragraph);
    flow.lines(said, sentence, SIDE, width, SOFT);
    flow.y += 4.0;
    let y = flow.y;
    flow.rule(y, 0.5, HAIR);
    flow.y += 6.0;
}

fn drawn(
    part: f32,
    (x, y): (f32, f32),
    width: f32,
    against: Against,
    colour: [u8; 3],
) -> Vec<Shape> {
    let limit = width / REACH;
    let at = x + part.min(REACH) * limit;
    let mut shapes = vec![
        Shape::block(x, y - HIGH / 2.0, limit, HIGH, GLOW),
        Shape::block(x, y - 0.4, width, 0.8, INK),
        Shape::block(x - 0.5, y - HIGH / 2.0, 1.0, HIGH, INK),
        Shape::block(x + limit - 0.8, y - HIGH / 2.0 - 2.5, 1.6, HIGH + 5.0, INK),
    ];
    shapes.push(match against {
        Against::Outside => round((at, y), 5.2, 4, Some(colour)),
        Against::Borderline => round((at, y), 4.2, 32, None),
        Against::Within | Against::NotJudged => round((at, y), 4.2, 32, Some(colour)),
    });
    shapes
}

/// A shape with so many corners, the first on the right; outlined where it is not filled.
fn round((x, y): (f32, f32), radius: f32, corners: u8, fill: Option<[u8; 3]>) -> Shape {
    let corner = |place: u8| {
        let angle = TAU * f32::from(place) / f32::from(corners);
        (x + radius * angle.cos(), y + radius * angle.sin())
    };
    Shape {
        corners: (0..corners).map(corner).collect(),
        fill: Some(fill.unwrap_or([0xff; 3])),
        edge: fill.is_none().then_some((INK, 1.6)),
    }
}
