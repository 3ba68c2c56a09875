//! Finished spectacles against their order.

use crate::table::{Row, Table, table};
use optics::prism::Prism;
use optics::tolerance::{
    ANSI_Z80_1_2015, ANSI_Z80_1_2015_PROGRESSIVE, Finished, Hundredths, ISO_21987_2017, Measured,
    Ordered, Outcome, ReadTo, Report, Standard, Verdict, What,
};
use optics::{Eye, Eyes, SphereCyl};

pub const LENS: Table = table!("tolerance_lens.txt");
pub const MORE: Table = table!("tolerance_more.txt");
pub const PAIR: Table = table!("tolerance_pair.txt");
pub const AXIS_BASIS: Table = table!("tolerance_axis_basis.txt");

fn standard(row: &Row) -> &'static Standard {
    match row.text(0) {
        "ansi" => &ANSI_Z80_1_2015,
        "progressive" => &ANSI_Z80_1_2015_PROGRESSIVE,
        "iso" => &ISO_21987_2017,
        other => panic!("{}: “{other}” is no standard", row.place),
    }
}

fn plain(lens: SphereCyl) -> Finished {
    Finished::new(lens).expect("the lenses of the tables are in range")
}

fn judge(row: &Row, ordered: Eyes<Finished>, lenses: Eyes<Finished>) -> Report {
    let read_to = ReadTo::Hundredth;
    standard(row).judge(&Ordered(ordered), &Measured { lenses, read_to })
}

fn both(lens: Finished) -> Eyes<Finished> {
    Eyes {
        right: lens,
        left: lens,
    }
}

/// The right eye's verdict that a name picks out; of two powers the farther off.
fn verdict(row: &Row, report: &Report, name: &str) -> Verdict {
    let named = |verdict: &&Verdict| match verdict.what {
        What::Power(eye, _) => eye == Eye::Right && name == "power",
        What::Cylinder(eye) => eye == Eye::Right && name == "cylinder",
        What::Axis(eye) => eye == Eye::Right && name == "axis",
        What::Addition(eye) => eye == Eye::Right && name == "addition",
        What::Segment(eye) => eye == Eye::Right && name == "segment",
        What::HorizontalPrism => name == "horizontal",
        What::VerticalPrism => name == "vertical",
    };
    let found = report.verdicts.iter().filter(named);
    let worst = found.max_by_key(|verdict| verdict.off);
    *worst.unwrap_or_else(|| panic!("{}: no verdict on {name}", row.place))
}

fn assert_verdict(row: &Row, found: &Verdict, limit: Hundredths, outcome: &str) {
    assert_eq!(found.limit, limit, "{}", row.place);
    let stands = match found.outcome {
        Outcome::Within | Outcome::Borderline => "within",
        Outcome::Outside => "outside",
    };
    assert_eq!(stands, outcome, "{}: {}", row.place, found.sentence());
}

#[test]
fn lenses_against_their_order() {
    for row in LENS.rows() {
        let name = row.text(1);
        let (ordered, measured) = (plain(row.lens(2)), plain(row.lens(3)));
        let report = judge(&row, both(ordered), both(measured));
        let found = verdict(&row, &report, name);
        let scale = if name == "axis" { 100.0 } else { 1.0 };
        let limit = Hundredths((row.number(4) * scale) as i64);
        assert_verdict(&row, &found, limit, row.text(5));
    }
}

#[test]
fn additions_and_segment_heights() {
    for row in MORE.rows() {
        let lens = plain(SphereCyl::sphere(1.0));
        let with = |value| match row.text(1) {
            "addition" => lens.with_add(value).unwrap(),
            _ => lens.with_segment(value).unwrap(),
        };
        let report = judge(&row, both(with(row.number(2))), both(with(row.number(3))));
        let found = verdict(&row, &report, row.text(1));
        assert_verdict(&row, &found, Hundredths(row.number(4) as i64), row.text(5));
    }
}

#[test]
fn prism_of_a_pair() {
    for row in PAIR.rows() {
        let ordered = Eyes {
            right: plain(row.lens(1)),
            left: plain(row.lens(2)),
        };
        let off = Prism::read(row.text(4), Eye::Right).unwrap();
        let right = ordered.right.with_prism(off).unwrap();
        let report = judge(&row, ordered, Eyes { right, ..ordered });
        let found = verdict(&row, &report, row.text(3));
        assert_verdict(&row, &found, Hundredths(row.number(5) as i64), row.text(6));
    }
}

// The residual is taken from the lenses themselves, so the formula and the algebra of lenses stand against each other.
#[test]
fn axis_errors_that_leave_an_eighth() {
    for row in AXIS_BASIS.rows() {
        let (cylinder, degrees) = (row.number(0), row.number(1));
        let residual = |degrees: f64| {
            let at = |axis| SphereCyl::new(0.0, -cylinder, axis).unwrap().vector();
            2.0 * (at(90.0) - at(90.0 + degrees)).astigmatism()
        };
        let within = row.number(2);
        let place = &row.place;
        assert!(residual(degrees - within) <= 0.12, "{place}: too far below");
        assert!(residual(degrees + within) >= 0.12, "{place}: too far above");
    }
}
