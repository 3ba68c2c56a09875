//! Whatever can be written can be read back the same.

use optics::SphereCyl;
use optics::acuity::ChartLine;
use optics::retinoscopy::{Neutral, Setup, WorkingDistance};
use proptest::option;
use proptest::prelude::*;
use record::{
    Acuity, Body, Chart, Decision, DeviceId, Draft, Entry, EntryId, ExamId, EyeAcuity, Eyes,
    Finding, Glasses, NearAdd, Recall, Referral, Retinoscopy, Section, Seen, Stamp, Subjective,
    SubjectiveEye, Urgency,
};
use uuid::Uuid;

fn lens() -> impl Strategy<Value = SphereCyl> {
    (-40.0..40.0, -15.0..15.0, 0.0..=180.0).prop_map(|(sphere, cylinder, axis)| {
        SphereCyl::new(sphere, cylinder, axis).expect("all three lie within their ranges")
    })
}

fn seen() -> impl Strategy<Value = Seen> {
    prop_oneof![
        (prop::sample::select(&ChartLine::ALL[..]), -4_i8..=4)
            .prop_map(|(line, letters)| Seen::Line { line, letters }),
        (1_u16..600).prop_map(|at_cm| Seen::Fingers { at_cm }),
        Just(Seen::HandMoves),
        Just(Seen::Light),
        Just(Seen::NoLight),
    ]
}

fn finding<T: std::fmt::Debug>(of: impl Strategy<Value = T>) -> impl Strategy<Value = Finding<T>> {
    prop_oneof![
        Just(()).prop_map(|()| Finding::Blank),
        of.prop_map(Finding::Done),
        ".{0,20}".prop_map(|reason| Finding::NotDone { reason }),
        ".{0,20}".prop_map(|reason| Finding::Unable { reason }),
    ]
}

fn eyes<T: std::fmt::Debug, S: Strategy<Value = T>>(
    of: fn() -> S,
) -> impl Strategy<Value = Eyes<T>> {
    (of(), of()).prop_map(|(right, left)| Eyes { right, left })
}

fn chart() -> impl Strategy<Value = Chart> {
    (0.25..10.0, 0.25..10.0).prop_map(|(made_for_m, used_at_m)| Chart {
        made_for_m,
        used_at_m,
    })
}

fn eye_acuity() -> impl Strategy<Value = EyeAcuity> {
    (finding(seen()), finding(seen()), finding(seen())).prop_map(
        |(unaided, with_glasses, pinhole)| EyeAcuity {
            unaided,
            with_glasses,
            pinhole,
        },
    )
}

fn neutral() -> impl Strategy<Value = Finding<Neutral>> {
    finding(prop_oneof![
        lens().prop_map(Neutral::InFrame),
        (0.0..=180.0, -55.0..55.0, -55.0..55.0).prop_map(|(meridian, first, second)| {
            Neutral::two_meridians(meridian, first, second).expect("within their ranges")
        }),
    ])
}

fn subjective_eye() -> impl Strategy<Value = Finding<SubjectiveEye>> {
    finding((lens(), option::of(seen())).prop_map(|(lens, acuity)| SubjectiveEye { lens, acuity }))
}

fn add() -> impl Strategy<Value = NearAdd> {
    (0.25..20.0, 5.0..100.0).prop_map(|(power, at_cm)| NearAdd { power, at_cm })
}

fn decision() -> impl Strategy<Value = Decision> {
    let glasses = prop::sample::select(vec![Glasses::Prescribe, Glasses::LeaveAlone]);
    let urgency = prop::sample::select(&Urgency::ALL[..]);
    let refer = (urgency, ".{0,20}").prop_map(|(urgency, to)| Referral { urgency, to });
    let recall = (any::<u16>(), ".{0,20}").prop_map(|(months, reason)| Recall { months, reason });
    let parts = (
        option::of(glasses),
        option::of(refer),
        ".{0,40}",
        option::of(recall),
        ".{0,40}",
    );
    parts.prop_map(|(glasses, refer, advice, recall, note)| Decision {
        glasses,
        refer,
        advice,
        recall,
        note,
    })
}

fn section() -> impl Strategy<Value = Section> {
    let setup = (10.0..=120.0).prop_map(|cm| {
        Setup::new(
            WorkingDistance::from_cm(cm).expect("within its range"),
            None,
        )
    });
    prop_oneof![
        (chart(), eyes(eye_acuity))
            .prop_map(|(chart, eyes)| Section::Acuity(Acuity { chart, eyes })),
        (setup, eyes(neutral)).prop_map(|(setup, eyes)| Section::Retinoscopy(Retinoscopy {
            setup,
            eyes,
            ..Retinoscopy::default()
        })),
        (
            chart(),
            option::of(5.0..25.0),
            option::of(add()),
            eyes(subjective_eye)
        )
            .prop_map(
                |(chart, vertex_mm, add, eyes)| Section::Subjective(Subjective {
                    chart,
                    vertex_mm,
                    add,
                    eyes,
                    started: Eyes::default(),
                })
            ),
        decision().prop_map(Section::Decision),
    ]
}

fn entry_id() -> impl Strategy<Value = EntryId> {
    any::<u128>().prop_map(|n| EntryId::from_uuid(Uuid::from_u128(n)))
}

proptest! {
    #[test]
    fn an_entry_comes_back_as_it_went(
        id in entry_id(),
        parents in prop::collection::vec(entry_id(), 0..5),
        author in ".{0,30}",
        device in any::<[u8; 16]>(),
        wall_ms in any::<u64>(),
        counter in any::<u16>(),
        section in section(),
        reason in option::of(".{0,30}"),
    ) {
        let exam = ExamId::from_uuid(Uuid::from_u128(7));
        let body = Body::Section { exam, section, reason };
        let entry = Entry::new(id, parents, author, DeviceId(device), Stamp { wall_ms, counter }, body);
        let bytes = entry.to_cbor();
        let read = Entry::from_cbor(&bytes).expect("what was just written");
        prop_assert_eq!(read.to_cbor(), bytes);
        prop_assert_eq!(read, entry);
    }

    #[test]
    fn a_draft_comes_back_as_it_went(
        section in section(),
        typing in prop::collection::btree_map(".{0,10}", ".{0,10}", 0..4),
        based_on in prop::collection::vec(entry_id(), 0..3),
    ) {
        let exam = ExamId::from_uuid(Uuid::from_u128(7));
        let draft = Draft { exam, section, typing, based_on, saved: Stamp::default() };
        prop_assert_eq!(Draft::from_cbor(&draft.to_cbor()), Ok(draft));
    }
}

/// The same section travels in an entry and in a draft; a draft cut short is refused like an entry.
#[test]
fn a_draft_cut_short_is_refused() {
    let draft = Draft {
        exam: ExamId::from_uuid(Uuid::from_u128(7)),
        section: Section::Decision(Decision::default()),
        typing: std::collections::BTreeMap::new(),
        based_on: Vec::new(),
        saved: Stamp::default(),
    };
    let bytes = draft.to_cbor();
    for end in 0..bytes.len() {
        assert!(Draft::from_cbor(&bytes[..end]).is_err(), "cut at {end}");
    }
}
