//! How different two lenses are.

use crate::table::{Table, table};
use optics::SphereCyl;
use optics::change::Change;

pub const TURNED: Table = table!("turned_axes.txt");
pub const BETWEEN: Table = table!("between_lenses.txt");

#[test]
fn a_turned_cylinder() {
    const RIGHT: f64 = 90.0;
    for row in TURNED.rows() {
        let (degrees, cylinder) = (row.number(0), row.number(1));
        let right = SphereCyl::new(0.0, cylinder, RIGHT).unwrap();
        let turned = SphereCyl::new(0.0, cylinder, RIGHT + degrees).unwrap();
        let change = Change::between(&right, &turned).unwrap();
        row.assert_near(change.axis_turned(), degrees, 1e-9);
        row.assert_near(change.axis_blur(), row.number(2), 0.006);
        row.assert_near(2.0 * change.axis_blur(), -row.number(3), 0.006);

        let mends: SphereCyl = (right.vector() - turned.vector()).into();
        row.assert_near(mends.sphere, row.number(2), 0.006);
        row.assert_near(mends.cylinder_power(), row.number(3), 0.006);
        let from_right = (mends.cylinder.unwrap().axis().degrees() - RIGHT).abs();
        row.assert_near(from_right, row.number(4), 0.05);
    }
}

#[test]
fn the_whole_difference() {
    for row in BETWEEN.rows() {
        let change = Change::between(&row.lens(0), &row.lens(1)).unwrap();
        row.assert_near(change.blur(), row.number(2), 1e-9);
    }
}
