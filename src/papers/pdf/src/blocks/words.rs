//! Headings, paragraphs and points.

use papers::Block;

use crate::flow::{Flow, SIDE, height};
use crate::head::item;
use crate::lines::Style;
use crate::look::{INK, leading};
use crate::tree::{Kind, Tree};

/// A heading, never alone at the end of a page.
pub(super) fn heading(flow: &mut Flow<'_>, text: &str, next: Option<&Block>) {
    let style = Style::bold(flow.look.heading);
    let lines = flow.broken(text, style, flow.width());
    flow.space(flow.look.heading * 0.8);
    flow.room(height(&lines) + follows(flow, next));
    let node = flow.tree.add(Tree::ROOT, Kind::Heading(text.to_owned()));
    flow.mark(text);
    let width = flow.width();
    flow.lines(node, lines, SIDE, width, INK);
    flow.y += 3.0;
}

/// How much of what comes next has to stand under its heading.
fn follows(flow: &Flow<'_>, next: Option<&Block>) -> f32 {
    let lines = match next {
        None => 0.0,
        Some(Block::Lenses(_)) => 7.0,
        Some(Block::Measure(_) | Block::Table(_)) => 4.0,
        Some(_) => 2.5,
    };
    lines * leading(flow.look.body)
}

pub(super) fn paragraph(flow: &mut Flow<'_>, text: &str) {
    let style = Style::regular(flow.look.body);
    let lines = flow.broken(text, style, flow.width());
    if lines.len() <= 3 {
        flow.room(height(&lines));
    }
    let node = flow.tree.add(Tree::ROOT, Kind::Paragraph);
    let width = flow.width();
    flow.lines(node, lines, SIDE, width, INK);
    flow.y += flow.look.body * 0.6;
}

pub(super) fn list(flow: &mut Flow<'_>, points: &[String]) {
    let list = flow.tree.add(Tree::ROOT, Kind::List);
    for point in points {
        let style = Style::regular(flow.look.body);
        let inset = flow.look.body * 1.4;
        let lines = flow.broken(point, style, flow.width() - inset);
        let Some(first) = lines.first() else {
            continue;
        };
        let from_right = first.from_right;
        if lines.len() <= 3 {
            flow.room(height(&lines));
        } else {
            flow.room(leading(style.size));
        }
        let (label, body) = item(flow, list);
        let dot = flow.whole("•", Style::bold(style.size));
        let y = flow.y;
        let right = SIDE + flow.width();
        let at = if from_right { right - dot.width } else { SIDE };
        flow.text(Some(label), dot, at, y, INK);
        let width = flow.width() - inset;
        let x = if from_right { SIDE } else { SIDE + inset };
        flow.lines(body, lines, x, width, INK);
        flow.y += flow.look.body * 0.3;
    }
    flow.y += flow.look.body * 0.4;
}
