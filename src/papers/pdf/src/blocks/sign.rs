//! Where somebody signs, or has signed.

use ::words::papers::pages as say;
use papers::Sign;

use crate::flow::{Flow, SIDE, Shape, height};
use crate::lines::{Line, Style};
use crate::look::{INK, SOFT, leading};
use crate::tree::{Kind, Tree};

/// Room for a pen.
const PEN: f32 = 30.0;
const LINE: f32 = 240.0;

/// How high it is, with the space above it: something of what it is put under stands on the same page.
pub(super) fn high(flow: &Flow<'_>, sign: &Sign) -> f32 {
    let (lines, pen) = (named(flow, sign), pen(sign));
    flow.look.body + pen + 4.0 + height(&lines) + leading(flow.look.body)
}

fn named(flow: &Flow<'_>, sign: &Sign) -> Vec<Line> {
    let (name, style) = match sign {
        Sign::Signed { by, .. } => (by.clone(), Style::bold(flow.look.body)),
        Sign::Open { whom } => (say::signature_of(whom), Style::regular(flow.look.small)),
    };
    flow.broken(&name, style, flow.width())
}

fn pen(sign: &Sign) -> f32 {
    match sign {
        Sign::Signed { .. } => 8.0,
        Sign::Open { .. } => PEN,
    }
}

pub(super) fn set(flow: &mut Flow<'_>, sign: &Sign) {
    let lines = named(flow, sign);
    flow.room(high(flow, sign));
    flow.space(flow.look.body);
    flow.y += pen(sign);
    let y = flow.y;
    flow.ornament(vec![Shape::block(SIDE, y, LINE, 0.8, INK)]);
    flow.y += 4.0;
    let node = flow.tree.add(Tree::ROOT, Kind::Paragraph);
    let width = flow.width();
    flow.lines(node, lines, SIDE, width, INK);
    if let Sign::Signed { on, .. } = sign {
        let node = flow.tree.add(Tree::ROOT, Kind::Paragraph);
        let lines = flow.broken(on, Style::regular(flow.look.small), width);
        flow.lines(node, lines, SIDE, width, SOFT);
    }
}
