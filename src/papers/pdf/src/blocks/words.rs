//! Headings, paragraphs and points.

use papers::Block;

use crate::flow::{Flow, SIDE, height};
use crate::head::item;
use crate::lines::Style;
use crate::look::{INK, leading};
use crate::tree::{Kind, Tree};

/// A heading, never alone at the end of a page.
pub(super) fn heading(flow: &mut Flow<'_>, text: &str, rest: &[Block]) {
    let style = Style::bold(flow.look.heading);
    let lines = flow.broken(text, style, flow.width());
    flow.space(flow.look.heading * 0.8);
    flow.room(height(&lines) + below(flow, rest));
    let node = flow.tree.add(Tree::ROOT, Kind::Heading(text.to_owned()));
    flow.mark(text);
    let width = flow.width();
    flow.lines(node, lines, SIDE, width, INK);
    flow.y += 3.0;
}

/// So many facts are few: what they belong to stands with them.
const FEW: usize = 3;

/// What has to stand under a heading: one line that says more of it, and what begins after that.
fn below(flow: &Flow<'_>, rest: &[Block]) -> f32 {
    let [Block::Paragraph(text), after @ ..] = rest else {
        return follows(flow, rest);
    };
    let style = Style::regular(flow.look.body);
    match flow.broken(text, style, flow.width()).len() {
        0 | 1 => 1.6 * leading(flow.look.body) + follows(flow, after),
        _ => follows(flow, rest),
    }
}

/// How much of what comes next has to stand with what is above it.
fn follows(flow: &Flow<'_>, rest: &[Block]) -> f32 {
    let line = leading(flow.look.body);
    match rest {
        [] => 0.0,
        [Block::Lenses(_), ..] => 7.0 * line,
        [Block::Measure(_) | Block::Table(_), ..] => 4.0 * line,
        [
            Block::Facts(facts),
            table @ (Block::Lenses(_) | Block::Table(_)),
            ..,
        ] if facts.len() <= FEW => {
            (facts.len() as f32 + 1.0) * line + follows(flow, std::slice::from_ref(table))
        }
        _ => 2.5 * line,
    }
}

/// A longer paragraph may end on the next page, but with no fewer lines than these.
const TOGETHER: usize = 3;

pub(super) fn paragraph(flow: &mut Flow<'_>, text: &str) {
    let style = Style::regular(flow.look.body);
    let mut lines = flow.broken(text, style, flow.width());
    let begins = match lines.len() {
        count if count < 2 * TOGETHER => 0,
        count => count - TOGETHER,
    };
    let end = lines.split_off(begins);
    let node = flow.tree.add(Tree::ROOT, Kind::Paragraph);
    let width = flow.width();
    flow.lines(node, lines, SIDE, width, INK);
    flow.room_before_end(height(&end));
    flow.lines(node, end, SIDE, width, INK);
    flow.y += flow.look.body * 0.6;
}

pub(super) fn list(flow: &mut Flow<'_>, points: &[String]) {
    let list = flow.tree.add(Tree::ROOT, Kind::List);
    for (place, point) in points.iter().enumerate() {
        let style = Style::regular(flow.look.body);
        let inset = flow.look.body * 1.4;
        let lines = flow.broken(point, style, flow.width() - inset);
        let Some(first) = lines.first() else {
            continue;
        };
        let from_right = first.from_right;
        let high = if lines.len() <= 3 {
            height(&lines)
        } else {
            leading(style.size)
        };
        if place + 1 == points.len() {
            flow.room_before_end(high);
        } else {
            flow.room(high);
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
