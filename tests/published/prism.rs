//! Prism.

use crate::table::{Row, Table, table};
use optics::prism::{Decentration, Prism, Reading, of_deviation, relative, split};
use optics::{Eye, Eyes};

pub const DECENTRED: Table = table!("prism_decentred.txt");
pub const WANTED: Table = table!("prism_wanted.txt");
pub const COMBINED: Table = table!("prism_combined.txt");
pub const RESOLVED: Table = table!("prism_resolved.txt");
pub const ANGLE: Table = table!("prism_angle.txt");
pub const CENTRED: Table = table!("prism_centred.txt");
pub const READING: Table = table!("prism_reading.txt");
pub const SPLIT: Table = table!("prism_split.txt");

fn eye(row: &Row) -> Eye {
    match row.text(0) {
        "right" => Eye::Right,
        "left" => Eye::Left,
        other => panic!("{}: “{other}” is no eye", row.place),
    }
}

fn prism(row: &Row, at: usize, eye: Eye) -> Prism {
    let one =
        |text| Prism::read(text, eye).unwrap_or_else(|error| panic!("{}: {error}", row.place));
    row.text(at).split('+').map(one).sum()
}

#[test]
fn lenses_off_centre() {
    for row in DECENTRED.rows() {
        let off = Decentration::inward(eye(&row), row.number(2), row.number(3)).unwrap();
        let found = Prism::of_decentred(&row.lens(1), off).unwrap();
        row.assert_near(found.h(), row.number(4), row.number(6));
        row.assert_near(found.v(), row.number(5), row.number(6));
    }
}

#[test]
fn movements_that_give_a_wanted_prism() {
    for row in WANTED.rows() {
        let wanted = Prism::new(row.number(2), row.number(3)).unwrap();
        let moved = Decentration::wanted(&row.lens(1), wanted).unwrap();
        row.assert_near(moved.in_mm(eye(&row)), row.number(4), row.number(6));
        row.assert_near(moved.up_mm(), row.number(5), row.number(6));
    }
}

#[test]
fn parts_combined() {
    for row in COMBINED.rows() {
        let whole = prism(&row, 1, eye(&row));
        row.assert_near(whole.amount(), row.number(2), row.number(4));
        row.assert_near(whole.base_degrees(), row.number(3), row.number(4));
    }
}

#[test]
fn prisms_resolved() {
    for row in RESOLVED.rows() {
        let parts = prism(&row, 1, eye(&row)).written(eye(&row));
        assert_eq!(parts, row.text(2), "{}", row.place);
    }
}

#[test]
fn prisms_and_angles() {
    for row in ANGLE.rows() {
        let found = Prism::new(row.number(0), 0.0).unwrap().deviation_degrees();
        row.assert_near(found, row.number(1), row.number(2));
        // One degree is 1.75 Δ, so what the table's rounding allows in degrees allows so much more here.
        let within = row.number(2) * 2.0 + row.number(0) * 1e-6;
        row.assert_near(of_deviation(row.number(1)).unwrap(), row.number(0), within);
    }
}

#[test]
fn centres_brought_before_the_pupils() {
    for row in CENTRED.rows() {
        let moved = Decentration::to_pupil(eye(&row), row.number(1), row.number(2)).unwrap();
        row.assert_near(moved.in_mm(eye(&row)), row.number(3), 1e-9);
    }
}

#[test]
fn pairs_at_the_reading_point() {
    for row in READING.rows() {
        let pair = Eyes {
            right: row.lens(0),
            left: row.lens(1),
        };
        let found = Reading::new(row.number(2), 0.0)
            .unwrap()
            .through(&pair)
            .unwrap();
        row.assert_near(found.relative().v(), row.number(3), row.number(4));
    }
}

#[test]
fn prisms_shared_between_the_eyes() {
    for row in SPLIT.rows() {
        let whole = relative(prism(&row, 0, Eye::Right), prism(&row, 1, Eye::Left));
        let shared = split(whole, Eye::Right, 0.5).unwrap();
        assert_eq!(
            shared.right.written(Eye::Right),
            row.text(2),
            "{}",
            row.place
        );
        assert_eq!(shared.left.written(Eye::Left), row.text(3), "{}", row.place);
    }
}
