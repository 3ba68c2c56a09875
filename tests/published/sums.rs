//! Thin lenses in contact.

use crate::table::{Table, table};

pub const SUMS: Table = table!("sums.txt");

#[test]
fn lenses_in_contact() {
    for row in SUMS.rows() {
        let together = row.lens(0).vector() + row.lens(1).vector();
        row.assert_lens(&together.into(), &row.lens(2), 0.001);
    }
}
