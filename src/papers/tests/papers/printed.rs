//! What a prescription says.

use papers::{BornLine, EyeLine, Options, Prescription};
use record::{Born, Chart, Eyes, NearAdd, PersonDetails, Section, Subjective};

use crate::desk::{Desk, PERSON, chosen, day, lenses, neutral, orla, prescribe, unable};

const LOCAL_RULES: &str =
    "to be made up and fitted only by a person whom the local rules allow to dispense";

fn line(eye: &'static str, [sphere, cylinder, axis, add, acuity, note]: [&str; 6]) -> EyeLine {
    EyeLine {
        eye,
        sphere: sphere.into(),
        cylinder: cylinder.into(),
        axis: axis.into(),
        add: add.into(),
        acuity: acuity.into(),
        note: note.into(),
    }
}

#[test]
fn every_line_stands_as_it_was_entered() {
    let desk = Desk::signed(Subjective {
        vertex_mm: Some(12.0),
        add: Some(NearAdd {
            power: 2.5,
            at_cm: 40.0,
        }),
        ..lenses("+3.25 / −1.50 × 90", "0.00")
    });
    let expected = Prescription {
        name: "Orla Pennyquick".into(),
        born: BornLine {
            label: "date of birth",
            value: "31 January 1940".into(),
        },
        examined_on: "4 March 2026".into(),
        written_on: "5 March 2026".into(),
        eyes: [
            line("right", ["+3.25", "\u{2212}1.50", "90", "+2.50", "6/9", ""]),
            line("left", ["0.00", "", "", "+2.50", "6/12", ""]),
        ],
        near: Some("40 cm".into()),
        vertex: Some("12 mm".into()),
        valid_until: None,
        cautions: vec![LOCAL_RULES.into()],
        amendments: vec![],
        signer: "M. Farrow, optometrist".into(),
    };
    assert_eq!(desk.prescription(), Ok(expected));
}

#[test]
fn the_cylinder_keeps_the_form_and_the_axis_of_its_entry() {
    let desk = Desk::signed(lenses("−0.75 / +1.25 × 22.5", "−1.00 / −0.50 × 0"));
    let [right, left] = desk.prescription().unwrap().eyes;
    assert_eq!(
        (right.cylinder.as_str(), right.axis.as_str()),
        ("+1.25", "22.5")
    );
    // House rule of the trade: 180 is written, never 0.
    assert_eq!((left.sphere.as_str(), left.axis.as_str()), ("−1.00", "180"));
}

/// Computed from the formula: 67 cm is 1.4925 D, so +4.75 at neutral is +3.2575, on the quarter step +3.25.
#[test]
fn a_lens_from_retinoscopy_alone_says_so() {
    let mut desk = Desk::with_exam(orla());
    desk.put(neutral("+4.75 / −1.50 × 90", unable("false eye")));
    desk.put(prescribe());
    desk.sign();
    let paper = desk.prescription().unwrap();
    assert_eq!(
        paper.eyes,
        [
            line("right", ["+3.25", "−1.50", "90", "", "", ""]),
            line("left", ["", "", "", "", "", "unable: false eye"]),
        ]
    );
    assert_eq!(
        paper.cautions,
        [
            "measured without spoken answers (retinoscopy only): right eye",
            LOCAL_RULES
        ]
    );
}

#[test]
fn one_eye_may_be_chosen_and_the_other_rest_on_retinoscopy() {
    let mut desk = Desk::with_exam(orla());
    let left = record::Finding::Done(optics::retinoscopy::Neutral::InFrame(
        optics::SphereCyl::sphere(2.0),
    ));
    desk.put(neutral("+4.75 DS", left));
    desk.put(Section::Subjective(Subjective {
        eyes: Eyes {
            right: chosen("+3.00 DS", 9),
            left: unable("stopped answering"),
        },
        ..Subjective::default()
    }));
    desk.put(prescribe());
    desk.sign();
    let paper = desk.prescription().unwrap();
    assert_eq!(paper.eyes[0].sphere, "+3.00");
    assert_eq!(paper.eyes[1].sphere, "+0.50");
    assert_eq!(
        paper.cautions[0],
        "measured without spoken answers (retinoscopy only): left eye"
    );
}

/// From 4 D on: textbook chapters on refraction.
#[test]
fn a_strong_lens_without_a_vertex_distance_says_so() {
    let caution =
        "a lens of 4 D or more without a vertex distance: ask for it before making the lens"
            .to_owned();
    let cautions = |subjective| Desk::signed(subjective).prescription().unwrap().cautions;
    assert!(cautions(lenses("−2.50 / −1.50 × 90", "0.00")).contains(&caution));
    assert!(!cautions(lenses("−3.75 DS", "0.00")).contains(&caution));
    let vertex_mm = Some(12.0);
    assert!(
        !cautions(Subjective {
            vertex_mm,
            ..lenses("−6.00 DS", "0.00")
        })
        .contains(&caution)
    );
}

/// Computed from the formula: a chart at 3 m leaves 1/3 = 0.33 D.
#[test]
fn a_near_chart_says_what_it_leaves_and_the_acuity_is_the_true_one() {
    let chart = Chart {
        made_for_m: 6.0,
        used_at_m: 3.0,
    };
    let paper = Desk::signed(Subjective {
        chart,
        ..lenses("−1.00 DS", "−1.00 DS")
    });
    let paper = paper.prescription().unwrap();
    assert_eq!(paper.eyes[1].acuity, "3/12");
    assert_eq!(
        paper.cautions[0],
        "chosen at a chart 3 m away and given as found: for the far distance the sphere would change by \u{2212}0.33 D"
    );
}

#[test]
fn an_amended_exam_says_what_changed_when_by_whom_and_why() {
    let mut desk = Desk::signed(lenses("+3.25 DS", "+3.00 DS"));
    desk.amend(
        Section::Subjective(lenses("+2.25 DS", "+3.00 DS")),
        " sphere misread ",
    );
    let paper = desk.prescription().unwrap();
    assert_eq!(paper.eyes[0].sphere, "+2.25");
    assert_eq!(
        paper.amendments,
        ["subjective amended on 4 March 2026 by M. Farrow: sphere misread"]
    );
}

#[test]
fn how_long_it_holds_is_printed_only_where_a_clinic_says_so() {
    let desk = Desk::signed(lenses("+3.25 DS", "+3.00 DS"));
    let person = desk.story.person(&PERSON).unwrap();
    let until = |valid_months| {
        let options = Options { valid_months };
        Prescription::with_options(person, desk.exam(), day(2026, 3, 5), &options)
            .unwrap()
            .valid_until
    };
    assert_eq!(until(None), None);
    assert_eq!(until(Some(24)).as_deref(), Some("4 March 2028"));
    assert_eq!(until(Some(u32::MAX)), None);
}

#[test]
fn a_birth_that_is_not_a_date_is_said_in_words() {
    let born = |born| {
        let details = PersonDetails { born, ..orla() };
        let mut desk = Desk::with_exam(details);
        desk.put(Section::Subjective(lenses("+3.25 DS", "+3.00 DS")));
        desk.put(prescribe());
        desk.sign();
        desk.prescription().unwrap().born
    };
    let stated = Born::Stated {
        years: 84,
        in_year: 2024,
    };
    let line = |label, value: &str| BornLine {
        label,
        value: value.to_owned(),
    };
    assert_eq!(born(Some(stated)), line("age", "about 86 years"));
    assert_eq!(born(None), line("date of birth", "not known"));
}
