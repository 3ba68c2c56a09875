//! Rows under named columns, which are named again on every page.

use papers::Table;

use crate::flow::{Flow, SIDE, height};
use crate::lines::{Line, Style};
use crate::look::{HAIR, INK, SOFT, leading};
use crate::tree::{Kind, Node, Tree};

const GAP: f32 = 12.0;
const PAD: f32 = 3.0;

/// Where columns begin, and how wide they are.
struct Columns(Vec<(f32, f32)>);

pub(super) fn set(flow: &mut Flow<'_>, table: &Table) {
    let columns = columns(flow, table);
    let below = flow.keep_below;
    let node = flow.tree.add(Tree::ROOT, Kind::Table);
    let head = flow.tree.add(node, Kind::Head);
    let named = flow.tree.add(head, Kind::Row);
    flow.room(4.0 * leading(flow.look.body));
    names(flow, table, &columns, Some(named));
    let rows = flow.tree.add(node, Kind::Rows);
    for (place, row) in table.rows.iter().enumerate() {
        flow.keep_below = match table.rows.len() - place {
            1 => below,
            // No row goes to the next page alone.
            2 => below + 2.0 * PAD + leading(flow.look.body),
            _ => 0.0,
        };
        self::row(flow, table, &columns, rows, row);
    }
    flow.y += flow.look.body * 0.8;
}

fn columns(flow: &Flow<'_>, table: &Table) -> Columns {
    let count = table.head.len().max(1);
    let style = Style::regular(flow.look.body);
    let firsts = table.rows.iter().filter_map(|row| row.first());
    let widest = firsts.map(|cell| flow.whole(cell, style).width);
    let width = flow.width();
    let first = widest.fold(width * 0.16, f32::max).min(width * 0.32);
    let rest = (width - first - GAP * (count - 1) as f32) / (count - 1).max(1) as f32;
    let places = (0..count).map(|place| match place {
        0 => (SIDE, first),
        place => (SIDE + first + GAP + (rest + GAP) * (place - 1) as f32, rest),
    });
    Columns(places.collect())
}

fn names(flow: &mut Flow<'_>, table: &Table, columns: &Columns, named: Option<Node>) {
    let style = Style::regular(flow.look.small);
    let top = flow.y;
    for (name, (x, _)) in table.head.iter().zip(&columns.0) {
        // An unnamed column is a cell all the same, so that rows and columns stay in step.
        let cell = named.map(|row| {
            let kind = if name.is_empty() {
                Kind::Cell(1)
            } else {
                Kind::ColumnName
            };
            flow.tree.add(row, kind)
        });
        let line = flow.whole(name, style);
        if !line.runs.is_empty() {
            flow.text(cell, line, *x, top, SOFT);
        }
    }
    flow.y = top + leading(style.size) + 1.0;
    let y = flow.y;
    flow.rule(y, 0.9, INK);
    flow.y += PAD;
}

fn row(flow: &mut Flow<'_>, table: &Table, columns: &Columns, rows: Node, row: &[String]) {
    let style = Style::regular(flow.look.body);
    let cells: Vec<Vec<Line>> = row
        .iter()
        .zip(&columns.0)
        .map(|(cell, (_, width))| flow.broken(cell, style, *width))
        .collect();
    let high = cells.iter().map(|cell| height(cell)).fold(0.0, f32::max);
    if flow.room_before_end(high.min(flow.whole_page() * 0.8) + 2.0 * PAD) {
        names(flow, table, columns, None);
    }
    let node = flow.tree.add(rows, Kind::Row);
    let places: Vec<Node> = (0..cells.len())
        .map(|place| {
            let kind = if place == 0 {
                Kind::RowName
            } else {
                Kind::Cell(1)
            };
            flow.tree.add(node, kind)
        })
        .collect();
    let most = cells.iter().map(Vec::len).max().unwrap_or_default();
    for place in 0..most {
        if flow.room(leading(style.size)) {
            names(flow, table, columns, None);
        }
        let y = flow.y;
        for ((cell, (x, _)), node) in cells.iter().zip(&columns.0).zip(&places) {
            if let Some(line) = cell.get(place) {
                let colour = if *node == places[0] { SOFT } else { INK };
                flow.text(Some(*node), line.clone(), *x, y, colour);
            }
        }
        flow.y += leading(style.size);
    }
    flow.y += PAD;
    let y = flow.y;
    flow.rule(y, 0.5, HAIR);
    flow.y += PAD;
}
