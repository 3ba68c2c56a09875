//! Retinoscopy: lenses from single meridians, slips, the reflex, eyes off their line of sight.

use crate::table::{Row, Table, table};
use optics::retinoscopy::reflex::{Light, Lit, Pace, Run};
use optics::retinoscopy::slips::Slip;
use optics::retinoscopy::{Fit, Measured, Neutral, Setup, WorkingDistance, WorkingLens};
use optics::retinoscopy::{meridian_fit, near_technique, net, off_sight, over_lens, reflex, slips};
use optics::{Cell, chi_square};

pub const MERIDIAN_FITS: Table = table!("meridian_fits.txt");
pub const CHI_SQUARE: Table = table!("chi_square.txt");
pub const REFLEX: Table = table!("reflex.txt");
pub const REFLEX_LIT: Table = table!("reflex_lit.txt");
pub const SLIPS: Table = table!("slips.txt");
pub const OFF_SIGHT: Table = table!("off_sight.txt");
pub const OVER_LENS: Table = table!("over_lens.txt");
pub const NETS: Table = table!("nets.txt");
pub const NEAR_TECHNIQUE: Table = table!("near_technique.txt");

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

fn cm(row: &Row, at: usize) -> WorkingDistance {
    let distance = WorkingDistance::from_cm(row.number(at));
    distance.unwrap_or_else(|error| panic!("{}: {error}", row.place))
}

fn run(row: &Row) -> Run {
    let light = match row.text(0) {
        "parallel" => Ok(Light::PARALLEL),
        _ => Light::at_cm(row.number(0)),
    };
    let run = light.and_then(|light| reflex::run(light, cm(row, 1), row.number(2), row.number(3)));
    run.unwrap_or_else(|error| panic!("{}: {error}", row.place))
}

#[test]
fn how_the_reflex_runs() {
    for row in REFLEX.rows() {
        let times = match run(&row).pace() {
            Pace::Times(times) => times,
            Pace::Still => 0.0,
            Pace::Endless => panic!("{}: neutral", row.place),
        };
        row.assert_near(times, row.number(4), row.number(5));
    }
}

#[test]
fn what_of_the_pupil_is_lit() {
    for row in REFLEX_LIT.rows() {
        match run(&row).lit(row.number(4), row.number(5)).unwrap() {
            Lit::Band { from, to } => {
                row.assert_near(from, row.number(6), 2e-8);
                row.assert_near(to, row.number(7), 2e-8);
            }
            other => panic!("{}: {other:?}", row.place),
        }
    }
}

#[test]
fn slips_of_distance() {
    for row in SLIPS.rows() {
        let first = cm(&row, 1);
        let found = match row.text(0) {
            "wrong" => Slip::WrongDistance {
                truly: first,
                assumed: cm(&row, 2),
            }
            .too_plus(),
            "cornea" => Slip::to_the_cornea(first, row.number(2))
                .unwrap()
                .too_plus(),
            "forgotten" => Slip::Forgotten(first).too_plus(),
            "doubled" => Slip::Doubled(first).too_plus(),
            "moved" => slips::moved(first, cm(&row, 2)),
            other => panic!("{}: “{other}” is no slip", row.place),
        };
        row.assert_near(found, row.number(3), row.number(4));
    }
}

#[test]
fn beside_the_line_of_sight() {
    for row in OFF_SIGHT.rows() {
        let shift = off_sight::shift(row.number(0)).unwrap();
        row.assert_near(shift.mean_sphere, row.number(1), 1e-12);
        row.assert_near(shift.sphere, row.number(2), 1e-12);
        row.assert_near(shift.cylinder_times, row.number(3), 1e-12);
    }
}

#[test]
fn over_a_worn_lens() {
    for row in OVER_LENS.rows() {
        let working = row.number(2);
        let lens = (working > 0.0).then(|| WorkingLens::new(working, Cell::Back).unwrap());
        let setup = Setup::new(cm(&row, 3), lens);
        let over = row.lens(1);
        let found = over_lens::found(&row.lens(0), &over, &setup, row.number(4)).unwrap();
        row.assert_lens(&found.refraction, &row.lens(5), 2e-8);
    }
}

#[test]
fn nets() {
    for row in NETS.rows() {
        let found = net(
            &Neutral::InFrame(row.lens(0)),
            &Setup::new(cm(&row, 1), None),
        );
        row.assert_lens(&found.net, &row.lens(2), 0.0006);
    }
}

#[test]
fn near_retinoscopy_in_the_dark() {
    for row in NEAR_TECHNIQUE.rows() {
        let allowance = near_technique::allowance(row.number(0), cm(&row, 1)).unwrap();
        row.assert_near(allowance.taken_off(), row.number(2), 1e-12);
    }
}
