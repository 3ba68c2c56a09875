//! Acuity: one scale beside another, the size of letters, categories and print.

use crate::table::{Row, Table, table};
use optics::acuity::{
    Acuity, Band, EvenLine, LetterScore, LogMar, NearAcuity, Over, Print, StandIn, StandInSource,
    Written, letter_height_mm, stroke_mm,
};

pub const NOTATIONS: Table = table!("acuity_notations.txt");
pub const EVEN_LINES: Table = table!("even_lines.txt");
pub const OPTOTYPES: Table = table!("optotypes.txt");
pub const LETTERS: Table = table!("letters.txt");
pub const IMPAIRMENT: Table = table!("impairment.txt");
pub const NEAR_PRINT: Table = table!("near_print.txt");
pub const DISTANCES: Table = table!("chart_distances.txt");
pub const STAND_INS: Table = table!("stand_ins.txt");

/// The cell, unless the source has none.
fn given(row: &Row, at: usize) -> Option<&'static str> {
    Some(row.text(at)).filter(|text| *text != "-")
}

fn written(row: &Row, text: &str) -> Written {
    let read = text.parse();
    read.unwrap_or_else(|error| panic!("{}: {error}", row.place))
}

fn measured(row: &Row, text: &str) -> LogMar {
    match Acuity::from(written(row, text)) {
        Acuity::Measured(read) => read,
        Acuity::Category(category) => panic!("{}: {category} is not measured", row.place),
    }
}

#[test]
fn one_acuity_in_four_notations() {
    for row in NOTATIONS.rows() {
        for at in 0..3 {
            if let Some(text) = given(&row, at) {
                row.assert_near(measured(&row, text).value(), row.number(3), 0.012);
            }
        }
    }
}

#[test]
fn a_chart_at_another_distance() {
    for row in DISTANCES.rows() {
        let [read, same] = [0, 1].map(|at| measured(&row, row.text(at)).value());
        row.assert_near(read, same, row.number(2));
    }
}

#[test]
fn labels_of_an_even_chart() {
    for row in EVEN_LINES.rows() {
        let line = EvenLine::nearest(LogMar::new(row.number(0)).unwrap()).unwrap();
        let labels = [Over::TwentyFeet, Over::SixMetres, Over::FourMetres];
        for (over, at) in labels.into_iter().zip(1..) {
            if let Some(label) = given(&row, at) {
                assert_eq!(line.label(over), label, "{}", row.place);
            }
        }
        if given(&row, 4).is_some() {
            row.assert_near(line.decimal(), row.number(4), 1e-12);
        }
    }
}

#[test]
fn sizes_of_letters() {
    for row in OPTOTYPES.rows() {
        let line = LogMar::new(row.number(1)).unwrap();
        let within = row.number(4);
        if given(&row, 2).is_some() {
            let height = letter_height_mm(row.number(0), line).unwrap();
            row.assert_near(height, row.number(2), within);
        }
        if given(&row, 3).is_some() {
            let stroke = stroke_mm(row.number(0), line).unwrap();
            row.assert_near(stroke, row.number(3), within);
        }
    }
}

#[test]
fn letter_counts() {
    for row in LETTERS.rows() {
        let score = LetterScore::nearest(measured(&row, row.text(0))).unwrap();
        row.assert_near(f64::from(score.letters()), row.number(1), 0.0);
    }
}

#[test]
fn bands_of_impairment() {
    for row in IMPAIRMENT.rows() {
        let band = Band::of(&written(&row, row.text(0)).into());
        for (at, number) in [(1, band.icd_10()), (2, band.icd_11())] {
            if given(&row, at).is_some() {
                row.assert_near(f64::from(number), row.number(at), 0.0);
            }
        }
    }
}

#[test]
fn print_near_by() {
    for row in NEAR_PRINT.rows() {
        let print = Print::m(row.number(0)).unwrap();
        if given(&row, 1).is_some() {
            row.assert_near(print.points() / row.number(1), 1.0, 0.1);
        }
        if given(&row, 4).is_some() {
            // An M unit is what a letter at 1 m has to be for 6/6.
            let times = LogMar::from_mar(print.m_units()).unwrap();
            let height = letter_height_mm(1.0, times).unwrap();
            row.assert_near(height / row.number(4), 1.0, 0.05);
        }
        if let (Some(_), Some(acuity)) = (given(&row, 2), given(&row, 3)) {
            let read = NearAcuity::new(print, row.number(2)).unwrap().acuity();
            row.assert_near(read.unwrap().value(), measured(&row, acuity).value(), 1e-9);
        }
    }
}

#[test]
fn numbers_beside_a_category() {
    for row in STAND_INS.rows() {
        let source = match row.text(1) {
            "2006" => StandInSource::SchulzeBonsel2006,
            _ => StandInSource::Lange2009,
        };
        let Written::Category(category) = written(&row, row.text(0)) else {
            panic!("{}: no category", row.place);
        };
        let found = category.stand_in(source).map(StandIn::for_statistics);
        match (found, given(&row, 2)) {
            (Some(logmar), Some(_)) => {
                let decimal = row.number(2);
                row.assert_near(10_f64.powf(-logmar) / decimal, 1.0, 0.05);
                if given(&row, 3).is_some() {
                    row.assert_near(logmar, row.number(3), 1e-9);
                }
            }
            (found, expected) => assert_eq!(found.is_some(), expected.is_some(), "{}", row.place),
        }
    }
}
