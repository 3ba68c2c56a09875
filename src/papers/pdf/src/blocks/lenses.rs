//! Lenses: the figures that the paper is for, as large as they go.

use papers::{LensCells, LensTable};

use crate::flow::{Flow, SIDE, height};
use crate::lines::{Line, Style};
use crate::look::{HAIR, INK, SOFT, leading};
use crate::tree::{Kind, Node, Tree};

const GAP: f32 = 12.0;
const PAD: f32 = 5.0;

/// The widest that one column may become, as a part of the width; beyond it, words wrap.
const WIDEST: f32 = 0.24;

/// How figures are made to fit.
struct Fit {
    size: f32,
    /// The eye's column, then the others: where they begin, and how wide they are.
    columns: Vec<(f32, f32)>,
    /// The widest figure of each column.
    figures: Vec<f32>,
}

pub(super) fn set(flow: &mut Flow<'_>, lenses: &LensTable) {
    let fit = fit(flow, lenses);
    let style = Style::bold(fit.size);
    flow.room(2.5 * (leading(style.size) + 2.0 * PAD) + leading(flow.look.small));
    let table = flow.tree.add(Tree::ROOT, Kind::Table);
    let head = flow.tree.add(table, Kind::Head);
    let names = flow.tree.add(head, Kind::Row);
    self::names(flow, lenses, &fit, names);
    let rows = flow.tree.add(table, Kind::Rows);
    for (place, row) in lenses.rows.iter().enumerate() {
        if place > 0 {
            let y = flow.y;
            flow.rule(y, 0.6, HAIR);
        }
        let line = flow.tree.add(rows, Kind::Row);
        let eye = flow.tree.add(line, Kind::RowName);
        flow.y += PAD;
        let top = flow.y;
        let name = flow.whole(&row.eye, Style::bold(flow.look.heading));
        let down = (leading(fit.size) - leading(name.style.size)) / 2.0;
        flow.text(Some(eye), name, SIDE, top + down, INK);
        match &row.lens {
            LensCells::Figures(cells) => figures(flow, cells, &fit, line),
            LensCells::Note(note) => {
                self::note(flow, note, &fit, line, lenses.head.len());
            }
        }
        flow.y = flow.y.max(top + leading(fit.size)) + PAD;
    }
    let y = flow.y;
    flow.rule(y, 0.9, INK);
    flow.y += flow.look.body;
}

/// The largest size at which all columns stand beside one another.
fn fit(flow: &Flow<'_>, lenses: &LensTable) -> Fit {
    let width = flow.width();
    let eye = Style::bold(flow.look.heading);
    let eyes = lenses
        .rows
        .iter()
        .map(|row| flow.whole(&row.eye, eye).width);
    let first = eyes.fold(0.0, f32::max) + GAP;
    let sizes = [1.0, 0.88, 0.76, 0.66];
    let mut tried = sizes.map(|part| {
        let size = flow.look.figure * part;
        let figures: Vec<f32> = (0..lenses.head.len())
            .map(|place| widest(flow, lenses, place, size))
            .collect();
        (size, figures)
    });
    let label = Style::regular(flow.look.small);
    let needed = |figures: &[f32]| -> Vec<f32> {
        let names = lenses.head.iter().map(|name| flow.whole(name, label).width);
        let each = names.zip(figures);
        each.map(|(name, figure)| figure.min(width * WIDEST).max(name) + GAP)
            .collect()
    };
    let place = tried
        .iter()
        .position(|(_, figures)| first + needed(figures).iter().sum::<f32>() <= width)
        .unwrap_or(sizes.len() - 1);
    let (size, figures) = std::mem::take(&mut tried[place]);
    let mut widths = needed(&figures);
    let spare = (width - first - widths.iter().sum::<f32>()) / widths.len().max(1) as f32;
    for width in &mut widths {
        *width += spare;
    }
    let mut x = SIDE + first;
    let mut columns = vec![(SIDE, first)];
    for width in widths {
        columns.push((x, width));
        x += width;
    }
    Fit {
        size,
        columns,
        figures,
    }
}

fn widest(flow: &Flow<'_>, lenses: &LensTable, place: usize, size: f32) -> f32 {
    let cells = lenses.rows.iter().filter_map(|row| match &row.lens {
        LensCells::Figures(cells) => cells.get(place),
        LensCells::Note(_) => None,
    });
    let parts = cells.flat_map(|cell| cell.split_inclusive(" & "));
    let widths = parts.map(|part| flow.whole(part, Style::bold(size)).width);
    widths.fold(0.0, f32::max)
}

fn names(flow: &mut Flow<'_>, lenses: &LensTable, fit: &Fit, row: Node) {
    let style = Style::regular(flow.look.small);
    let y = flow.y;
    flow.tree.add(row, Kind::Cell(1));
    for (name, (x, width)) in lenses.head.iter().zip(&fit.columns[1..]) {
        let cell = flow.tree.add(row, Kind::ColumnName);
        let line = flow.whole(name, style);
        let x = x + (width - line.width) / 2.0;
        flow.text(Some(cell), line, x, y, SOFT);
    }
    flow.y += leading(style.size) + 1.0;
    let y = flow.y;
    flow.rule(y, 0.9, INK);
}

fn figures(flow: &mut Flow<'_>, cells: &[String], fit: &Fit, row: Node) {
    let top = flow.y;
    let mut lowest = top;
    let columns = fit.columns[1..].iter().zip(&fit.figures);
    for (cell, ((x, width), widest)) in cells.iter().zip(columns) {
        let node = flow.tree.add(row, Kind::Cell(1));
        // Two prisms stand under one another rather than broken anywhere.
        let cell = cell.replace(" & ", " &\n");
        let lines = flow.broken(&cell, Style::bold(fit.size), width - 4.0);
        let alone = lines.len() == 1;
        lowest = lowest.max(top + height(&lines));
        let mut y = top;
        for line in lines {
            let high = leading(line.style.size);
            let at = x + placed(&line, *width, alone.then_some(*widest));
            flow.text(Some(node), line, at, y, INK);
            y += high;
        }
    }
    flow.y = lowest;
}

/// In the middle of its column; figures so that their ends stand under one another.
fn placed(line: &Line, width: f32, widest: Option<f32>) -> f32 {
    let is_figure = line
        .text
        .chars()
        .all(|letter| "+−.0123456789".contains(letter));
    match widest {
        Some(widest) if is_figure => (width - widest) / 2.0 + widest - line.width,
        _ => (width - line.width) / 2.0,
    }
}

fn note(flow: &mut Flow<'_>, note: &str, fit: &Fit, row: Node, columns: usize) {
    let cell = flow.tree.add(row, Kind::Cell(columns as u32));
    let x = fit.columns.get(1).map_or(SIDE, |(x, _)| *x) + GAP;
    let width = SIDE + flow.width() - x;
    let style = Style::regular(flow.look.body);
    flow.y += (leading(fit.size) - leading(style.size)).max(0.0) / 2.0;
    let lines = flow.broken(note, style, width);
    flow.lines(cell, lines, x, width, INK);
}
