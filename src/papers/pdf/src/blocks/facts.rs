//! Labels beside their values.

use papers::Fact;

use crate::flow::{Flow, SIDE, height};
use crate::head::item;
use crate::lines::Style;
use crate::look::{INK, SOFT};
use crate::tree::{Kind, Tree};

/// The widest that labels may become, as a part of the width.
const LABELS: f32 = 0.32;
const GAP: f32 = 14.0;

pub(super) fn set(flow: &mut Flow<'_>, facts: &[Fact]) {
    let style = Style::regular(flow.look.body);
    let widest = facts
        .iter()
        .map(|fact| flow.whole(&fact.label, style).width);
    let most = flow.width() * LABELS;
    let least = flow.width() * 0.16;
    let labels = widest.fold(least, f32::max).min(most);
    let x = SIDE + labels + GAP;
    let list = flow.tree.add(Tree::ROOT, Kind::List);
    for (place, fact) in facts.iter().enumerate() {
        let width = flow.width() - labels - GAP;
        let label = flow.broken(&fact.label, style, labels);
        let value = flow.broken(&fact.value, style, width);
        let high = height(&label).max(height(&value));
        let high = if high > flow.whole_page() {
            height(&label)
        } else {
            high
        };
        if place + 1 == facts.len() {
            flow.room_before_end(high);
        } else {
            flow.room(high);
        }
        let (named, body) = item(flow, list);
        let top = flow.y;
        flow.lines(named, label, SIDE, labels, SOFT);
        let below = flow.y;
        flow.y = top;
        let value = value.into_iter().map(|mut line| {
            // Beside its label a value begins where the others do, whichever way it goes.
            line.from_right = false;
            line
        });
        flow.lines(body, value.collect(), x, width, INK);
        if flow.y < below && flow.y > top {
            flow.y = below;
        }
        flow.y += flow.look.body * 0.15;
    }
    flow.y += flow.look.body * 0.5;
}
