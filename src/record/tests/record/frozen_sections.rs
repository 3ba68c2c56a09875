//! Bytes of the sections that the fourth layout added, which must never change; made as those in `frozen.rs` were.

use chrono::{NaiveDate, NaiveTime};
use optics::SphereCyl;
use optics::prism::Prism;
use record::{
    Afferent, Agreed, Amount, Angle, Anterior, AnteriorEye, Assessed, Binocular, Capacity,
    ClearBetween, Complaint, Consent, Cover, Deviation, Device, DiscSize, Drops, Drug, Entry, Eye,
    Eyes, Fields, Finding, Fitted, Fitting, Given, Grade, Grid, History, HowMeasured, LensForm,
    LensState, Looks, MadeLens, Magnified, Mobility, Motility, Near, Opacity, Order, OrderedLens,
    OrderedPair, Outline, Part, Point, Posterior, PosteriorEye, Pressure, PrintRead, PrintSize,
    PupilEye, Pupils, Quadrant, Quadrants, Reaction, ReadTo, Readings, Recovery, Sketch, Sketches,
    Stroke, Symptom, Taken, Tolerance, Turn, UsedFor, View, Viewed, WhichEyes, WornGlasses,
    WornLens, WornPair,
};

use crate::desk::day;
use crate::frozen::section;
use crate::samples::{bytes, names};

fn not_done<T>(reason: &str) -> Finding<T> {
    Finding::NotDone {
        reason: reason.into(),
    }
}

fn unable<T>(reason: &str) -> Finding<T> {
    Finding::Unable {
        reason: reason.into(),
    }
}

fn cylinder() -> SphereCyl {
    SphereCyl::new(2.0, -1.0, 90.0).unwrap()
}

fn prism(h: f64, v: f64) -> Prism {
    Prism::new(h, v).unwrap()
}

fn time(hour: u32, minute: u32) -> NaiveTime {
    NaiveTime::from_hms_opt(hour, minute, 0).unwrap()
}

fn on(month: u32, of_month: u32) -> NaiveDate {
    day(2026, month, of_month)
}

fn history() -> History {
    History {
        reason: "TV is dim".into(),
        cannot_travel: "cannot sit in a car".into(),
        told_by: "daughter".into(),
        complaints: Finding::Done(vec![
            Complaint {
                what: Symptom::BlurredFar,
                eye: Some(Eye::Left),
                words: "since spring".into(),
            },
            Complaint {
                what: Symptom::SeesThings,
                eye: None,
                words: String::new(),
            },
        ]),
        eyes_before: "none".into(),
        health: "diabetes".into(),
        medicines: "metformin".into(),
        allergies: Finding::Done("none known".into()),
        family: "glaucoma".into(),
        falls_in_12_months: Finding::Done(2),
        mobility: Some(Mobility::WithAid),
        uses: "TV at 3 m".into(),
    }
}

fn history_bare() -> History {
    History {
        complaints: unable("does not speak"),
        falls_in_12_months: not_done("staff new"),
        ..History::default()
    }
}

fn consent() -> Consent {
    Consent {
        asked_for_by: "the home".into(),
        identified_by: "wristband".into(),
        present: "a carer".into(),
        communication: "hearing aid in".into(),
        capacity: Finding::Done(Capacity::Assessed(Assessed {
            understands: true,
            retains: false,
            weighs: false,
            communicates: true,
            how: "asked to say it back".into(),
        })),
        agreed: Finding::Done(Agreed::BestInterests {
            why: "bumps into things; daughter asked".into(),
        }),
        declined: "no drops".into(),
        note: "calm".into(),
    }
}

fn agreed(agreed: Agreed) -> Consent {
    Consent {
        agreed: Finding::Done(agreed),
        ..Consent::default()
    }
}

fn worn_glasses() -> WornGlasses {
    let right = WornLens {
        lens: cylinder(),
        add_d: Some(2.5),
        prism: Some(prism(0.0, 1.5)),
    };
    let bifocal = WornPair {
        used_for: UsedFor::FarAndNear,
        form: LensForm::Bifocal,
        measured: Some(HowMeasured::Focimeter),
        lenses: Eyes {
            right: Finding::Done(right),
            left: unable("lens missing"),
        },
        centres_mm: Some(62.0),
        lens_state: "scratched".into(),
        frame_state: "bent".into(),
        name_on_it: Finding::Done("Orla P.".into()),
        worn: "all day".into(),
    };
    let reading = WornPair {
        used_for: UsedFor::Near,
        ..WornPair::default()
    };
    WornGlasses {
        pairs: Finding::Done(vec![bifocal, reading]),
    }
}

fn pupils() -> Pupils {
    let right = PupilEye {
        light_mm: Finding::Done(2.5),
        dark_mm: Finding::Done(4.0),
        direct: Finding::Done(Reaction::Brisk),
        consensual: Finding::Done(Reaction::Sluggish),
        near: Finding::Done(Reaction::None),
        lens: Finding::Done(LensState::Own(Opacity {
            nuclear: Some(Grade::LocsIii(3.2)),
            cortical: Some(Grade::Plain(Amount::Mild)),
            posterior: None,
        })),
        note: "iris torn".into(),
    };
    let left = PupilEye {
        light_mm: unable("eyes closed"),
        lens: Finding::Done(LensState::Implant {
            capsule: Some(Amount::Moderate),
        }),
        ..PupilEye::default()
    };
    Pupils {
        eyes: Eyes { right, left },
        afferent: Finding::Done(Afferent::In(Eye::Left)),
    }
}

fn pupils_none() -> Pupils {
    let with = |lens| PupilEye {
        lens: Finding::Done(lens),
        ..PupilEye::default()
    };
    Pupils {
        eyes: Eyes {
            right: with(LensState::None),
            left: with(LensState::Implant { capsule: None }),
        },
        afferent: Finding::Done(Afferent::None),
    }
}

fn near() -> Near {
    Near {
        task: "newspaper on the tray".into(),
        distance_cm: Finding::Done(35.0),
        amplitude_d: Finding::Done(0.5),
        accepted_d: Eyes {
            right: Finding::Done(2.75),
            left: not_done("blind eye"),
        },
        clear: Finding::Done(ClearBetween {
            nearest_cm: 30.0,
            farthest_cm: 40.0,
        }),
        read: Finding::Done(PrintRead {
            print: PrintSize::N(8.0),
            at_cm: 35.0,
        }),
        magnified: Finding::Done(Magnified {
            times: 2.5,
            by: "stand with a light".into(),
        }),
    }
}

fn near_m() -> Near {
    Near {
        read: Finding::Done(PrintRead {
            print: PrintSize::M(1.5),
            at_cm: 40.0,
        }),
        ..Near::default()
    }
}

fn binocular() -> Binocular {
    let exo = Deviation {
        turn: Turn::Exo,
        manifest: None,
        prism_pd: Some(4.0),
        recovery: Some(Recovery::Quick),
    };
    let hyper = Deviation {
        turn: Turn::RightHyper,
        manifest: Some(Eye::Right),
        prism_pd: None,
        recovery: None,
    };
    Binocular {
        cover_far: Finding::Done(Cover {
            with_glasses: true,
            deviations: vec![exo, hyper],
        }),
        cover_near: Finding::Done(Cover::default()),
        motility: Finding::Done(Motility::Limited("up to the right".into())),
        disparity: Finding::Done(Eyes {
            right: prism(0.0, 0.5),
            left: Prism::NONE,
        }),
        prism: Finding::Done(Eyes {
            right: prism(1.0, 0.0),
            left: prism(-1.0, 0.0),
        }),
        note: "head turned".into(),
    }
}

fn pressure() -> Pressure {
    let readings = |mmhg: &[f64]| {
        Finding::Done(Readings {
            mmhg: mmhg.to_vec(),
        })
    };
    let rebound = Taken {
        device: Device::Rebound,
        at: time(10, 20),
        after_dilating: false,
        eyes: Eyes {
            right: readings(&[15.0, 16.0, 15.0]),
            left: readings(&[17.0]),
        },
        note: "squeezed".into(),
    };
    let other = Taken {
        device: Device::Other("palpation".into()),
        at: time(11, 5),
        after_dilating: true,
        eyes: Eyes {
            right: not_done("asleep"),
            left: Finding::Blank,
        },
        note: String::new(),
    };
    Pressure {
        taken: vec![rebound, other],
    }
}

fn drops() -> Drops {
    let tropicamide = Given {
        drug: Drug::Tropicamide,
        strength_percent: Some(0.5),
        batch: "T123".into(),
        expires: Some(on(12, 31)),
        at: Some(time(10, 45)),
        into: WhichEyes::Both,
        by: "M. Farrow".into(),
    };
    let saline = Given {
        drug: Drug::Other("saline".into()),
        strength_percent: None,
        batch: String::new(),
        expires: None,
        at: None,
        into: WhichEyes::Left,
        by: String::new(),
    };
    Drops {
        given: Finding::Done(vec![tropicamide, saline]),
        allergies_asked: true,
        angle_judged: true,
        told_person: "blur for hours".into(),
        told_staff: "watch for falls".into(),
        reaction: "none".into(),
    }
}

fn no_drops() -> Drops {
    Drops {
        given: not_done("angles narrow"),
        angle_judged: true,
        ..Drops::default()
    }
}

fn anterior() -> Anterior {
    let right = AnteriorEye {
        cornea: Finding::Done(Looks::Other("arcus".into())),
        angle: Finding::Done(Angle::VanHerick(2)),
        ..AnteriorEye::normal()
    };
    let left = AnteriorEye {
        lids: unable("squeezes"),
        angle: Finding::Done(Angle::LimbalPercent(15.0)),
        ..AnteriorEye::default()
    };
    Anterior {
        looked_with: "hand-held slit lamp".into(),
        eyes: Eyes { right, left },
    }
}

fn angles() -> Anterior {
    let with = |angle| AnteriorEye {
        angle: Finding::Done(angle),
        ..AnteriorEye::default()
    };
    Anterior {
        eyes: Eyes {
            right: with(Angle::Shaffer(4)),
            left: with(Angle::TorchShallow),
        },
        ..Anterior::default()
    }
}

fn posterior() -> Posterior {
    let right = PosteriorEye {
        viewed: Some(Viewed::SlitLamp),
        dilated: true,
        cup_to_disc: Finding::Done(0.4),
        disc_size: Some(DiscSize::Medium),
        macula: Finding::Done(Looks::Other("drusen".into())),
        periphery: not_done("not dilated far enough"),
        ..PosteriorEye::normal()
    };
    let left = PosteriorEye {
        view: Finding::Done(View::None),
        ..PosteriorEye::default()
    };
    Posterior {
        eyes: Eyes { right, left },
    }
}

fn fields() -> Fields {
    Fields {
        how: "red target".into(),
        quadrants: Eyes {
            right: Finding::Done(Quadrants {
                lower_temporal: Quadrant::Reduced,
                lower_nasal: Quadrant::Missing,
                ..Quadrants::FULL
            }),
            left: unable("could not follow"),
        },
        grid: Eyes {
            right: Finding::Done(Grid {
                bent: true,
                missing: false,
                known: Some(false),
                place: "below the middle".into(),
            }),
            left: Finding::Blank,
        },
        note: "seated".into(),
    }
}

fn sketches() -> Sketches {
    let point = |x, y, pressure| Point { x, y, pressure };
    let back = Sketch {
        outline: Outline::Back,
        eye: Some(Eye::Right),
        strokes: vec![
            Stroke {
                points: vec![point(5000, 5000, 128), point(5200, 4900, 255)],
            },
            Stroke::default(),
        ],
        caption: "haemorrhage above the disc".into(),
    };
    let face = Sketch {
        outline: Outline::Face,
        eye: None,
        strokes: Vec::new(),
        caption: String::new(),
    };
    Sketches {
        drawn: vec![back, face],
    }
}

fn order() -> Order {
    let right = OrderedLens {
        add_d: Some(2.5),
        prism: Some(prism(1.0, 0.0)),
        centre_mm: Some(31.0),
        height_mm: Some(18.0),
        ..OrderedLens::new(cylinder())
    };
    let bifocal = OrderedPair {
        used_for: UsedFor::FarAndNear,
        form: LensForm::Bifocal,
        lenses: Eyes {
            right: Some(right),
            left: Some(OrderedLens::new(SphereCyl::sphere(1.75))),
        },
        vertex_mm: Some(12.0),
        frame: "blue, 50 by 18".into(),
        lens_note: "plastic".into(),
        engraved: Some("O. Pennyquick".into()),
    };
    let one = OrderedPair {
        used_for: UsedFor::Between,
        lenses: Eyes {
            right: Some(OrderedLens::new(SphereCyl::sphere(3.0))),
            left: None,
        },
        ..OrderedPair::default()
    };
    Order {
        pairs: vec![bifocal, one],
        made_by: "harbour workshop".into(),
        sent_on: Some(on(3, 5)),
    }
}

fn fitting() -> Fitting {
    let right = MadeLens {
        lens: SphereCyl::new(2.0, -1.0, 91.0).unwrap(),
        add_d: Some(2.5),
        prism: Some(prism(1.0, 0.0)),
        height_mm: Some(18.0),
    };
    Fitting {
        pairs: vec![Fitted {
            pair: 0,
            received_on: Some(on(3, 20)),
            lenses: Eyes {
                right: Finding::Done(right),
                left: unable("too dark"),
            },
            read_to: ReadTo::Hundredth,
            judged_by: Tolerance::AnsiZ801,
            name_on_it: Some(true),
            fitted_on: Some(on(3, 21)),
            adjusted: "sides".into(),
            reaction: Finding::Done("reads the paper".into()),
        }],
    }
}

fn fitting_bare() -> Fitting {
    let eighth = Fitted {
        pair: 1,
        read_to: ReadTo::Eighth,
        ..Fitted::default()
    };
    let progressive = Fitted {
        pair: 2,
        judged_by: Tolerance::AnsiZ801Progressive,
        ..Fitted::default()
    };
    Fitting {
        pairs: vec![eighth, progressive],
    }
}

fn of(n: u8, contents: impl Part) -> Entry {
    section(n, &[3], contents.into_section())
}

fn expected() -> Vec<(&'static str, Entry)> {
    let presumed = Consent {
        capacity: Finding::Done(Capacity::Presumed),
        ..agreed(Agreed::Spoken)
    };
    let attorney = agreed(Agreed::ByAttorney {
        who: "son, health and welfare".into(),
    });
    let refused = agreed(Agreed::Refused {
        how: "turned away".into(),
    });
    vec![
        ("anterior", of(67, anterior())),
        ("anterior-angles", of(68, angles())),
        ("binocular", of(62, binocular())),
        ("binocular-full", of(63, Binocular::normal())),
        ("consent-assessed", of(53, consent())),
        ("consent-attorney", of(55, attorney)),
        ("consent-presumed", of(54, presumed)),
        ("consent-refused", of(56, refused)),
        ("drops", of(65, drops())),
        ("drops-not-given", of(66, no_drops())),
        ("fields", of(70, fields())),
        ("fitting", section(73, &[3, 10], fitting().into_section())),
        ("fitting-bare", of(74, fitting_bare())),
        ("history", of(51, history())),
        ("history-bare", of(52, history_bare())),
        ("near", of(60, near())),
        ("near-m", of(61, near_m())),
        ("order", of(72, order())),
        ("posterior", of(69, posterior())),
        ("pressure", of(64, pressure())),
        ("pupils", of(58, pupils())),
        ("pupils-none", of(59, pupils_none())),
        ("sketches", of(71, sketches())),
        ("worn-glasses", of(57, worn_glasses())),
    ]
}

#[test]
fn every_new_section_reads_as_it_was_meant() {
    for (name, entry) in expected() {
        let read = Entry::from_cbor(&bytes(&format!("v4/{name}")));
        assert_eq!(read, Ok(entry), "{name}");
    }
}

#[test]
fn every_new_section_is_written_in_the_frozen_bytes() {
    for (name, entry) in expected() {
        assert_eq!(entry.to_cbor(), bytes(&format!("v4/{name}")), "{name}");
    }
}

#[test]
fn no_file_of_the_fourth_layout_is_left_unread() {
    let known: Vec<&str> = expected().iter().map(|(name, _)| *name).collect();
    assert_eq!(names("v4"), known);
}
