//! Lenses worn nearer to the eye or farther from it, and in the cells of a trial frame.

use crate::table::{Table, table};
use optics::{Cell, SphereCyl, cells, vertex};

pub const MOVED: Table = table!("vertex_moved.txt");
pub const TORIC: Table = table!("vertex_toric.txt");
pub const CELLS: Table = table!("cells.txt");

#[test]
fn spheres_moved() {
    for row in MOVED.rows() {
        let moved = vertex::effective(row.number(0), row.number(1), row.number(2)).unwrap();
        row.assert_near(moved, row.number(3), row.number(4));
    }
}

#[test]
fn sphero_cylinders_moved() {
    for row in TORIC.rows() {
        let (from, to) = (row.number(1), row.number(2));
        let moved = vertex::effective_sphero_cyl(&row.lens(0), from, to).unwrap();
        row.assert_lens(&moved, &row.lens(3), 1e-8);
    }
}

#[test]
fn a_frame_of_three() {
    for row in CELLS.rows() {
        let stands = [(0, Cell::Front), (1, Cell::Middle), (2, Cell::Back)];
        let frame = stands.map(|(at, cell)| (SphereCyl::sphere(row.number(at)), cell));
        let together = cells::combined(&frame, row.number(3)).unwrap();
        row.assert_near(together.sphere, row.number(4), 1e-8);
        assert_eq!(together.cylinder, None, "{}", row.place);
    }
}
