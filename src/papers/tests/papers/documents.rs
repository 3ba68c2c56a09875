//! What each document says of one full visit. Figures are those that the sample was written with; what is reckoned from them
//! names its formula.

use papers::sample::{Desk, day, decision, lens, order, orla, subjective};
use papers::{
    Block, Document, InFrame, LensCells, Letter, NoteOptions, PaperError, Standing,
    care_staff_note, fitting_sheet, lab_order, person_note, visit_summary,
};
use record::{Decision, Device, PersonDetails, Pressure, Section, SectionKind, Urgency};

const WRITTEN: (i32, u32, u32) = (2026, 3, 7);

fn written() -> chrono::NaiveDate {
    day(WRITTEN.0, WRITTEN.1, WRITTEN.2)
}

fn says(document: &Document, words: &str) -> bool {
    document.words().join("\n").contains(words)
}

fn all(desk: &Desk) -> Vec<Document> {
    let (person, exam) = (desk.person(), desk.exam());
    let note = NoteOptions::default();
    let letter = Letter::proposed(person, exam).unwrap();
    vec![
        visit_summary(person, exam, written()).unwrap(),
        letter.document(person, exam, written()).unwrap(),
        person_note(person, exam, &note, written()).unwrap(),
        care_staff_note(person, exam, &note, written()).unwrap(),
    ]
}

#[test]
fn a_prescription_keeps_every_figure() {
    let desk = Desk::full();
    let paper = papers::Prescription::from_exam(desk.person(), desk.exam(), written()).unwrap();
    let document = paper.document();
    for words in [
        "+4.25", "−1.50", "90", "+2.50", "−0.75", "−0.50", "5", "12 mm", "40 cm",
    ] {
        assert!(document.words().contains(&words), "{words}");
    }
    assert!(says(&document, "M. Farrow, optometrist"));
    assert_eq!(document.standing, Standing::Signed);
}

#[test]
fn a_paper_follows_its_readers_manner_and_keeps_every_figure() {
    let reader = record::Manner {
        dates: record::DateOrder::MonthFirst,
        decimal: record::DecimalMark::Comma,
        far: record::FarUnit::Metres,
    };
    let desk = Desk::full();
    for usual in all(&desk) {
        assert_eq!(usual.clone().in_manner(record::Manner::default()), usual);
        let shown = usual.clone().in_manner(reader);
        assert!(says(&shown, "March 7, 2026"), "{}", usual.title);
        assert!(!says(&shown, "7 March 2026"), "{}", usual.title);
        assert_eq!(shown.words().len(), usual.words().len());
    }
    let paper = papers::Prescription::from_exam(desk.person(), desk.exam(), written()).unwrap();
    let shown = paper.clone().in_manner(reader);
    assert_eq!(shown.written_on, "March 7, 2026");
    assert_eq!(shown.eyes[0].sphere, "+4,25");
    assert_eq!(shown.document(), paper.document().in_manner(reader));
    assert_eq!((&shown.name, &shown.signer), (&paper.name, &paper.signer));
}

// Computed from F' = F / (1 − d F), d = −2 mm: 4.25 / (1 + 0.002 × 4.25) = 4.2142, 2.75 / (1 + 0.002 × 2.75) = 2.7350.
#[test]
fn powers_are_made_for_the_frame_where_it_is_asked_for() {
    let desk = Desk::full();
    let frame = InFrame {
        middles_mm: Some(68.0),
        compensate: true,
    };
    let paper = lab_order(desk.person(), desk.exam(), &[frame], written()).unwrap();
    let told = "right lens: tried as +4.25 / −1.50 × 90 at 12 mm, to be made as +4.21 / −1.48 × 90 for 14 mm";
    assert!(says(&paper, told), "{:#?}", paper.words());
    let Some(Block::Lenses(lenses)) = paper
        .blocks
        .iter()
        .find(|block| matches!(block, Block::Lenses(_)))
    else {
        panic!("an order has lenses")
    };
    assert_eq!(
        lenses.head,
        ["sphere", "cylinder", "axis", "prism", "centre"]
    );
    let LensCells::Figures(right) = &lenses.rows[0].lens else {
        panic!("the right eye has a lens")
    };
    assert_eq!(
        right,
        &["+4.21", "−1.48", "90", "1.50 up & 2.00 in", "31 mm"]
    );

    let as_tried = lab_order(desk.person(), desk.exam(), &[], written()).unwrap();
    assert!(says(&as_tried, "+4.25") && !says(&as_tried, "to be made as"));
}

// Half of 68 mm less 31 mm is 3 mm, less 30.5 mm is 3.5 mm. The prism askew: √(1.5² + 2²) = 2.50, atan(1.5 / 2) = 36.9°.
// Moving a +4.25 along 90 by 1.5 Δ: 10 × 1.5 / 4.25 = 3.5 mm up; along 180 the power is 2.75: 10 × 2 / 2.75 = 7.3 mm in.
// Computed from these formulas.
#[test]
fn decentration_and_prism_are_resolved() {
    let desk = Desk::full();
    let frame = InFrame {
        middles_mm: Some(68.0),
        compensate: false,
    };
    let paper = lab_order(desk.person(), desk.exam(), &[frame], written()).unwrap();
    for words in [
        "right lens: move it 3 mm in from the middle of the frame’s eye",
        "left lens: move it 3.5 mm in from the middle of the frame’s eye",
        "right lens: prism 1.50 up & 2.00 in, which is 2.50 @ 36.9 degrees as one",
        "right lens: its prism is what 3.5 mm up and 7.3 mm in of its centre gives, where it is not ground",
        "Lantern Quay Lenses",
        "6 March 2026",
        "Orla P.",
    ] {
        assert!(says(&paper, words), "{words}: {:#?}", paper.words());
    }
}

#[test]
fn prism_in_a_lens_without_power_is_ground() {
    let mut desk = Desk::full();
    let mut order = order();
    order.pairs[0].lenses.right.as_mut().unwrap().lens = lens("0.00");
    desk.put(Section::Order(order));
    let paper = lab_order(desk.person(), desk.exam(), &[], written()).unwrap();
    assert!(says(
        &paper,
        "right lens: moving it does not give this prism; grind it"
    ));
}

#[test]
fn a_letter_tells_what_is_out_of_the_ordinary_and_keeps_its_warnings() {
    let desk = Desk::full();
    let mut letter = Letter::proposed(desk.person(), desk.exam()).unwrap();
    let told = |letter: &Letter, section, label: &str| {
        let mut findings = letter.findings.iter();
        findings.any(|one| one.section == section && one.line.label == label && one.told)
    };
    assert!(told(&letter, SectionKind::Posterior, "disc"));
    assert!(told(&letter, SectionKind::Anterior, "lids"));
    assert!(told(&letter, SectionKind::Acuity, "with glasses"));
    assert!(!told(&letter, SectionKind::Posterior, "macula"));
    assert!(!told(&letter, SectionKind::Fields, "quadrants"));
    assert!(!told(&letter, SectionKind::Retinoscopy, "lens at neutral"));

    // Whatever is taken out of the words, what must not get lost stays.
    for finding in &mut letter.findings {
        finding.told = false;
    }
    letter.opening = "Please see Orla.".into();
    let paper = letter
        .document(desk.person(), desk.exam(), written())
        .unwrap();
    for words in [
        "Please see Orla.",
        "urgency: soon",
        "allergies: none known",
        "medicines: amlodipine",
        "drops given: tropicamide 0.5 %, both eyes, 14:05",
        "to be seen ahead of their turn",
    ] {
        assert!(says(&paper, words), "{words}: {:#?}", paper.words());
    }
    assert!(!says(&paper, "rim thin below"));
}

// NICE NG81 (as of January 2022): not to be referred on non-contact tonometry alone.
#[test]
fn a_puff_of_air_alone_is_said() {
    let mut desk = Desk::unsigned(orla());
    let mut pressure: Pressure = papers::sample::pressure();
    pressure.taken[0].device = Device::NonContact;
    desk.put(Section::Pressure(pressure));
    let letter = Letter::proposed(desk.person(), desk.exam()).unwrap();
    let paper = letter
        .document(desk.person(), desk.exam(), written())
        .unwrap();
    assert!(says(&paper, "puff of air only"));
}

#[test]
fn an_emergency_presses() {
    let mut desk = Desk::unsigned(orla());
    let mut emergency = decision();
    emergency.refer.as_mut().unwrap().urgency = Urgency::Emergency;
    desk.put(Section::Decision(emergency));
    let letter = Letter::proposed(desk.person(), desk.exam()).unwrap();
    let paper = letter
        .document(desk.person(), desk.exam(), written())
        .unwrap();
    assert!(says(&paper, "urgency: emergency") && says(&paper, "to be seen today"));
}

#[test]
fn a_summary_holds_every_line_of_every_section() {
    let desk = Desk::full();
    let paper = visit_summary(desk.person(), desk.exam(), written()).unwrap();
    for kind in SectionKind::ALL {
        let Some(version) = desk.exam().section(kind).settled() else {
            continue;
        };
        for line in version.value.lines() {
            assert!(paper.words().contains(&line.label.as_str()), "{line:?}");
            let said = match &line.said {
                record::Said::One(words) => vec![words],
                record::Said::Eyes(eyes) => vec![&eyes.right, &eyes.left],
            };
            for words in said {
                assert!(paper.words().contains(&words.as_str()), "{words}");
            }
        }
    }
}

// ISO 21987:2017, as `optics` has it: the axis of a cylinder of 0.50 may be off by 7 degrees at most (from memory).
#[test]
fn a_sheet_draws_each_measure_against_its_limit() {
    let desk = Desk::full();
    let paper = fitting_sheet(desk.person(), desk.exam(), written()).unwrap();
    let measures = paper.blocks.iter().filter_map(|block| match block {
        Block::Measure(measure) => Some(measure),
        _ => None,
    });
    let axis = measures
        .clone()
        .find(|measure| measure.label == "left axis")
        .unwrap();
    assert_eq!(axis.stands, "outside");
    assert!(axis.part.unwrap() > 1.0);
    assert!(
        axis.sentence.starts_with("ordered 5, measured 20, 15 off"),
        "{}",
        axis.sentence
    );
    assert!(says(&paper, "outside the limits: do not fit it"));
    assert!(measures.clone().any(|measure| measure.part == Some(0.0)));
}

// How a measure is drawn goes by how it stands, not by the word for that.
#[test]
fn a_sheet_in_german_is_drawn_as_in_english() {
    let desk = Desk::full();
    let against = |language| {
        let paper = words::in_language(language, || {
            fitting_sheet(desk.person(), desk.exam(), written()).unwrap()
        });
        let measures = paper.blocks.iter().filter_map(|block| match block {
            Block::Measure(measure) => Some(measure.against),
            _ => None,
        });
        measures.collect::<Vec<_>>()
    };
    let english = against(words::Language::English);
    assert!(english.contains(&papers::Against::Outside));
    assert!(english.contains(&papers::Against::Borderline));
    assert_eq!(against(words::Language::German), english);
}

// A limit that nobody has seen in print carries a mark, and the sheet says what the mark means.
#[test]
fn a_mark_at_a_limit_is_explained_on_the_same_sheet() {
    let desk = Desk::full();
    let paper = fitting_sheet(desk.person(), desk.exam(), written()).unwrap();
    let marked = paper.words().iter().any(|text| text.ends_with(" *"));
    assert!(marked);
    assert!(says(&paper, "* This limit is given from memory"));
}

#[test]
fn before_it_is_signed_every_paper_says_so() {
    let open = Desk::unsigned(orla());
    for paper in all(&open) {
        assert_eq!(paper.standing, Standing::Unsigned, "{}", paper.title);
        assert!(says(&paper, "not signed"));
    }
    for paper in all(&Desk::full()) {
        assert_eq!(paper.standing, Standing::Signed, "{}", paper.title);
        assert!(says(&paper, "M. Farrow, optometrist"));
    }
}

#[test]
fn an_amended_exam_is_marked_with_what_changed() {
    let mut desk = Desk::full();
    let mut changed = subjective();
    changed.vertex_mm = Some(13.0);
    desk.amend(Section::Subjective(changed), "vertex measured again");
    let paper = visit_summary(desk.person(), desk.exam(), written()).unwrap();
    assert_eq!(paper.standing, Standing::Amended);
    assert!(says(
        &paper,
        "subjective amended on 4 March 2026 by M. Farrow: vertex measured again"
    ));
}

#[test]
fn what_is_not_there_is_said_in_one_sentence() {
    let mut bare = Desk::with_exam(PersonDetails::default());
    bare.put(Section::Decision(Decision {
        advice: "Nothing to do.".into(),
        ..Decision::default()
    }));
    let (person, exam) = (bare.person(), bare.exam());
    let refused = [
        (lab_order(person, exam, &[], written()), PaperError::NoOrder),
        (
            fitting_sheet(person, exam, written()),
            PaperError::NoFitting,
        ),
        (
            Letter::proposed(person, exam).map(|_| unreachable!()),
            PaperError::NotReferred,
        ),
    ];
    for (paper, why) in refused {
        assert_eq!(paper.unwrap_err(), why);
    }
    // The rest can be made of little.
    let note = person_note(person, exam, &NoteOptions::default(), written()).unwrap();
    assert!(says(&note, "Nothing to do."));
    let staff = care_staff_note(person, exam, &NoteOptions::default(), written()).unwrap();
    assert!(says(&staff, "No drops were given today."));
}
