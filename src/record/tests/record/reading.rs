//! Every section in lines. The wording is this project's own; the trade's words are common practice, no source.

use chrono::NaiveTime;
use optics::SphereCyl;
use optics::prism::Prism;
use proptest::prelude::*;
use record::{
    Agreed, Angle, Anterior, AnteriorEye, Assessed, Binocular, Capacity, ClearBetween, Complaint,
    Consent, Cover, Deviation, Device, Eye, Eyes, Fields, Finding, Given, Grid, History, LensState,
    Line, Looks, Near, Opacity, Order, OrderedLens, OrderedPair, Part, Pressure, PrintRead,
    PrintSize, PupilEye, Pupils, Quadrant, Quadrants, Readings, Recovery, Said, Section,
    SectionKind, Sketches, Symptom, Taken, Turn, UsedFor, WornGlasses,
};

use crate::any;
use crate::samples::both;

fn lines(section: impl Part) -> Vec<Line> {
    section.into_section().lines()
}

fn one(label: &str, words: &str) -> Line {
    Line {
        label: label.into(),
        said: Said::One(words.into()),
    }
}

fn eyes(label: &str, right: &str, left: &str) -> Line {
    let said = Said::Eyes(Eyes {
        right: right.into(),
        left: left.into(),
    });
    Line {
        label: label.into(),
        said,
    }
}

fn unable<T>() -> Finding<T> {
    Finding::Unable {
        reason: "asleep".into(),
    }
}

#[test]
fn what_is_blank_makes_no_line() {
    use SectionKind::{Acuity, Retinoscopy, Subjective};
    for kind in SectionKind::ALL {
        // These three tell how it was set up, whatever was found.
        let told = usize::from(matches!(kind, Acuity | Retinoscopy | Subjective));
        assert_eq!(Section::empty(kind).lines().len(), told, "{kind:?}");
    }
}

#[test]
fn none_is_said_where_it_was_asked() {
    let history = History {
        complaints: Finding::Done(Vec::new()),
        falls_in_12_months: Finding::Done(0),
        ..History::default()
    };
    let said = [
        one("complaints", "none"),
        one("falls in twelve months", "none"),
    ];
    assert_eq!(lines(history), said);
    let glasses = WornGlasses {
        pairs: Finding::Done(Vec::new()),
    };
    assert_eq!(lines(glasses), [one("glasses", "none")]);
}

#[test]
fn a_complaint_says_where_and_since_when() {
    let told = |what, eye, words: &str| Complaint {
        what,
        eye,
        words: words.into(),
    };
    let history = History {
        complaints: Finding::Done(vec![
            told(Symptom::Pain, Some(Eye::Left), "since Sunday"),
            told(Symptom::Other, None, "sees halos"),
        ]),
        ..History::default()
    };
    let said = "pain, left eye: since Sunday; sees halos";
    assert_eq!(lines(history), [one("complaints", said)]);
}

#[test]
fn capacity_shows_all_four_answers() {
    let assessed = Assessed {
        understands: true,
        retains: true,
        weighs: false,
        communicates: true,
        how: "asked twice".into(),
    };
    let consent = Consent {
        capacity: Finding::Done(Capacity::Assessed(assessed)),
        agreed: Finding::Done(Agreed::BestInterests {
            why: "daughter asked".into(),
        }),
        ..Consent::default()
    };
    let four = "can’t decide this: understands it: yes, keeps it in mind: yes, weighs it: no, \
                tells the choice: yes; asked twice";
    let said = [
        one("capacity", four),
        one("agreed", "best interests: daughter asked"),
    ];
    assert_eq!(lines(consent), said);
}

#[test]
fn an_eye_of_which_nothing_stands_is_a_dash() {
    let mut pupils = Pupils::default();
    pupils.eyes.left = PupilEye {
        light_mm: Finding::Done(2.5),
        lens: Finding::Done(LensState::Own(Opacity::default())),
        ..PupilEye::default()
    };
    pupils.eyes.right.light_mm = unable();
    let said = [
        eyes("in light", "unable: asleep", "2.5 mm"),
        eyes("lens", "—", "its own"),
    ];
    assert_eq!(lines(pupils), said);
}

#[test]
fn the_front_of_the_eye_tells_what_is_not_normal() {
    let eye = AnteriorEye {
        cornea: Finding::Done(Looks::Other(" scar ".into())),
        angle: Finding::Done(Angle::VanHerick(3)),
        ..AnteriorEye::default()
    };
    let anterior = Anterior {
        eyes: both(eye),
        ..Anterior::default()
    };
    let said = [
        eyes("cornea", "scar", "scar"),
        eyes("angle", "van Herick 3", "van Herick 3"),
    ];
    assert_eq!(lines(anterior), said);
}

#[test]
fn readings_show_their_mean_and_each_of_them() {
    let read = |mmhg: &[f64]| {
        Finding::Done(Readings {
            mmhg: mmhg.to_vec(),
        })
    };
    let pressure = Pressure {
        taken: vec![Taken {
            device: Device::Rebound,
            at: NaiveTime::from_hms_opt(9, 5, 0).unwrap(),
            after_dilating: true,
            eyes: Eyes {
                right: read(&[15.0, 16.0, 17.0]),
                left: read(&[14.0]),
            },
            note: String::new(),
        }],
    };
    let label = "rebound, after dilating drops";
    let said = [
        eyes(label, "16 mmHg (15, 16, 17)", "14 mmHg"),
        one("taken at", "09:05"),
    ];
    assert_eq!(lines(pressure), said);
}

#[test]
fn a_deviation_and_a_prism_are_written_as_the_trade_does() {
    let exo = Deviation {
        turn: Turn::Exo,
        manifest: None,
        prism_pd: Some(6.0),
        recovery: Some(Recovery::Quick),
    };
    let prism = Prism::new(2.0, 0.0).unwrap();
    let binocular = Binocular {
        cover_far: Finding::Done(Cover::default()),
        cover_near: Finding::Done(Cover {
            with_glasses: true,
            deviations: vec![exo],
        }),
        prism: Finding::Done(both(prism)),
        ..Binocular::default()
    };
    let near = "exo 6 Δ, latent, recovery quick; with glasses";
    // A base to the examiner's right lies toward the nose of a right eye.
    let said = [
        one("cover, far", "no movement, without glasses"),
        one("cover, near", near),
        eyes("helping prism", "2.00 in", "2.00 out"),
    ];
    assert_eq!(lines(binocular), said);
}

#[test]
fn a_field_says_which_quadrant_and_a_grid_where() {
    let less = Quadrants {
        upper_nasal: Quadrant::Missing,
        ..Quadrants::FULL
    };
    let bent = Grid {
        bent: true,
        known: Some(false),
        place: "below the middle".into(),
        ..Grid::default()
    };
    let fields = Fields {
        quadrants: Eyes {
            right: Finding::Done(Quadrants::FULL),
            left: Finding::Done(less),
        },
        grid: Eyes {
            right: Finding::Done(Grid::default()),
            left: Finding::Done(bent),
        },
        ..Fields::default()
    };
    let said = [
        eyes("quadrants", "full", "up, nose side missing"),
        eyes("grid", "whole and straight", "bent, new: below the middle"),
    ];
    assert_eq!(lines(fields), said);
}

#[test]
fn print_never_stands_without_its_distance() {
    let near = Near {
        clear: Finding::Done(ClearBetween {
            nearest_cm: 28.0,
            farthest_cm: 55.0,
        }),
        read: Finding::Done(PrintRead {
            print: PrintSize::N(8.0),
            at_cm: 40.0,
        }),
        accepted_d: both(Finding::Done(2.25)),
        ..Near::default()
    };
    let said = [
        eyes("addition", "+2.25", "+2.25"),
        one("clear", "28 to 55 cm"),
        one("reads", "N8 at 40 cm"),
    ];
    assert_eq!(lines(near), said);
}

#[test]
fn an_ordered_pair_reads_as_it_is_sent() {
    let lens = OrderedLens {
        add_d: Some(2.5),
        centre_mm: Some(31.5),
        ..OrderedLens::new(SphereCyl::new(1.0, -0.5, 90.0).unwrap())
    };
    let order = Order {
        pairs: vec![OrderedPair {
            used_for: UsedFor::Near,
            lenses: Eyes {
                right: Some(lens),
                left: None,
            },
            engraved: Some("Orla P.".into()),
            ..OrderedPair::default()
        }],
        ..Order::default()
    };
    let right = "+1.00 / −0.50 × 90, add +2.50, centre 31.5 mm";
    let said = [
        eyes("near, single vision", right, "—"),
        one("those for near", "engraved “Orla P.”"),
    ];
    assert_eq!(lines(order), said);
}

#[test]
fn a_drop_names_drug_strength_eye_and_time() {
    let given = Given {
        drug: record::Drug::Tropicamide,
        strength_percent: Some(0.5),
        batch: "K12".into(),
        expires: None,
        at: NaiveTime::from_hms_opt(14, 5, 0),
        into: record::WhichEyes::Both,
        by: String::new(),
    };
    assert_eq!(given.in_words(), "tropicamide 0.5 %, both eyes, 14:05");
}

#[test]
fn a_drawing_without_words_counts_its_strokes() {
    let sketch = record::Sketch {
        outline: record::Outline::Back,
        eye: Some(Eye::Left),
        strokes: vec![record::Stroke::default(); 2],
        caption: String::new(),
    };
    let sketches = Sketches {
        drawn: vec![sketch],
    };
    let said = [one("back of the eye, left eye", "2 strokes")];
    assert_eq!(lines(sketches), said);
}

proptest! {
    #[test]
    fn no_line_is_empty_whatever_stands_there(section in any::section()) {
        for line in section.lines() {
            prop_assert!(!line.label.trim().is_empty());
            match line.said {
                Said::One(words) => prop_assert!(!words.trim().is_empty()),
                Said::Eyes(eyes) => prop_assert!(eyes.right != "—" || eyes.left != "—"),
            }
        }
    }
}
