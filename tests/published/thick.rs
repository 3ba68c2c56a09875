//! The vertex powers of thick lenses.

use crate::table::{Table, table};
use optics::{SphereCyl, ThickLens};

pub const THICK: Table = table!("thick.txt");
pub const TORIC: Table = table!("thick_toric.txt");

#[test]
fn spherical_surfaces() {
    for row in THICK.rows() {
        let [front, back] = [0, 1].map(|at| SphereCyl::sphere(row.number(at)));
        let lens = ThickLens::new(front, back, row.number(2), row.number(3)).unwrap();
        let within = row.number(6);
        row.assert_near(lens.back_vertex_power().sphere, row.number(4), within);
        if row.text(5) != "-" {
            row.assert_near(lens.front_vertex_power().sphere, row.number(5), within);
        }
    }
}

#[test]
fn toric_surfaces_at_any_angle() {
    for row in TORIC.rows() {
        let lens = ThickLens::new(row.lens(0), row.lens(1), row.number(2), row.number(3)).unwrap();
        row.assert_lens(&lens.back_vertex_power(), &row.lens(4), 1e-7);
        row.assert_lens(&lens.front_vertex_power(), &row.lens(5), 1e-7);
    }
}
