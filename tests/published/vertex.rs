//! Lenses worn nearer to the eye or farther from it.

use crate::table::{Table, table};
use optics::vertex;

pub const MOVED: Table = table!("vertex_moved.txt");

#[test]
fn spheres_moved() {
    for row in MOVED.rows() {
        let moved = vertex::effective(row.number(0), row.number(1), row.number(2)).unwrap();
        row.assert_near(moved, row.number(3), 0.0051);
    }
}
