//! Where somebody signs, or has signed.

use papers::Sign;

use crate::flow::{Flow, SIDE, Shape};
use crate::lines::Style;
use crate::look::{INK, SOFT, leading};
use crate::tree::{Kind, Tree};

/// Room for a pen.
const PEN: f32 = 30.0;
const LINE: f32 = 240.0;

pub(super) fn set(flow: &mut Flow<'_>, sign: &Sign) {
    let (name, below) = match sign {
        Sign::Signed { by, on } => (by.clone(), Some(on)),
        Sign::Open { whom } => (words::papers::pages::signature_of(whom), None),
    };
    let bold = Style::bold(flow.look.body);
    let style = if below.is_some() {
        bold
    } else {
        Style::regular(flow.look.small)
    };
    let lines = flow.broken(&name, style, flow.width());
    flow.space(flow.look.body);
    let pen = if below.is_some() { 8.0 } else { PEN };
    flow.room(pen + leading(style.size) * (lines.len() + 1) as f32);
    flow.y += pen;
    let y = flow.y;
    flow.ornament(vec![Shape::block(SIDE, y, LINE, 0.8, INK)]);
    flow.y += 4.0;
    let node = flow.tree.add(Tree::ROOT, Kind::Paragraph);
    let width = flow.width();
    flow.lines(node, lines, SIDE, width, INK);
    if let Some(on) = below {
        let node = flow.tree.add(Tree::ROOT, Kind::Paragraph);
        let lines = flow.broken(on, Style::regular(flow.look.small), width);
        flow.lines(node, lines, SIDE, width, SOFT);
    }
}
