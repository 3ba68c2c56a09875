//! What the fields of the sections accept: the ends are taken, what lies beyond is named in one sentence.
//!
//! The ranges are this project's own choice save where the rule itself names a source.

use chrono::NaiveTime;
use optics::SphereCyl;
use optics::prism::Prism;
use record::{
    Agreed, Angle, Anterior, AnteriorEye, Assessed, Binocular, Capacity, ClearBetween, Complaint,
    Consent, Cover, Deviation, Device, Drops, Drug, Eyes, Fields, Finding, Fitted, Fitting, Given,
    Grade, Grid, History, LensForm, LensState, Looks, MadeLens, Magnified, Motility, Near, Opacity,
    Order, OrderedLens, OrderedPair, Outline, Part, Point, Posterior, PosteriorEye, Pressure,
    PrintRead, PrintSize, PupilEye, Pupils, Readings, Section, SectionKind, Sketch, Sketches,
    Stroke, Symptom, Taken, Turn, WhichEyes, WornGlasses, WornLens, WornPair, check,
};

use crate::desk::day;
use crate::samples::both;

fn faults(section: impl Part) -> Vec<(String, String)> {
    let all = check(&section.into_section()).into_iter();
    all.map(|error| (error.field, error.sentence)).collect()
}

fn fields(section: impl Part) -> Vec<String> {
    faults(section)
        .into_iter()
        .map(|(field, _)| field)
        .collect()
}

fn sentence(section: impl Part) -> String {
    let faults = faults(section);
    assert_eq!(faults.len(), 1, "{faults:?}");
    faults[0].1.clone()
}

/// One eye as given, the other blank.
fn right<T: Default>(right: T) -> Eyes<T> {
    Eyes {
        right,
        left: T::default(),
    }
}

fn lens(sphere: f64) -> SphereCyl {
    SphereCyl::sphere(sphere)
}

#[test]
fn the_order_of_an_exam_is_that_of_the_work() {
    let titles = SectionKind::ALL.map(SectionKind::title);
    assert_eq!(
        titles.join(", "),
        "History, Capacity and consent, Worn glasses, Acuity, Pupils and media, Retinoscopy, Subjective, Near, \
         Binocular, Pressure, Drops, Anterior, Posterior, Fields, Sketches, Decision, Order, Fitting"
    );
    for kind in SectionKind::ALL {
        assert_eq!(SectionKind::from_slug(kind.slug()), Some(kind));
        assert_eq!(Section::empty(kind).kind(), kind);
        assert_eq!(check(&Section::empty(kind)), [], "{}", kind.title());
    }
}

#[test]
fn normal_in_one_tap_can_be_written_down() {
    for normal in [
        Pupils::normal().into_section(),
        Binocular::normal().into_section(),
        Anterior::normal().into_section(),
        Posterior::normal().into_section(),
        Fields::normal().into_section(),
    ] {
        assert_eq!(check(&normal), []);
        assert_ne!(normal, Section::empty(normal.kind()));
    }
}

#[test]
fn history_asks_for_words() {
    let other = Complaint {
        what: Symptom::Other,
        eye: None,
        words: " ".into(),
    };
    let history = History {
        complaints: Finding::Done(vec![other]),
        allergies: Finding::Done(String::new()),
        falls_in_12_months: Finding::Done(1001),
        ..History::default()
    };
    let expected = ["allergies", "complaints", "falls_in_12_months"];
    assert_eq!(fields(history), expected);
    let history = History {
        falls_in_12_months: Finding::Done(1000),
        ..History::default()
    };
    assert_eq!(fields(history).len(), 0);
    let history = History {
        falls_in_12_months: Finding::NotDone {
            reason: String::new(),
        },
        ..History::default()
    };
    assert_eq!(sentence(history), "say why this is missing");
}

#[test]
fn consent_asks_who_and_why() {
    let assessed = Capacity::Assessed(Assessed::default());
    let why = |agreed| Consent {
        capacity: Finding::Done(Capacity::Presumed),
        agreed: Finding::Done(agreed),
        ..Consent::default()
    };
    let consent = Consent {
        capacity: Finding::Done(assessed),
        ..why(Agreed::Spoken)
    };
    assert_eq!(sentence(consent), "say how capacity was assessed");
    let said = sentence(why(Agreed::BestInterests { why: String::new() }));
    assert!(said.contains("best interests"), "{said}");
    let said = sentence(why(Agreed::ByAttorney { who: " ".into() }));
    assert_eq!(said, "say who agreed, and by what power");
    let said = sentence(why(Agreed::Refused { how: String::new() }));
    assert_eq!(said, "say how the person refused");
    assert_eq!(fields(why(Agreed::Shown)).len(), 0);
}

/// All four are needed: Mental Capacity Act 2005 (England and Wales), section 3, from memory.
#[test]
fn capacity_takes_all_four() {
    let able = Assessed {
        understands: true,
        retains: true,
        weighs: true,
        communicates: true,
        how: "asked to say it back".into(),
    };
    assert!(Capacity::Presumed.can_decide());
    assert!(Capacity::Assessed(able.clone()).can_decide());
    let forgets = Assessed {
        retains: false,
        ..able
    };
    assert!(!Capacity::Assessed(forgets).can_decide());
}

#[test]
fn worn_glasses_keep_to_what_lenses_and_faces_have() {
    let pair = |sphere, add_d, prism, centres_mm| {
        let worn = WornLens {
            lens: lens(sphere),
            add_d: Some(add_d),
            prism: Some(Prism::new(0.0, prism).unwrap()),
        };
        WornGlasses {
            pairs: Finding::Done(vec![WornPair {
                lenses: right(Finding::Done(worn)),
                centres_mm: Some(centres_mm),
                ..WornPair::default()
            }]),
        }
    };
    assert_eq!(fields(pair(40.0, 20.0, -50.0, 30.0)).len(), 0);
    let beyond = ["centres_mm", "right.sphere", "right.add_d", "right.prism"];
    assert_eq!(fields(pair(40.25, 20.25, -50.25, 29.0)), beyond);
    let none = WornGlasses {
        pairs: Finding::Done(Vec::new()),
    };
    assert_eq!(fields(none).len(), 0);
}

#[test]
fn pupils_keep_to_what_pupils_and_the_published_scale_have() {
    let with = |light, nuclear, cortical| Pupils {
        eyes: right(PupilEye {
            light_mm: Finding::Done(light),
            lens: Finding::Done(LensState::Own(Opacity {
                nuclear: Some(Grade::LocsIii(nuclear)),
                cortical: Some(Grade::LocsIii(cortical)),
                posterior: None,
            })),
            ..PupilEye::default()
        }),
        ..Pupils::default()
    };
    assert_eq!(fields(with(0.5, 6.9, 5.9)).len(), 0);
    let beyond = ["right.light_mm", "right.nuclear", "right.cortical"];
    assert_eq!(fields(with(10.5, 7.0, 6.0)), beyond);
    let said = sentence(with(4.0, 0.0, 1.0));
    assert_eq!(
        said,
        "the nuclear grade can be 0.1 to 6.9, and 0 is outside that"
    );
}

#[test]
fn near_keeps_to_what_can_be_read() {
    let near = |add, cm, points| Near {
        distance_cm: Finding::Done(cm),
        accepted_d: right(Finding::Done(add)),
        read: Finding::Done(PrintRead {
            print: PrintSize::N(points),
            at_cm: cm,
        }),
        ..Near::default()
    };
    assert_eq!(fields(near(20.0, 5.0, 200.0)).len(), 0);
    assert_eq!(fields(near(0.0, 100.0, 1.0)).len(), 0);
    let beyond = ["distance_cm", "right.accepted_d", "read"];
    assert_eq!(fields(near(20.25, 4.0, 201.0)), beyond);
    let crossed = Near {
        clear: Finding::Done(ClearBetween {
            nearest_cm: 41.0,
            farthest_cm: 40.0,
        }),
        ..Near::default()
    };
    let said = sentence(crossed);
    assert_eq!(said, "the nearest clear distance lies beyond the farthest");
    let magnified = |times, by: &str| Near {
        magnified: Finding::Done(Magnified {
            times,
            by: by.into(),
        }),
        ..Near::default()
    };
    assert_eq!(fields(magnified(100.0, "a screen")).len(), 0);
    assert_eq!(
        fields(magnified(0.9, "")),
        ["magnified.times", "magnified.by"]
    );
}

#[test]
fn binocular_keeps_to_prisms_that_there_are() {
    let exo = |prism_pd| Deviation {
        turn: Turn::Exo,
        manifest: None,
        prism_pd: Some(prism_pd),
        recovery: None,
    };
    let with = |prism_pd, h| Binocular {
        cover_near: Finding::Done(Cover {
            with_glasses: false,
            deviations: vec![exo(prism_pd)],
        }),
        motility: Finding::Done(Motility::Full),
        prism: Finding::Done(right(Prism::new(h, 0.0).unwrap())),
        ..Binocular::default()
    };
    assert_eq!(fields(with(50.0, -50.0)).len(), 0);
    assert_eq!(fields(with(50.5, -51.0)), ["cover_near", "right.prism"]);
    let limited = Binocular {
        motility: Finding::Done(Motility::Limited(" ".into())),
        ..Binocular::default()
    };
    assert_eq!(sentence(limited), "say where the eyes do not follow");
}

fn taken(device: Device, mmhg: Vec<f64>) -> Pressure {
    Pressure {
        taken: vec![Taken {
            device,
            at: NaiveTime::MIN,
            after_dilating: false,
            eyes: right(Finding::Done(Readings { mmhg })),
            note: String::new(),
        }],
    }
}

#[test]
fn pressure_keeps_to_what_eyes_have() {
    assert_eq!(fields(taken(Device::Rebound, vec![0.0, 80.0])).len(), 0);
    let said = sentence(taken(Device::Rebound, vec![80.5]));
    assert_eq!(
        said,
        "the pressure can be 0 to 80 mmHg, and 80.5 is outside that"
    );
    let said = sentence(taken(Device::Rebound, Vec::new()));
    assert_eq!(said, "enter a reading, or say why there is none");
    let said = sentence(taken(Device::Other(" ".into()), vec![15.0]));
    assert_eq!(said, "say what the pressure was taken with");
}

#[test]
fn drops_have_a_name_and_a_strength() {
    let given = |drug, percent| Drops {
        given: Finding::Done(vec![Given {
            drug,
            strength_percent: Some(percent),
            batch: String::new(),
            expires: None,
            at: None,
            into: WhichEyes::Both,
            by: String::new(),
        }]),
        ..Drops::default()
    };
    assert_eq!(fields(given(Drug::Tropicamide, 0.01)).len(), 0);
    assert_eq!(fields(given(Drug::Phenylephrine, 20.0)).len(), 0);
    let beyond = ["drug", "strength_percent"];
    assert_eq!(fields(given(Drug::Other(String::new()), 50.0)), beyond);
}

#[test]
fn the_front_of_the_eye_is_told_in_words_and_grades() {
    let with = |angle| Anterior {
        eyes: right(AnteriorEye {
            angle: Finding::Done(angle),
            ..AnteriorEye::default()
        }),
        ..Anterior::default()
    };
    for angle in [
        Angle::VanHerick(4),
        Angle::Shaffer(0),
        Angle::LimbalPercent(0.0),
    ] {
        assert_eq!(fields(with(angle)).len(), 0);
    }
    for angle in [
        Angle::VanHerick(5),
        Angle::Shaffer(5),
        Angle::LimbalPercent(151.0),
    ] {
        assert_eq!(fields(with(angle)), ["right.angle"], "{angle:?}");
    }
    let silent = Anterior {
        eyes: right(AnteriorEye {
            cornea: Finding::Done(Looks::Other(String::new())),
            ..AnteriorEye::default()
        }),
        ..Anterior::default()
    };
    assert_eq!(sentence(silent), "say how it looks, or call it normal");
}

#[test]
fn a_cup_is_no_larger_than_its_disc() {
    let with = |cup_to_disc| Posterior {
        eyes: right(PosteriorEye {
            cup_to_disc: Finding::Done(cup_to_disc),
            ..PosteriorEye::default()
        }),
    };
    assert_eq!(fields(with(1.0)).len(), 0);
    assert_eq!(fields(with(1.05)), ["right.cup_to_disc"]);
}

#[test]
fn a_bent_grid_is_told_where() {
    let with = |bent, place: &str| Fields {
        grid: right(Finding::Done(Grid {
            bent,
            place: place.into(),
            ..Grid::default()
        })),
        ..Fields::default()
    };
    assert_eq!(fields(with(false, "")).len(), 0);
    assert_eq!(fields(with(true, "middle")).len(), 0);
    assert_eq!(
        sentence(with(true, "")),
        "say where the grid is bent or missing"
    );
}

#[test]
fn sketches_stay_on_their_outline_and_within_an_entry() {
    let with = |points: Vec<Point>| Sketches {
        drawn: vec![Sketch {
            outline: Outline::Back,
            eye: None,
            strokes: vec![Stroke { points }],
            caption: String::new(),
        }],
    };
    let point = |x| Point {
        x,
        y: 10_000,
        pressure: 255,
    };
    assert_eq!(fields(with(vec![point(10_000)])).len(), 0);
    assert_eq!(
        sentence(with(vec![point(10_001)])),
        "a stroke lies outside its outline"
    );
    let most = with(vec![point(10_000); 50_000]);
    assert_eq!(fields(most.clone()).len(), 0);
    assert_eq!(fields(with(vec![point(0); 50_001])), ["drawn"]);
    // The most that is accepted can also be read again.
    let mut desk = crate::desk::Desk::with_exam(1);
    let id = desk.put(most.into_section(), None);
    let entry = desk.written.iter().find(|entry| entry.id == id).unwrap();
    assert_eq!(
        record::Entry::from_cbor(&entry.to_cbor()).as_ref(),
        Ok(entry)
    );
}

#[test]
fn an_order_keeps_to_what_can_be_made() {
    let ordered = |sphere, mm, form| {
        let lens = OrderedLens {
            centre_mm: Some(mm),
            height_mm: Some(mm),
            ..OrderedLens::new(lens(sphere))
        };
        Order {
            pairs: vec![OrderedPair {
                form,
                lenses: Eyes {
                    right: Some(lens),
                    left: None,
                },
                vertex_mm: Some(12.0),
                ..OrderedPair::default()
            }],
            ..Order::default()
        }
    };
    assert_eq!(fields(ordered(1.0, 30.0, LensForm::SingleVision)).len(), 0);
    let beyond = ["right.sphere", "right.centre_mm", "right.height_mm"];
    assert_eq!(fields(ordered(41.0, 51.0, LensForm::SingleVision)), beyond);
    let said = sentence(ordered(1.0, 30.0, LensForm::Progressive));
    assert_eq!(
        said,
        "the right eye’s lens is progressive and has no addition"
    );
    let empty = Order {
        pairs: vec![OrderedPair {
            engraved: Some(" ".into()),
            ..OrderedPair::default()
        }],
        ..Order::default()
    };
    assert_eq!(fields(empty), ["engraved", "lenses"]);
}

#[test]
fn nothing_is_fitted_before_it_comes() {
    let fitted = |received, fitted, sphere| {
        let made = MadeLens {
            lens: lens(sphere),
            add_d: None,
            prism: None,
            height_mm: None,
        };
        Fitting {
            pairs: vec![Fitted {
                received_on: Some(day(2026, 3, received)),
                fitted_on: Some(day(2026, 3, fitted)),
                lenses: both(Finding::Done(made)),
                ..Fitted::default()
            }],
        }
    };
    assert_eq!(fields(fitted(20, 20, 1.0)).len(), 0);
    let said = sentence(fitted(21, 20, 1.0));
    assert_eq!(said, "the glasses were fitted before they came");
    assert_eq!(
        fields(fitted(20, 20, -41.0)),
        ["right.sphere", "left.sphere"]
    );
}
