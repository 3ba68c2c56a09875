//! Thin lenses in contact, means of readings, and lenses off their axis.

use crate::table::{Row, Table, table};
use optics::{SphereCyl, Spread, contact, off_axis, spread, student};

pub const SUMS: Table = table!("sums.txt");
pub const RESIDUAL: Table = table!("residual.txt");
pub const MEANS: Table = table!("lens_means.txt");
pub const SPREAD: Table = table!("spread.txt");
pub const STUDENT: Table = table!("student.txt");

#[test]
fn lenses_in_contact() {
    for row in SUMS.rows() {
        let together = contact::together(&[row.lens(0), row.lens(1)]).unwrap();
        row.assert_lens(&together, &row.lens(2), row.number(3));
        let left = contact::left_over(&row.lens(2), &row.lens(0)).unwrap();
        row.assert_lens(&left, &row.lens(1), row.number(3));
    }
}

#[test]
fn lenses_off_their_axis() {
    for row in RESIDUAL.rows() {
        let (intended, turn) = (row.lens(0), row.number(1));
        let residual = off_axis::residual(&intended, turn).unwrap();
        row.assert_lens(&residual, &row.lens(2), row.number(3));
        // Found over the turned lens, the same residual leads back to what was intended, and to a lens ordered as far off.
        let refraction = off_axis::refraction(&intended, turn, &row.lens(2)).unwrap();
        row.assert_lens(&refraction, &intended, row.number(3));
        let order = off_axis::to_order(&intended, turn, &row.lens(2)).unwrap();
        let expected = off_axis::turned(&intended, -turn).unwrap();
        row.assert_lens(&order, &expected, row.number(3));
    }
}

fn readings(row: &Row) -> Vec<SphereCyl> {
    let read = |text| SphereCyl::parse(text).unwrap_or_else(|e| panic!("{}: {e}", row.place));
    row.text(0).split(';').map(read).collect()
}

#[test]
fn means_of_readings() {
    for row in MEANS.rows() {
        let mean = spread::mean(&readings(&row)).unwrap();
        row.assert_lens(&mean, &row.lens(1), 1e-8);
    }
}

#[test]
fn spreads_of_readings() {
    for row in SPREAD.rows() {
        let readings = readings(&row);
        let spread = Spread::of(&readings).unwrap();
        assert_eq!(spread.count(), readings.len(), "{}", row.place);
        let cells = [(0, 0), (0, 1), (0, 2), (1, 1), (1, 2), (2, 2)];
        for (at, (one, other)) in (1..).zip(cells) {
            let spread = spread.covariance().0;
            row.assert_near(spread[one][other], row.number(at), 1e-10);
            row.assert_near(spread[other][one], row.number(at), 1e-10);
        }
        let deviations = spread.deviations();
        row.assert_near(deviations.m, row.number(1).sqrt(), 1e-9);
        row.assert_near(deviations.j0, row.number(4).sqrt(), 1e-9);
        row.assert_near(deviations.j45, row.number(6).max(0.0).sqrt(), 1e-6);
    }
}

#[test]
fn students_t() {
    for row in STUDENT.rows() {
        let freedom = row.text(0).parse().unwrap();
        row.assert_near(student::two_sided_95(freedom), row.number(1), row.number(2));
    }
}
