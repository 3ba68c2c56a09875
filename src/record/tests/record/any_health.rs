//! Any of the sections about health; their numbers lie in and out of range.

use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;
use record::{
    Afferent, Agreed, Amount, Angle, Anterior, AnteriorEye, Assessed, Capacity, Complaint, Consent,
    Device, DiscSize, Drops, Drug, Fields, Finding, Given, Grade, Grid, History, LensState, Looks,
    Mobility, Opacity, Outline, Part, Point, Posterior, PosteriorEye, Pressure, PupilEye, Pupils,
    Quadrant, Quadrants, Reaction, Readings, Section, Sketch, Sketches, Stroke, Symptom, Taken,
    View, Viewed, WhichEyes,
};

use crate::any::{eyes, finding};
use crate::any_other::{WORDS, date, eye, time};

pub fn history() -> impl Strategy<Value = Section> {
    let complaint = (select(Symptom::ALL), option::of(eye()), WORDS)
        .prop_map(|(what, eye, words)| Complaint { what, eye, words });
    (
        [WORDS; 4],
        [WORDS; 4],
        finding(vec(complaint, 0..3)),
        finding(WORDS),
        finding(any::<u16>()),
        option::of(select(&Mobility::ALL[..])),
    )
        .prop_map(|(some, others, complaints, allergies, falls, mobility)| {
            let [reason, cannot_travel, told_by, eyes_before] = some;
            let [health, medicines, family, uses] = others;
            History {
                reason,
                cannot_travel,
                told_by,
                complaints,
                eyes_before,
                health,
                medicines,
                allergies,
                family,
                falls_in_12_months: falls,
                mobility,
                uses,
            }
            .into_section()
        })
}

pub fn consent() -> impl Strategy<Value = Section> {
    let assessed = (any::<[bool; 4]>(), WORDS).prop_map(|(answers, how)| {
        let [understands, retains, weighs, communicates] = answers;
        Capacity::Assessed(Assessed {
            understands,
            retains,
            weighs,
            communicates,
            how,
        })
    });
    let agreed = prop_oneof![
        select(vec![Agreed::Spoken, Agreed::Shown, Agreed::Written]),
        WORDS.prop_map(|who| Agreed::ByAttorney { who }),
        WORDS.prop_map(|why| Agreed::BestInterests { why }),
        WORDS.prop_map(|how| Agreed::Refused { how }),
    ];
    (
        [WORDS; 6],
        finding(prop_oneof![Just(Capacity::Presumed), assessed]),
        finding(agreed),
    )
        .prop_map(|(words, capacity, agreed)| {
            let [
                asked_for_by,
                identified_by,
                present,
                communication,
                declined,
                note,
            ] = words;
            Consent {
                asked_for_by,
                identified_by,
                present,
                communication,
                capacity,
                agreed,
                declined,
                note,
            }
            .into_section()
        })
}

fn grade() -> impl Strategy<Value = Grade> {
    prop_oneof![
        select(&Amount::ALL[..]).prop_map(Grade::Plain),
        (0.0..8.0).prop_map(Grade::LocsIii),
    ]
}

fn lens_state() -> impl Strategy<Value = LensState> {
    let parts = (
        option::of(grade()),
        option::of(grade()),
        option::of(grade()),
    );
    prop_oneof![
        Just(LensState::None),
        option::of(select(&Amount::ALL[..])).prop_map(|capsule| LensState::Implant { capsule }),
        parts.prop_map(|(nuclear, cortical, posterior)| LensState::Own(Opacity {
            nuclear,
            cortical,
            posterior,
        })),
    ]
}

fn pupil() -> impl Strategy<Value = PupilEye> {
    let reaction = || {
        finding(select(vec![
            Reaction::Brisk,
            Reaction::Sluggish,
            Reaction::None,
        ]))
    };
    (
        finding(0.0..12.0),
        finding(0.0..12.0),
        (reaction(), reaction(), reaction()),
        finding(lens_state()),
        WORDS,
    )
        .prop_map(
            |(light_mm, dark_mm, (direct, consensual, near), lens, note)| PupilEye {
                light_mm,
                dark_mm,
                direct,
                consensual,
                near,
                lens,
                note,
            },
        )
}

pub fn pupils() -> impl Strategy<Value = Section> {
    let afferent = prop_oneof![Just(Afferent::None), eye().prop_map(Afferent::In)];
    (eyes(pupil), finding(afferent))
        .prop_map(|(eyes, afferent)| Pupils { eyes, afferent }.into_section())
}

fn readings() -> impl Strategy<Value = Finding<Readings>> {
    finding(vec(0.0..90.0, 0..5).prop_map(|mmhg| Readings { mmhg }))
}

pub fn pressure() -> impl Strategy<Value = Section> {
    let known = select(vec![
        Device::Applanation,
        Device::Rebound,
        Device::NonContact,
    ]);
    let device = prop_oneof![known, WORDS.prop_map(Device::Other)];
    let taken = (device, time(), any::<bool>(), eyes(readings), WORDS).prop_map(
        |(device, at, after_dilating, eyes, note)| Taken {
            device,
            at,
            after_dilating,
            eyes,
            note,
        },
    );
    vec(taken, 0..3).prop_map(|taken| Pressure { taken }.into_section())
}

pub fn drops() -> impl Strategy<Value = Section> {
    let known = select(vec![
        Drug::Tropicamide,
        Drug::Cyclopentolate,
        Drug::Phenylephrine,
        Drug::Proxymetacaine,
        Drug::Oxybuprocaine,
        Drug::Fluorescein,
    ]);
    let drug = prop_oneof![known, WORDS.prop_map(Drug::Other)];
    let into = select(vec![WhichEyes::Right, WhichEyes::Left, WhichEyes::Both]);
    let given = (
        drug,
        option::of(0.0..30.0),
        WORDS,
        option::of(date()),
        option::of(time()),
        into,
        WORDS,
    )
        .prop_map(
            |(drug, strength_percent, batch, expires, at, into, by)| Given {
                drug,
                strength_percent,
                batch,
                expires,
                at,
                into,
                by,
            },
        );
    (finding(vec(given, 0..3)), any::<[bool; 2]>(), [WORDS; 3]).prop_map(
        |(given, [allergies_asked, angle_judged], words)| {
            let [told_person, told_staff, reaction] = words;
            Drops {
                given,
                allergies_asked,
                angle_judged,
                told_person,
                told_staff,
                reaction,
            }
            .into_section()
        },
    )
}

fn looks() -> impl Strategy<Value = Finding<Looks>> {
    finding(prop_oneof![
        Just(Looks::Normal),
        WORDS.prop_map(Looks::Other)
    ])
}

fn anterior_eye() -> impl Strategy<Value = AnteriorEye> {
    let angle = prop_oneof![
        (0.0..160.0).prop_map(Angle::LimbalPercent),
        (0_u8..6).prop_map(Angle::VanHerick),
        (0_u8..6).prop_map(Angle::Shaffer),
        select(vec![Angle::TorchDeep, Angle::TorchShallow]),
    ];
    let parts = (looks(), looks(), looks(), looks(), looks());
    (parts, finding(angle)).prop_map(|((lids, conjunctiva, cornea, chamber, iris), angle)| {
        AnteriorEye {
            lids,
            conjunctiva,
            cornea,
            chamber,
            iris,
            angle,
        }
    })
}

pub fn anterior() -> impl Strategy<Value = Section> {
    (WORDS, eyes(anterior_eye))
        .prop_map(|(looked_with, eyes)| Anterior { looked_with, eyes }.into_section())
}

fn posterior_eye() -> impl Strategy<Value = PosteriorEye> {
    let viewed = select(vec![
        Viewed::Direct,
        Viewed::SlitLamp,
        Viewed::HeadWorn,
        Viewed::Camera,
    ]);
    let view = select(vec![View::Clear, View::Hazy, View::Poor, View::None]);
    let size = select(vec![DiscSize::Small, DiscSize::Medium, DiscSize::Large]);
    (
        (option::of(viewed), any::<bool>(), finding(view)),
        (finding(0.0..1.2), option::of(size)),
        (looks(), looks(), looks(), looks()),
    )
        .prop_map(
            |((viewed, dilated, view), (cup_to_disc, disc_size), parts)| {
                let (disc, macula, vessels, periphery) = parts;
                PosteriorEye {
                    viewed,
                    dilated,
                    view,
                    cup_to_disc,
                    disc_size,
                    disc,
                    macula,
                    vessels,
                    periphery,
                }
            },
        )
}

pub fn posterior() -> impl Strategy<Value = Section> {
    eyes(posterior_eye).prop_map(|eyes| Posterior { eyes }.into_section())
}

fn quadrants() -> impl Strategy<Value = Finding<Quadrants>> {
    let one = || select(vec![Quadrant::Full, Quadrant::Reduced, Quadrant::Missing]);
    finding((one(), one(), one(), one()).prop_map(
        |(upper_temporal, upper_nasal, lower_temporal, lower_nasal)| Quadrants {
            upper_temporal,
            upper_nasal,
            lower_temporal,
            lower_nasal,
        },
    ))
}

fn grid() -> impl Strategy<Value = Finding<Grid>> {
    let parts = (
        any::<bool>(),
        any::<bool>(),
        option::of(any::<bool>()),
        WORDS,
    );
    finding(parts.prop_map(|(bent, missing, known, place)| Grid {
        bent,
        missing,
        known,
        place,
    }))
}

pub fn fields() -> impl Strategy<Value = Section> {
    (WORDS, eyes(quadrants), eyes(grid), WORDS).prop_map(|(how, quadrants, grid, note)| {
        Fields {
            how,
            quadrants,
            grid,
            note,
        }
        .into_section()
    })
}

pub fn sketches() -> impl Strategy<Value = Section> {
    let outline = select(vec![
        Outline::Front,
        Outline::Lens,
        Outline::Back,
        Outline::Disc,
        Outline::Field,
        Outline::Face,
    ]);
    let stroke = vec(any::<(u16, u16, u8)>().prop_map(Point::from), 0..5)
        .prop_map(|points| Stroke { points });
    let sketch = (outline, option::of(eye()), vec(stroke, 0..4), WORDS).prop_map(
        |(outline, eye, strokes, caption)| Sketch {
            outline,
            eye,
            strokes,
            caption,
        },
    );
    vec(sketch, 0..3).prop_map(|drawn| Sketches { drawn }.into_section())
}
