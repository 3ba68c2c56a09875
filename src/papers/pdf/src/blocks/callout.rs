//! What must not be overlooked: on a tint, with a bar beside it that is heavier the more it presses.

use papers::{Callout, Weight};

use crate::flow::{Flow, SIDE, Shape, height};
use crate::lines::{Line, Style};
use crate::look::{ASIDE, INK, LAMP, SOFT, leading};
use crate::tree::{Kind, Tree};

const PAD: f32 = 9.0;
const INSET: f32 = 16.0;

pub(super) fn set(flow: &mut Flow<'_>, callout: &Callout) {
    let width = flow.width() - INSET - PAD;
    let title = flow.broken(&callout.title, Style::bold(flow.look.body), width);
    let style = Style::regular(flow.look.body);
    let bullet = flow.look.body * 1.1;
    let lines: Vec<Vec<Line>> = callout
        .lines
        .iter()
        .map(|line| flow.broken(line, style, width - bullet))
        .filter(|lines| !lines.is_empty())
        .collect();
    let all = height(&title) + lines.iter().map(|lines| height(lines)).sum::<f32>() + 2.0 * PAD;
    flow.space(flow.look.body * 0.4);
    let boxed = all <= flow.whole_page();
    if boxed {
        flow.room_before_end(all);
        tint(flow, callout.weight, all);
    }
    flow.y += PAD;
    let node = flow.tree.add(Tree::ROOT, Kind::Part);
    let named = flow.tree.add(node, Kind::Paragraph);
    let colour = match callout.weight {
        Weight::Mind => INK,
        Weight::Act => LAMP,
    };
    flow.lines(named, title, SIDE + INSET, width, colour);
    let list = flow.tree.add(node, Kind::List);
    for said in lines {
        flow.room(leading(style.size));
        let (label, body) = crate::head::item(flow, list);
        let dot = flow.whole("•", style);
        let y = flow.y;
        flow.text(Some(label), dot, SIDE + INSET, y, SOFT);
        flow.lines(body, said, SIDE + INSET + bullet, width - bullet, INK);
    }
    flow.y += PAD + flow.look.body * 0.8;
}

fn tint(flow: &mut Flow<'_>, weight: Weight, high: f32) {
    let (bar, colour) = match weight {
        Weight::Mind => (2.0, SOFT),
        Weight::Act => (6.0, LAMP),
    };
    let (y, width) = (flow.y, flow.width());
    flow.ornament(vec![
        Shape::block(SIDE, y, width, high, ASIDE),
        Shape::block(SIDE, y, bar, high, colour),
    ]);
}
