//! Retinoscopy: lenses from single meridians, slips, the reflex, eyes off their line of sight.

use crate::table::{Row, Table, table};
use optics::chi_square;
use optics::retinoscopy::{Fit, Measured, meridian_fit};

pub const MERIDIAN_FITS: Table = table!("meridian_fits.txt");
pub const CHI_SQUARE: Table = table!("chi_square.txt");

fn measured(row: &Row) -> Vec<Measured> {
    let findings = row.text(0).split(';');
    findings.map(|text| finding(row, text)).collect()
}

fn finding(row: &Row, text: &str) -> Measured {
    let mut numbers = text
        .split_whitespace()
        .map_while(|number| number.parse().ok());
    let mut next = || numbers.next().unwrap_or(f64::NAN);
    let found = Measured::new(next(), next(), next());
    found.unwrap_or_else(|error| panic!("{}: {error}", row.place))
}

fn parts(fit: &Fit) -> [f64; 9] {
    let [[m, m_j0, m_j45], [_, j0, j0_j45], [.., j45]] = fit.covariance.0;
    let vector = fit.vector;
    [
        vector.m, vector.j0, vector.j45, m, m_j0, m_j45, j0, j0_j45, j45,
    ]
}

#[test]
fn lenses_from_single_meridians() {
    for row in MERIDIAN_FITS.rows() {
        let fit = meridian_fit(&measured(&row)).unwrap();
        for (at, part) in (1..).zip(parts(&fit)) {
            row.assert_near(part, row.number(at), 2e-9);
        }
        match fit.residual {
            Some(residual) => row.assert_near(residual, row.number(10), 2e-9),
            None => assert_eq!(row.text(10), "-", "{}", row.place),
        }
        assert_eq!(fit.disagree, row.text(11) == "yes", "{}", row.place);
        let ellipse = fit.ellipse(0.90).unwrap();
        row.assert_near(ellipse.major, row.number(12), 2e-6);
        row.assert_near(ellipse.minor, row.number(13), 2e-6);
        let off = (ellipse.angle_degrees - row.number(14)).rem_euclid(180.0);
        row.assert_near(off.min(180.0 - off), 0.0, 2e-6);
    }
}

#[test]
fn what_chance_stays_below() {
    for row in CHI_SQUARE.rows() {
        let found = match row.text(0) {
            "parts" => chi_square::two_parts(row.number(2)).unwrap(),
            _ => chi_square::upper_95(row.number(1) as usize),
        };
        row.assert_near(found, row.number(3), row.number(4));
    }
}
