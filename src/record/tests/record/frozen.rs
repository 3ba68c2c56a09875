//! Bytes that must never change.
//!
//! The files were written by an encoder made for the purpose from RFC 8949 and read back with an independent CBOR
//! library before they were frozen; this crate had no part in making them. A released layout is never edited: a new
//! one gets a folder of its own.

use optics::retinoscopy::bracket::{Source, Start};
use optics::retinoscopy::{
    Beam, Brightness, Circumstances, HeldOver, Media, Motion, Neutral, Reflex, Setup, Speed, Sweep,
    Sweeping, WorkingDistance, WorkingLens,
};
use optics::{Cell, CylinderSign, Meridian, SphereCyl, Step};
use record::{
    Acuity, Body, Born, Chart, Cycloplegic, Decision, DeviceId, Draft, Entry, EntryId, ExamId,
    EyeAcuity, Eyes, Finding, Glasses, MovedIn, Name, NearAdd, PersonDetails, PersonId, Recall,
    Referral, Retinoscopy, Section, Seen, Stamp, Started, Subjective, SubjectiveEye, Swept,
    Urgency,
};
use uuid::Uuid;

use crate::desk::day;
use crate::samples::{bytes, names, seen};

const BASE: u128 = 0x0195_6000_0000_7000_8000_0000_0000_0000;
pub const PERSON: PersonId = PersonId::from_uuid(Uuid::from_u128(BASE + 0x0101));
pub const EXAM: ExamId = ExamId::from_uuid(Uuid::from_u128(BASE + 0x0201));

pub fn id(n: u8) -> EntryId {
    EntryId::from_uuid(Uuid::from_u128(BASE + 0x0300 + u128::from(n)))
}

pub fn entry(n: u8, parents: &[u8], body: Body) -> Entry {
    let device = DeviceId(std::array::from_fn(|at| 0xD0 + at as u8));
    let stamp = Stamp {
        wall_ms: 1_772_611_200_000 + u64::from(n),
        counter: n.into(),
    };
    let parents = parents.iter().copied().map(id).collect();
    Entry::new(id(n), parents, "M. Farrow".into(), device, stamp, body)
}

pub fn section(n: u8, parents: &[u8], section: Section) -> Entry {
    let body = Body::Section {
        exam: EXAM,
        section,
        reason: None,
    };
    entry(n, parents, body)
}

fn person(n: u8, parents: &[u8], born: Option<Born>, identifier: Option<&str>) -> Entry {
    let details = PersonDetails {
        name: Name {
            given: "Orla".into(),
            family: "Pennyquick".into(),
        },
        born,
        place: "Saltmarsh Court".into(),
        room: "14".into(),
        identifier: identifier.map(str::to_owned),
        note: "cataract watched".into(),
        ..PersonDetails::default()
    };
    let body = Body::Person {
        person: PERSON,
        details,
    };
    entry(n, parents, body)
}

fn not_done<T>(reason: &str) -> Finding<T> {
    let reason = reason.to_owned();
    Finding::NotDone { reason }
}

fn unable<T>(reason: &str) -> Finding<T> {
    let reason = reason.to_owned();
    Finding::Unable { reason }
}

fn chart(made_for_m: f64, used_at_m: f64) -> Chart {
    Chart {
        made_for_m,
        used_at_m,
    }
}

fn lens(sphere: f64, cylinder: f64, axis: f64) -> SphereCyl {
    SphereCyl::new(sphere, cylinder, axis).unwrap()
}

fn acuity_lines() -> Section {
    Section::Acuity(Acuity {
        chart: chart(6.0, 2.0),
        eyes: Eyes {
            right: EyeAcuity {
                unaided: Finding::Done(seen(60, 0)),
                with_glasses: Finding::Done(seen(36, -1)),
                pinhole: Finding::Done(seen(18, 2)),
            },
            left: EyeAcuity {
                unaided: not_done("asleep"),
                with_glasses: Finding::Done(seen(18, 0)),
                pinhole: Finding::Blank,
            },
        },
    })
}

fn acuity_categories() -> Section {
    Section::Acuity(Acuity {
        chart: chart(3.0, 1.5),
        eyes: Eyes {
            right: EyeAcuity {
                unaided: Finding::Done(Seen::Fingers { at_cm: 30 }),
                with_glasses: Finding::Done(Seen::HandMoves),
                pinhole: Finding::Done(Seen::Light),
            },
            left: EyeAcuity {
                unaided: Finding::Done(Seen::NoLight),
                with_glasses: unable("false eye"),
                pinhole: Finding::Blank,
            },
        },
    })
}

fn retinoscopy_meridians() -> Section {
    Section::Retinoscopy(Retinoscopy {
        setup: Setup {
            cell_spacing_mm: 4.0,
            ..Setup::new(WorkingDistance::from_cm(67.0).unwrap(), None)
        },
        eyes: Eyes {
            right: Finding::Done(Neutral::two_meridians(90.0, 4.75, 3.25).unwrap()),
            left: unable("dense cataract"),
        },
        swept: Eyes::default(),
        vertex_mm: None,
    })
}

fn retinoscopy_frame() -> Section {
    Section::Retinoscopy(Retinoscopy {
        setup: Setup {
            cell_spacing_mm: 4.0,
            ..Setup::new(
                WorkingDistance::from_cm(66.5).unwrap(),
                Some(WorkingLens::new(1.5, Cell::Front).unwrap()),
            )
        },
        eyes: Eyes {
            right: Finding::Done(Neutral::InFrame(lens(3.25, -1.5, 90.0))),
            left: Finding::Done(Neutral::InFrame(SphereCyl::sphere(0.75))),
        },
        swept: Eyes::default(),
        vertex_mm: None,
    })
}

fn subjective() -> Section {
    Section::Subjective(Subjective {
        chart: chart(6.0, 6.0),
        for_the_room: false,
        vertex_mm: Some(12.0),
        add: Some(NearAdd {
            power: 2.5,
            at_cm: 40.0,
        }),
        eyes: Eyes {
            right: Finding::Done(SubjectiveEye {
                lens: lens(3.25, -1.5, 90.0),
                acuity: Some(seen(9, -2)),
            }),
            left: Finding::Done(SubjectiveEye {
                lens: lens(-0.125, 0.375, 22.5),
                acuity: None,
            }),
        },
        started: Eyes::default(),
    })
}

fn subjective_bare() -> Section {
    Section::Subjective(Subjective {
        chart: chart(6.0, 3.0),
        for_the_room: false,
        vertex_mm: None,
        add: None,
        eyes: Eyes {
            right: Finding::Blank,
            left: not_done("could not answer"),
        },
        started: Eyes::default(),
    })
}

/// Started from retinoscopy at 67 cm; the left eye was not.
fn started() -> Entry {
    let lens = lens(3.25, -1.5, 90.0);
    let chosen = SubjectiveEye { lens, acuity: None };
    let start = Started {
        lens,
        taken_off: WorkingDistance::from_cm(67.0).unwrap(),
    };
    let body = Section::Subjective(Subjective {
        chart: chart(6.0, 3.0),
        for_the_room: false,
        vertex_mm: None,
        add: None,
        eyes: Eyes {
            right: Finding::Done(chosen),
            left: Finding::Blank,
        },
        started: Eyes {
            right: Some(start),
            left: None,
        },
    });
    section(31, &[], body)
}

/// Over the glasses worn with plus cylinders and eighths, after drops; the left eye from beside the line of sight.
fn over() -> Entry {
    let held = HeldOver::new(lens(2.5, -1.0, 90.0), SphereCyl::sphere(0.5), 10.0).unwrap();
    let beside = Circumstances::default().off_the_line_of_sight(Some(8.0));
    let left = Swept {
        sweeping: Sweeping {
            circumstances: beside.unwrap(),
            ..Sweeping::default()
        },
        ..Swept::default()
    };
    let right = Swept {
        drops: Some(Cycloplegic {
            drug: "cyclopentolate 1 %".into(),
            minutes: 35,
        }),
        ..Swept::default()
    };
    let found = Retinoscopy {
        setup: Setup {
            step: Step::Eighth,
            cylinders: CylinderSign::Plus,
            ..setup(67.0, Some(1.5))
        },
        eyes: Eyes {
            right: Finding::Done(Neutral::OverLens(held)),
            left: Finding::Blank,
        },
        swept: Eyes { right, left },
        vertex_mm: Some(12.0),
    };
    section(32, &[], Section::Retinoscopy(found))
}

#[test]
fn retinoscopy_over_glasses_is_frozen() {
    let frozen = bytes("v2/retinoscopy-over");
    assert_eq!(Entry::from_cbor(&frozen), Ok(over()));
    assert_eq!(over().to_cbor(), frozen);
}

#[test]
fn what_a_subjective_started_from_is_frozen() {
    let frozen = bytes("v2/subjective-started");
    assert_eq!(Entry::from_cbor(&frozen), Ok(started()));
    assert_eq!(started().to_cbor(), frozen);
}

fn decision() -> Section {
    Section::Decision(Decision {
        glasses: Some(Glasses::Prescribe),
        refer: Some(Referral {
            urgency: Urgency::Soon,
            to: "eye clinic".into(),
        }),
        advice: "keep the old pair".into(),
        recall: Some(Recall {
            months: 12,
            reason: "cataract watched".into(),
        }),
        note: "daughter was there".into(),
    })
}

fn opened() -> Body {
    Body::ExamOpened {
        exam: EXAM,
        person: PERSON,
        place: "Saltmarsh Court".into(),
        opened_on: day(2026, 3, 4),
    }
}

fn signed() -> Body {
    Body::Signed {
        exam: EXAM,
        heads: vec![id(5), id(7), id(8), id(9)],
        signer: "M. Farrow, optometrist".into(),
    }
}

fn amended() -> Body {
    Body::Section {
        exam: EXAM,
        section: Section::Decision(Decision {
            glasses: Some(Glasses::LeaveAlone),
            ..Decision::default()
        }),
        reason: Some("she would rather keep her old pair".into()),
    }
}

fn expected() -> Vec<(&'static str, Entry)> {
    let date = Born::Date(day(1940, 1, 31));
    let stated = Born::Stated {
        years: 86,
        in_year: 2026,
    };
    vec![
        ("acuity-categories", section(5, &[4], acuity_categories())),
        ("acuity-lines", section(4, &[3], acuity_lines())),
        ("decision", section(9, &[3], decision())),
        ("decision-amended", entry(11, &[9, 10], amended())),
        ("exam-opened", entry(3, &[1], opened())),
        ("person-date", person(1, &[], Some(date), Some("H-0014"))),
        ("person-stated-age", person(2, &[1], Some(stated), None)),
        ("person-unknown-birth", person(12, &[2], None, None)),
        ("retinoscopy-frame", section(7, &[6], retinoscopy_frame())),
        (
            "retinoscopy-meridians",
            section(6, &[3], retinoscopy_meridians()),
        ),
        ("signed", entry(10, &[5, 7, 8, 9], signed())),
        ("subjective", section(8, &[3], subjective())),
        ("subjective-bare", section(13, &[8], subjective_bare())),
    ]
}

fn setup(cm: f64, working_lens: Option<f64>) -> Setup {
    Setup {
        cell_spacing_mm: 4.0,
        ..Setup::new(
            WorkingDistance::from_cm(cm).unwrap(),
            working_lens.map(|power| WorkingLens::new(power, Cell::Front).unwrap()),
        )
    }
}

fn sweep(meridian: f64, lens: f64, setup: Setup, seen: Motion) -> Sweep {
    Sweep::new(Meridian::new(meridian).unwrap(), lens, setup, seen).unwrap()
}

fn fully_swept() -> Swept {
    let start = Start {
        lens: lens(3.0, -1.5, 90.0),
        from: Source::LastTime,
    };
    let circumstances =
        Circumstances::new(Some(2.5), Some(Media::Moderate), Some(Reflex::Dull)).unwrap();
    let sweeps = vec![
        sweep(180.0, 3.0, setup(67.0, None), Motion::With),
        Sweep {
            beam: Beam::Reversed,
            speed: Some(Speed::Fast),
            brightness: Some(Brightness::Dim),
            ..sweep(90.0, 4.5, setup(67.0, None), Motion::Against)
        },
        Sweep {
            speed: Some(Speed::Slow),
            brightness: Some(Brightness::Bright),
            ..sweep(180.0, 3.25, setup(40.0, Some(2.5)), Motion::Neutral)
        },
    ];
    Swept {
        sweeping: Sweeping {
            start: Some(start),
            circumstances,
            sweeps,
        },
        moved_in: Some(MovedIn::WithInBoth),
        drops: None,
    }
}

fn swept() -> Entry {
    let barely = Sweeping {
        sweeps: vec![sweep(45.0, -0.5, setup(67.0, None), Motion::CannotTell)],
        ..Sweeping::default()
    };
    let left = Swept {
        sweeping: barely,
        moved_in: None,
        drops: None,
    };
    let retinoscopy = Retinoscopy {
        setup: setup(67.0, None),
        eyes: Eyes {
            right: Finding::Done(Neutral::two_meridians(180.0, 3.25, 4.75).unwrap()),
            left: Finding::Blank,
        },
        swept: Eyes {
            right: fully_swept(),
            left,
        },
        vertex_mm: None,
    };
    section(14, &[7], Section::Retinoscopy(retinoscopy))
}

#[test]
fn sweeps_are_frozen_in_the_second_layout() {
    let frozen = bytes("v2/retinoscopy-swept");
    assert_eq!(Entry::from_cbor(&frozen), Ok(swept()));
    assert_eq!(swept().to_cbor(), frozen);
    assert_eq!(
        names("v2"),
        [
            "retinoscopy-over",
            "retinoscopy-swept",
            "subjective-started"
        ]
    );
}

fn draft() -> Draft {
    Draft {
        exam: EXAM,
        section: subjective(),
        typing: [("right.sphere".to_owned(), "+1.".to_owned())].into(),
        based_on: vec![id(8)],
        saved: Stamp {
            wall_ms: 1_772_611_205_000,
            counter: 0,
        },
    }
}

#[test]
fn every_frozen_entry_reads_as_it_was_meant() {
    for (name, entry) in expected() {
        let read = Entry::from_cbor(&bytes(&format!("v1/{name}")));
        assert_eq!(read, Ok(entry), "{name}");
    }
}

#[test]
fn every_entry_is_written_in_the_frozen_bytes() {
    for (name, entry) in expected() {
        assert_eq!(entry.to_cbor(), bytes(&format!("v1/{name}")), "{name}");
    }
}

#[test]
fn a_draft_is_frozen_too() {
    let frozen = bytes("v1/draft");
    assert_eq!(Draft::from_cbor(&frozen), Ok(draft()));
    assert_eq!(draft().to_cbor(), frozen);
}

#[test]
fn no_frozen_file_is_left_unread() {
    let mut known: Vec<&str> = expected().iter().map(|(name, _)| *name).collect();
    known.push("draft");
    known.sort_unstable();
    assert_eq!(names("v1"), known);
}

#[test]
fn what_a_newer_version_wrote_is_carried_byte_for_byte() {
    for (name, kind, schema) in [
        ("unknown-kind", "section-pressure", 1),
        ("newer-schema", "section-decision", 2),
    ] {
        let frozen = bytes(&format!("carried/{name}"));
        let entry = Entry::from_cbor(&frozen).unwrap();
        assert_eq!((entry.body.kind(), entry.schema), (kind, schema));
        assert!(matches!(entry.body, Body::Unread(_)), "{name}");
        assert_eq!(entry.to_cbor(), frozen, "{name}");
    }
}

#[test]
fn fields_that_are_not_known_are_ignored() {
    let prescribe = Decision {
        glasses: Some(Glasses::Prescribe),
        ..Decision::default()
    };
    let read = Entry::from_cbor(&bytes("carried/unknown-fields"));
    assert_eq!(read, Ok(section(22, &[3], Section::Decision(prescribe))));
}
