//! Near: amplitudes, additions, clear ranges and low vision.

use crate::table::{Row, Table, table};
use optics::acuity::{Acuity, LogMar, Print, Written};
use optics::near;

pub const AMPLITUDE: Table = table!("amplitude.txt");
pub const ADDITIONS: Table = table!("additions.txt");
pub const CLEAR_RANGES: Table = table!("clear_ranges.txt");
pub const LOW_VISION: Table = table!("low_vision.txt");

fn share(row: &Row, at: usize) -> near::Share {
    match row.text(at) {
        "half" => near::Share::Half,
        "two thirds" => near::Share::TwoThirds,
        other => panic!("{}: “{other}” is no share", row.place),
    }
}

fn print(row: &Row, at: usize) -> Print {
    let print = row.text(at).parse();
    print.unwrap_or_else(|error| panic!("{}: {error}", row.place))
}

fn acuity(row: &Row, at: usize) -> LogMar {
    match row.text(at).parse::<Written>().map(Acuity::from) {
        Ok(Acuity::Measured(read)) => read,
        other => panic!("{}: {other:?}", row.place),
    }
}

#[test]
fn amplitude_by_age() {
    for row in AMPLITUDE.rows() {
        let age = row.number(1);
        let found = match row.text(0) {
            "donders" => near::donders(age).unwrap(),
            "anderson" => near::anderson(age).unwrap(),
            "least" => near::hofstetter(age).unwrap().least,
            "mean" => near::hofstetter(age).unwrap().mean,
            "most" => near::hofstetter(age).unwrap().most,
            other => panic!("{}: “{other}” is nobody", row.place),
        };
        row.assert_near(found, row.number(2), 0.005);
    }
}

#[test]
fn additions_to_begin_with() {
    for row in ADDITIONS.rows() {
        let first = row.number(1);
        match row.text(0) {
            "age" => {
                let add = near::by_age(first).unwrap().unwrap();
                row.assert_near(add.least, row.number(2), 0.0);
                row.assert_near(add.most, row.number(3), 0.0);
            }
            "share" => assert_eq!(
                near::Share::for_age(first).unwrap(),
                share(&row, 2),
                "{}",
                row.place
            ),
            "demand" => {
                let add = near::tentative(first, row.number(2), share(&row, 3)).unwrap();
                row.assert_near(add.dioptres(), row.number(4), 0.005);
            }
            _ => {
                let left = near::in_reserve(first, row.number(2), row.number(3)).unwrap();
                row.assert_near(left, row.number(4), 0.005);
            }
        }
    }
}

#[test]
fn clear_ranges() {
    for row in CLEAR_RANGES.rows() {
        let clear = near::clear_range(row.number(0), row.number(1)).unwrap();
        let ends = [clear.farthest_cm(), clear.nearest_cm()];
        for (end, at) in ends.into_iter().zip(2..) {
            match (end, row.text(at)) {
                (None, "-") => {}
                (Some(cm), _) => row.assert_near(cm, row.number(at), row.number(4)),
                (None, other) => panic!("{}: no end, expected {other}", row.place),
            }
        }
    }
}

#[test]
fn low_vision() {
    for row in LOW_VISION.rows() {
        let found = match row.text(0) {
            "kestenbaum" => near::kestenbaum_for(acuity(&row, 1), print(&row, 2)),
            "needed" => {
                near::magnification_needed(print(&row, 1), print(&row, 2), row.number(3)).unwrap()
            }
            "reserve" => near::acuity_reserve(print(&row, 1), print(&row, 2)),
            "simple" => near::magnification(row.number(1)).unwrap(),
            "with one" => near::magnification_at_near_point(row.number(1)).unwrap(),
            "held at" => near::reading_distance_cm(row.number(1)).unwrap(),
            other => panic!("{}: “{other}” is no rule", row.place),
        };
        row.assert_near(found, row.number(4), 0.005);
    }
}
