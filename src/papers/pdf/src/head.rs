//! The top of the first page: what the paper is, and whom it is about.

use papers::{Document, Fact};

use crate::flow::{Flow, SIDE, Shape, height};
use crate::lines::Style;
use crate::look::{INK, LAMP, SOFT, leading};
use crate::tree::{Kind, Node, Tree};

/// Between facts beside one another.
const APART: f32 = 26.0;

pub(crate) fn set(flow: &mut Flow<'_>, document: &Document) {
    title(flow, document);
    flow.y += 6.0;
    let y = flow.y;
    flow.rule(y, 1.4, INK);
    flow.y += 12.0;
    if !document.who.is_empty() {
        who(flow, &document.who);
        flow.y += 12.0;
    }
}

fn title(flow: &mut Flow<'_>, document: &Document) {
    let style = Style::bold(flow.look.title);
    let node = flow
        .tree
        .add(Tree::ROOT, Kind::Title(document.title.clone()));
    flow.mark(&document.title);
    let lines = flow.broken(&document.title, style, flow.width() - 110.0);
    let top = flow.y;
    flow.lines(node, lines, SIDE, flow.width() - 110.0, INK);
    if let Some(mark) = document.standing.mark() {
        let node = flow.tree.add(Tree::ROOT, Kind::Paragraph);
        let line = flow.whole(mark, Style::bold(flow.look.body));
        let high = leading(line.style.size);
        let (x, y) = (SIDE + flow.width() - line.width - 8.0, top + 8.0);
        let mut frame = Shape::block(x - 8.0, y - 3.0, line.width + 16.0, high + 6.0, INK);
        frame.fill = None;
        frame.edge = Some((LAMP, 1.2));
        flow.ornament(vec![frame]);
        flow.text(Some(node), line, x, y, LAMP);
    }
}

/// The name large, the rest beside one another below it.
fn who(flow: &mut Flow<'_>, facts: &[Fact]) {
    let list = flow.tree.add(Tree::ROOT, Kind::List);
    let mut rest = facts;
    if let [name, others @ ..] = facts {
        let (label, body) = item(flow, list);
        small(flow, label, &name.label, SIDE);
        let mut lines = flow.broken(&name.value, Style::bold(flow.look.name), flow.width());
        for line in &mut lines {
            // Under its label, whichever way it goes.
            line.from_right = false;
        }
        let width = flow.width();
        flow.lines(body, lines, SIDE, width, INK);
        rest = others;
    }
    let mut x = SIDE;
    let mut lowest = flow.y;
    if !rest.is_empty() {
        flow.y += 5.0;
    }
    for fact in rest {
        let label = flow.whole(&fact.label, Style::regular(flow.look.small));
        let style = Style::regular(flow.look.body);
        let value = flow.broken(&fact.value, style, flow.width());
        let widest = value
            .iter()
            .map(|line| line.width)
            .fold(label.width, f32::max);
        if x > SIDE && x + widest > SIDE + flow.width() {
            x = SIDE;
            flow.y = lowest + 5.0;
        }
        let high = leading(label.style.size) + height(&value);
        flow.room(high);
        let top = flow.y;
        let (named, body) = item(flow, list);
        flow.text(Some(named), label, x, top, SOFT);
        flow.y += leading(flow.look.small);
        for line in value {
            let y = flow.y;
            flow.y += leading(line.style.size);
            flow.text(Some(body), line, x, y, INK);
        }
        lowest = lowest.max(flow.y);
        flow.y = top;
        x += widest + APART;
    }
    flow.y = lowest;
}

fn small(flow: &mut Flow<'_>, node: Node, text: &str, x: f32) {
    let line = flow.whole(text, Style::regular(flow.look.small));
    let y = flow.y;
    flow.y += leading(line.style.size);
    flow.text(Some(node), line, x, y, SOFT);
}

/// A list's next item: its label and its body.
pub(crate) fn item(flow: &mut Flow<'_>, list: Node) -> (Node, Node) {
    let item = flow.tree.add(list, Kind::Item);
    (
        flow.tree.add(item, Kind::Label),
        flow.tree.add(item, Kind::Body),
    )
}
