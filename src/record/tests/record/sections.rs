//! What a section says of itself, and which fields it can't keep.

use record::{
    Acuity, Chart, Decision, EyeAcuity, Eyes, Finding, Glasses, NearAdd, Recall, Referral, Section,
    SectionKind, Seen, Subjective, Urgency, check,
};

use crate::samples::{acuity, both, decision, retinoscopy, seen, subjective};

fn fields(section: &Section) -> Vec<String> {
    check(section)
        .into_iter()
        .map(|error| error.field)
        .collect()
}

/// Computed from logMAR = log10(label / 6) + log10(made for / used at), the definition in DICOM PS3.17, annex on
/// visual acuity notation: the 6/36 line of a 6 m chart at 2 m is 2/36 = 6/108, 1.255.
#[test]
fn acuity_is_shown_as_labelled_and_as_it_is() {
    let chart = Chart {
        made_for_m: 6.0,
        used_at_m: 2.0,
    };
    let whole = seen(36, 0);
    assert_eq!(whole.to_string(), "6/36");
    assert_eq!(chart.as_it_is(&whole).unwrap(), "2/36");
    assert_eq!(chart.at_six_metres(&whole).unwrap(), "6/108");
    assert!((chart.logmar(&whole).unwrap() - 1.255).abs() < 0.0005);
    let short = seen(36, -2);
    assert_eq!(short.to_string(), "6/36 \u{2212}2");
    assert!((chart.logmar(&short).unwrap() - 1.295).abs() < 0.0005);
}

/// Counting fingers and the rest are categories: never printed back as a measured acuity (common practice, no source).
#[test]
fn a_category_has_no_number() {
    let chart = Chart::default();
    for (seen, words) in [
        (Seen::Fingers { at_cm: 30 }, "counts fingers at 30 cm"),
        (Seen::HandMoves, "sees hand movements"),
        (Seen::Light, "sees light"),
        (Seen::NoLight, "sees no light"),
    ] {
        assert_eq!(seen.to_string(), words);
        assert_eq!(chart.in_words(&seen), words);
        assert_eq!(chart.as_it_is(&seen), None);
        assert_eq!(chart.at_six_metres(&seen), None);
        assert_eq!(chart.logmar(&seen), None);
    }
}

#[test]
fn good_sections_have_nothing_to_mend() {
    for section in [
        acuity(9),
        retinoscopy("+4.75 / −1.50 × 90"),
        subjective(3.0),
        decision(Glasses::Prescribe),
    ] {
        assert_eq!(check(&section), []);
    }
    for kind in SectionKind::ALL {
        assert_eq!(check(&Section::empty(kind)), [], "{}", kind.title());
        assert_eq!(Section::empty(kind).kind(), kind);
        assert_eq!(SectionKind::from_slug(kind.slug()), Some(kind));
    }
}

#[test]
fn a_chart_and_letters_out_of_range_are_named() {
    let eye = |seen| EyeAcuity {
        unaided: Finding::Done(seen),
        ..EyeAcuity::default()
    };
    let section = Section::Acuity(Acuity {
        chart: Chart {
            made_for_m: 6.0,
            used_at_m: 60.0,
        },
        eyes: Eyes {
            right: eye(seen(36, 5)),
            left: eye(Seen::Fingers { at_cm: 0 }),
        },
    });
    assert_eq!(
        fields(&section),
        ["used_at_m", "right.unaided", "left.unaided"]
    );
    assert_eq!(
        check(&section)[0].sentence,
        "the chart distance can be 0.25 to 10 m, and 60 is outside that"
    );
}

#[test]
fn not_done_needs_a_reason() {
    let reason = "  ".to_owned();
    let eye = EyeAcuity {
        with_glasses: Finding::NotDone { reason },
        ..EyeAcuity::default()
    };
    let section = Section::Acuity(Acuity {
        eyes: both(eye),
        ..Acuity::default()
    });
    assert_eq!(
        fields(&section),
        ["right.with_glasses", "left.with_glasses"]
    );
    assert_eq!(
        check(&section)[0].sentence,
        "say why this is missing for the right eye"
    );
}

#[test]
fn lenses_out_of_range_are_named() {
    assert_eq!(fields(&subjective(40.25)), ["right.sphere", "left.sphere"]);
    assert_eq!(
        fields(&retinoscopy("+1.00 / −16.00 × 90")),
        ["right.cylinder", "left.cylinder"]
    );
    let section = Section::Subjective(Subjective {
        vertex_mm: Some(120.0),
        add: Some(NearAdd {
            power: 0.0,
            at_cm: 400.0,
        }),
        ..Subjective::default()
    });
    assert_eq!(fields(&section), ["vertex_mm", "add.power", "add.at_cm"]);
}

#[test]
fn strong_lenses_want_a_vertex_distance() {
    let wants = |sphere, vertex_mm| {
        let Section::Subjective(chosen) = subjective(sphere) else {
            unreachable!("a subjective section was made")
        };
        Subjective {
            vertex_mm,
            ..chosen
        }
        .wants_vertex()
    };
    assert!(wants(-4.0, None));
    assert!(!wants(-3.75, None));
    assert!(!wants(-4.0, Some(12.0)));
}

#[test]
fn a_referral_needs_somebody_and_a_recall_a_reason() {
    let section = Section::Decision(Decision {
        refer: Some(Referral {
            urgency: Urgency::Soon,
            to: String::new(),
        }),
        recall: Some(Recall {
            months: 0,
            reason: String::new(),
        }),
        ..Decision::default()
    });
    assert_eq!(
        fields(&section),
        ["refer.to", "recall.months", "recall.reason"]
    );
}
