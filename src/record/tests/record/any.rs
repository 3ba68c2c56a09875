//! Any section that can be written down, for properties that hold of all of them.

use optics::SphereCyl;
use optics::acuity::ChartLine;
use optics::retinoscopy::{Neutral, Setup, WorkingDistance};
use proptest::option;
use proptest::prelude::*;
use record::{
    Acuity, Chart, Decision, EntryId, EyeAcuity, Eyes, Finding, Glasses, NearAdd, Recall, Referral,
    Retinoscopy, Section, Seen, Subjective, SubjectiveEye, Urgency,
};
use uuid::Uuid;

use crate::any_other::other_section;

pub fn lens() -> impl Strategy<Value = SphereCyl> {
    (-40.0..40.0, -15.0..15.0, 0.0..=180.0).prop_map(|(sphere, cylinder, axis)| {
        SphereCyl::new(sphere, cylinder, axis).expect("all three lie within their ranges")
    })
}

pub fn seen() -> impl Strategy<Value = Seen> {
    prop_oneof![
        (prop::sample::select(&ChartLine::ALL[..]), -4_i8..=4)
            .prop_map(|(line, letters)| Seen::Line { line, letters }),
        (1_u16..600).prop_map(|at_cm| Seen::Fingers { at_cm }),
        Just(Seen::HandMoves),
        Just(Seen::Light),
        Just(Seen::NoLight),
    ]
}

/// Boxed, for the types of strategies within strategies take minutes to compile.
pub fn finding<T: std::fmt::Debug + 'static>(
    of: impl Strategy<Value = T> + 'static,
) -> BoxedStrategy<Finding<T>> {
    prop_oneof![
        Just(()).prop_map(|()| Finding::Blank),
        of.prop_map(Finding::Done),
        ".{0,20}".prop_map(|reason| Finding::NotDone { reason }),
        ".{0,20}".prop_map(|reason| Finding::Unable { reason }),
    ]
    .boxed()
}

pub fn eyes<T: std::fmt::Debug + 'static, S: Strategy<Value = T> + 'static>(
    of: fn() -> S,
) -> BoxedStrategy<Eyes<T>> {
    (of(), of())
        .prop_map(|(right, left)| Eyes { right, left })
        .boxed()
}

pub fn chart() -> impl Strategy<Value = Chart> {
    (0.25..10.0, 0.25..10.0).prop_map(|(made_for_m, used_at_m)| Chart {
        made_for_m,
        used_at_m,
    })
}

pub fn eye_acuity() -> impl Strategy<Value = EyeAcuity> {
    (finding(seen()), finding(seen()), finding(seen())).prop_map(
        |(unaided, with_glasses, pinhole)| EyeAcuity {
            unaided,
            with_glasses,
            pinhole,
        },
    )
}

pub fn neutral() -> impl Strategy<Value = Finding<Neutral>> {
    finding(prop_oneof![
        lens().prop_map(Neutral::InFrame),
        (0.0..=180.0, -55.0..55.0, -55.0..55.0).prop_map(|(meridian, first, second)| {
            Neutral::two_meridians(meridian, first, second).expect("within their ranges")
        }),
    ])
}

pub fn subjective_eye() -> impl Strategy<Value = Finding<SubjectiveEye>> {
    finding((lens(), option::of(seen())).prop_map(|(lens, acuity)| SubjectiveEye { lens, acuity }))
}

pub fn add() -> impl Strategy<Value = NearAdd> {
    (0.25..20.0, 5.0..100.0).prop_map(|(power, at_cm)| NearAdd { power, at_cm })
}

pub fn decision() -> impl Strategy<Value = Decision> {
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

/// A section of any kind.
pub fn section() -> impl Strategy<Value = Section> {
    prop_oneof![refraction().boxed(), other_section().boxed()]
}

/// Acuity, refraction and decision.
fn refraction() -> impl Strategy<Value = Section> {
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
                    for_the_room: vertex_mm.is_some(),
                    vertex_mm,
                    add,
                    eyes,
                    started: Eyes::default(),
                })
            ),
        decision().prop_map(Section::Decision),
    ]
}

pub fn entry_id() -> impl Strategy<Value = EntryId> {
    any::<u128>().prop_map(|n| EntryId::from_uuid(Uuid::from_u128(n)))
}
