//! The usual written forms. Which they are: common practice, no source.

use record::{Acuity, Decision, Eye, Pressure, Section, Subjective};

use super::one;

fn subjective(sections: &[Section]) -> &Subjective {
    let found = sections.iter().find_map(|section| match section {
        Section::Subjective(found) => Some(found),
        _ => None,
    });
    found.unwrap()
}

fn acuity(sections: &[Section]) -> &Acuity {
    let found = sections.iter().find_map(|section| match section {
        Section::Acuity(found) => Some(found),
        _ => None,
    });
    found.unwrap()
}

fn note(sections: &[Section]) -> &str {
    let found = sections.iter().find_map(|section| match section {
        Section::Decision(Decision { note, .. }) => Some(note.as_str()),
        _ => None,
    });
    found.unwrap_or_default()
}

#[test]
fn a_lens_in_one_cell() {
    for (cell, lens) in [
        ("+2.50/-1.00x90", "+2.50 / −1.00 × 90"),
        ("+2,50 −1,00 × 90", "+2.50 / −1.00 × 90"),
        ("-3.25", "−3.25 DS"),
        ("plano", "0.00"),
    ] {
        let row = one("RE Rx", cell).unwrap();
        let right = subjective(&row.sections).eyes.right.done().unwrap();
        assert_eq!(right.lens.to_string(), lens, "{cell}");
        assert!(subjective(&row.sections).eyes.left.is_blank());
        assert_eq!(note(&row.sections), "", "nothing is left over");
    }
}

#[test]
fn a_lens_in_three_cells_with_the_addition() {
    let headings = "R sph;R cyl;R axis;L sph;L cyl;L axis;Add";
    let row = one(headings, "+2.50;-1.00;90;-0.75;0.00;;2.25").unwrap();
    let found = subjective(&row.sections);
    let lens = |eye| found.eyes.of(eye).done().unwrap().lens.to_string();
    assert_eq!(lens(Eye::Right), "+2.50 / −1.00 × 90");
    assert_eq!(lens(Eye::Left), "−0.75 DS");
    let add = found.add.unwrap();
    assert_eq!((add.power, add.at_cm), (2.25, 40.0));
    assert!(note(&row.sections).contains("40 cm stands in"));
}

#[test]
fn a_column_of_plain_numbers_leaves_its_plus_out() {
    let file = |spheres: [&str; 2]| {
        let [one, other] = spheres;
        format!("Number;Exam date;R sphere\n12;04/03/2025;{one}\n13;04/03/2025;{other}\n")
    };
    let story = super::desk().story;
    let judged = |spheres| super::judged(&file(spheres), &story);
    let plain = judged(["2.5", "-1.25"]);
    let right = subjective(&plain[0].verdict.as_ref().unwrap().sections)
        .eyes
        .right
        .done()
        .unwrap()
        .lens;
    assert_eq!(right.to_string(), "+2.50 DS");
    // Where somebody writes the plus, what has no sign has lost it.
    let lost = judged(["2.5", "+1.25"]);
    let faults = lost[0].verdict.as_ref().unwrap_err();
    assert!(faults[0].to_string().contains("has no sign"), "{faults:?}");
    assert!(lost[1].verdict.is_ok());
}

#[test]
fn a_cylinder_needs_its_sign_its_axis_and_its_sphere() {
    for (cells, said) in [
        ("+1.00;0.50;90", "has no sign"),
        ("+1.00;-0.50;", "its cylinder has no axis"),
        ("+1.00;-0.50;200", "200"),
        (";-0.50;90", "it has no sphere"),
        ("+90.00;;", "+90.00"),
    ] {
        let faults = one("R sph;R cyl;R axis", cells).unwrap_err();
        assert!(
            faults.iter().any(|fault| fault.contains(said)),
            "{cells}: {faults:?}"
        );
    }
}

#[test]
fn an_acuity_on_the_chart_stands_as_it_was_written() {
    for (cell, seen, at) in [
        ("6/12", "6/12", 6.0),
        ("6/9 -2", "6/9 −2", 6.0),
        ("6/9+1", "6/9 +1", 6.0),
        ("3/24", "6/24", 3.0),
        ("HM", "sees hand movements", 6.0),
        ("CF 50 cm", "counts fingers at 50 cm", 6.0),
    ] {
        let row = one("R unaided", cell).unwrap();
        let found = acuity(&row.sections);
        let unaided = found.eyes.right.unaided.done().unwrap();
        assert_eq!(unaided.to_string(), seen, "{cell}");
        assert!((found.chart.used_at_m - at).abs() < 1e-9, "{cell}");
        assert_eq!(note(&row.sections), "", "{cell}");
    }
}

/// Computed from the formula: logMAR is the decimal logarithm of the denominator over the numerator, a letter counts 0.02.
#[test]
fn another_measure_comes_within_a_letter_and_is_kept_in_words() {
    for (cell, logmar) in [
        ("20/40", (40.0_f64 / 20.0).log10()),
        ("0.3 logMAR", 0.3),
        ("logMAR 0.4", 0.4),
        ("6/7.5", (7.5_f64 / 6.0).log10()),
        ("6/48", (48.0_f64 / 6.0).log10()),
        ("-0.1 logMAR", -0.1),
    ] {
        let row = one("R unaided", cell).unwrap();
        let found = acuity(&row.sections);
        let seen = found.eyes.right.unaided.done().unwrap();
        let off = found.chart.logmar(seen).unwrap() - logmar;
        assert!(off.abs() <= 0.02 + 1e-9, "{cell}: {seen}");
        assert!(note(&row.sections).contains(cell), "{cell}");
    }
}

#[test]
fn a_bare_number_is_taken_only_where_its_meaning_is_said() {
    let faults = one("R unaided", "0.3").unwrap_err();
    assert!(
        faults[0].ends_with("R unaided: “0.3” may be a decimal or a logMAR: say which it is"),
        "{faults:?}"
    );
    for (heading, logmar) in [("R unaided logMAR", 0.3), ("R unaided (decimal)", 0.5229)] {
        let row = one(heading, "0.3").unwrap();
        let found = acuity(&row.sections);
        let seen = found.eyes.right.unaided.done().unwrap();
        // Computed from the formula: a decimal 0.3 is logMAR 0.523.
        let off = found.chart.logmar(seen).unwrap() - logmar;
        assert!(off.abs() <= 0.02, "{heading}: {seen}");
    }
}

#[test]
fn an_acuity_through_a_lens_stands_with_the_lens() {
    let row = one("RE Rx;RE VA;LE VA", "-1.00;6/6;6/9").unwrap();
    let right = subjective(&row.sections).eyes.right.done().unwrap();
    assert_eq!(right.acuity.unwrap().to_string(), "6/6");
    let left = &acuity(&row.sections).eyes.left.with_glasses;
    assert_eq!(left.done().unwrap().to_string(), "6/9");
}

#[test]
fn what_no_chart_shows_is_kept_aside() {
    for (cells, said) in [
        ("6/120;", "beyond every line"),
        ("six twelfths;", "six twelfths"),
        ("6/6;3/6", "different distances"),
    ] {
        let faults = one("R unaided;L unaided", cells).unwrap_err();
        assert!(
            faults.iter().any(|fault| fault.contains(said)),
            "{cells}: {faults:?}"
        );
    }
}

#[test]
fn pressures_say_what_was_not_said() {
    let row = one("R IOP;L IOP", "16;17,5 mmHg").unwrap();
    let [Section::Pressure(Pressure { taken })] = row.sections.as_slice() else {
        panic!("{:?}", row.sections);
    };
    let mean = |eye| taken[0].mean_mmhg(eye);
    assert_eq!(
        (mean(Eye::Right), mean(Eye::Left)),
        (Some(16.0), Some(17.5))
    );
    assert!(taken[0].note.contains("not said"));
    for (cell, said) in [("high", "is no pressure"), ("900", "900")] {
        let faults = one("R IOP", cell).unwrap_err();
        assert!(faults[0].contains(said), "{faults:?}");
    }
}

#[test]
fn notes_go_along_in_words() {
    let row = one("RE Rx;Remarks", "-1.00;held over from spring").unwrap();
    assert_eq!(
        note(&row.sections),
        "taken from elsewhere: Remarks: held over from spring"
    );
}
