//! Letter acuity at odd distances.

use crate::assert_near;
use optics::acuity::{ChartLine, as_read, at_six_metres, logmar, with_letters};

// Computed from the formula: the traditional lines are not evenly spaced.
#[test]
fn lines_at_the_distance_they_are_made_for() {
    let expected = [1.0, 0.778, 0.602, 0.477, 0.301, 0.176, 0.0, -0.079, -0.176];
    for (line, logmar_expected) in ChartLine::ALL.into_iter().zip(expected) {
        for chart_m in [6.0, 3.0] {
            let found = logmar(line.denominator(), chart_m, chart_m).unwrap();
            assert_near(found, logmar_expected, 0.0005);
        }
    }
}

// Published: the nominal 6 m column beside logMAR, in a university table of 4 m chart sizes and a conversion sheet. Nominal
// labels are rounded preferred numbers, so they agree within 1.5 %, which is 0.006 logMAR.
#[test]
fn the_even_steps_of_a_modern_chart() {
    for (label, expected) in [
        (3.0, -0.3),
        (3.8, -0.2),
        (4.8, -0.1),
        (6.0, 0.0),
        (7.5, 0.1),
        (9.5, 0.2),
        (12.0, 0.3),
        (15.0, 0.4),
        (19.0, 0.5),
        (24.0, 0.6),
        (30.0, 0.7),
        (38.0, 0.8),
        (48.0, 0.9),
        (60.0, 1.0),
    ] {
        assert_near(logmar(label, 6.0, 6.0).unwrap(), expected, 0.006);
    }
}

// Computed from the formula.
#[test]
fn lines_read_at_another_distance() {
    for (label, used_at_m, read, at_six, expected) in [
        (12.0, 3.0, "3/12", "6/24", 0.602),
        (36.0, 2.0, "2/36", "6/108", 1.255),
        (60.0, 1.0, "1/60", "6/360", 1.778),
        (24.0, 3.0, "3/24", "6/48", 0.903),
        (5.0, 4.0, "4/5", "6/7.5", 0.097),
    ] {
        assert_eq!(as_read(label, 6.0, used_at_m).unwrap(), read);
        assert_eq!(at_six_metres(label, 6.0, used_at_m).unwrap(), at_six);
        assert_near(logmar(label, 6.0, used_at_m).unwrap(), expected, 0.0005);
    }
}

// Computed from the formula: what a changed distance adds.
#[test]
fn what_a_changed_distance_adds() {
    for (made_for_m, used_at_m, added) in [
        (6.0, 4.0, 0.176),
        (6.0, 3.0, 0.301),
        (6.0, 2.0, 0.477),
        (6.0, 1.0, 0.778),
        (3.0, 1.0, 0.477),
        (3.0, 6.0, -0.301),
    ] {
        assert_near(logmar(6.0, made_for_m, used_at_m).unwrap(), added, 0.0005);
    }
}

// The 6/12 line of a 3 m chart is read as 3/6 from its own distance: computed from the formula.
#[test]
fn a_three_metre_chart_keeps_its_label() {
    assert_eq!(as_read(12.0, 3.0, 3.0).unwrap(), "3/6");
    assert_eq!(at_six_metres(12.0, 3.0, 3.0).unwrap(), "6/12");
    assert_eq!(as_read(12.0, 3.0, 1.5).unwrap(), "1.5/6");
}

// Computed from the rule of 0.02 a letter (common practice; the rule itself from memory).
#[test]
fn letters_count_a_fiftieth() {
    assert_near(with_letters(0.3, 3).unwrap(), 0.24, 1e-12);
    assert_near(with_letters(0.3, -2).unwrap(), 0.34, 1e-12);
    assert!(with_letters(f64::NAN, 1).is_err() && with_letters(f64::INFINITY, 1).is_err());
}

#[test]
fn impossible_lines_and_distances_are_refused() {
    assert_eq!(
        ChartLine::new(7).unwrap_err().to_string(),
        "the chart has no 6/7 line: its lines are 6/60, 36, 24, 18, 12, 9, 6, 5 and 4"
    );
    for label in [0.0, -6.0, f64::NAN, f64::INFINITY] {
        assert!(logmar(label, 6.0, 6.0).is_err(), "{label}");
    }
    assert!(logmar(6.0, 0.0, 6.0).is_err());
    assert!(logmar(6.0, 6.0, 0.0).is_err());
}
