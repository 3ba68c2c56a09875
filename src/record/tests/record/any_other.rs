//! Any of the sections beside acuity, refraction and decision; their numbers lie in and out of range.

use chrono::{NaiveDate, NaiveTime};
use optics::SphereCyl;
use optics::prism::Prism;
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;
use record::{
    Afferent, Agreed, Amount, Angle, Anterior, AnteriorEye, Assessed, Binocular, Capacity,
    ClearBetween, Complaint, Consent, Cover, Deviation, Device, DiscSize, Drops, Drug, Eye, Eyes,
    Fields, Finding, Fitted, Fitting, Given, Grade, Grid, History, HowMeasured, LensForm,
    LensState, Looks, MadeLens, Magnified, Mobility, Motility, Near, Opacity, Order, OrderedLens,
    OrderedPair, Outline, Part, Point, Posterior, PosteriorEye, Pressure, PrintRead, PrintSize,
    PupilEye, Pupils, Quadrant, Quadrants, Reaction, ReadTo, Readings, Recovery, Section, Sketch,
    Sketches, Stroke, Symptom, Taken, Tolerance, Turn, UsedFor, View, Viewed, WhichEyes,
    WornGlasses, WornLens, WornPair,
};

use crate::any::{eyes, finding, lens};

const WORDS: &str = ".{0,12}";

fn eye() -> impl Strategy<Value = Eye> {
    select(&Eye::BOTH[..])
}

fn prism() -> impl Strategy<Value = Prism> {
    (-60.0..60.0, -60.0..60.0).prop_map(|(h, v)| Prism::new(h, v).expect("finite"))
}

fn date() -> impl Strategy<Value = NaiveDate> {
    (0..20_000).prop_map(|days| NaiveDate::from_num_days_from_ce_opt(730_000 + days).expect("is"))
}

fn time() -> impl Strategy<Value = NaiveTime> {
    (0..86_400_u32)
        .prop_map(|second| NaiveTime::from_num_seconds_from_midnight_opt(second, 0).expect("is"))
}

fn history() -> impl Strategy<Value = Section> {
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

fn consent() -> impl Strategy<Value = Section> {
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

fn used_for() -> impl Strategy<Value = (UsedFor, LensForm)> {
    (select(&UsedFor::ALL[..]), select(&LensForm::ALL[..]))
}

fn worn_glasses() -> impl Strategy<Value = Section> {
    let worn = || {
        (lens(), option::of(0.0..25.0), option::of(prism()))
            .prop_map(|(lens, add_d, prism)| WornLens { lens, add_d, prism })
    };
    let how = select(vec![
        HowMeasured::Focimeter,
        HowMeasured::ByHand,
        HowMeasured::Copied,
    ]);
    let pair = (
        used_for(),
        option::of(how),
        (finding(worn()), finding(worn())),
        option::of(20.0..110.0),
        [WORDS; 3],
        finding(WORDS),
    )
        .prop_map(
            |((used_for, form), measured, (right, left), centres_mm, words, name_on_it)| {
                let [lens_state, frame_state, worn] = words;
                WornPair {
                    used_for,
                    form,
                    measured,
                    lenses: Eyes { right, left },
                    centres_mm,
                    lens_state,
                    frame_state,
                    name_on_it,
                    worn,
                }
            },
        );
    finding(vec(pair, 0..3)).prop_map(|pairs| WornGlasses { pairs }.into_section())
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

fn pupils() -> impl Strategy<Value = Section> {
    let afferent = prop_oneof![Just(Afferent::None), eye().prop_map(Afferent::In)];
    (eyes(pupil), finding(afferent))
        .prop_map(|(eyes, afferent)| Pupils { eyes, afferent }.into_section())
}

fn near() -> impl Strategy<Value = Section> {
    let size = prop_oneof![
        (0.5..250.0).prop_map(PrintSize::N),
        (0.05..30.0).prop_map(PrintSize::M),
    ];
    let read = (size, 1.0..120.0).prop_map(|(print, at_cm)| PrintRead { print, at_cm });
    let clear = (1.0..450.0, 1.0..450.0).prop_map(|(nearest_cm, farthest_cm)| ClearBetween {
        nearest_cm,
        farthest_cm,
    });
    let magnified = (0.5..120.0, WORDS).prop_map(|(times, by)| Magnified { times, by });
    (
        WORDS,
        finding(1.0..120.0),
        finding(0.0..30.0),
        (finding(0.0..25.0), finding(0.0..25.0)),
        (finding(clear), finding(read), finding(magnified)),
    )
        .prop_map(
            |(task, distance_cm, amplitude_d, (right, left), (clear, read, magnified))| {
                Near {
                    task,
                    distance_cm,
                    amplitude_d,
                    accepted_d: Eyes { right, left },
                    clear,
                    read,
                    magnified,
                }
                .into_section()
            },
        )
}

fn cover() -> impl Strategy<Value = Cover> {
    let turn = select(vec![
        Turn::Eso,
        Turn::Exo,
        Turn::RightHyper,
        Turn::LeftHyper,
    ]);
    let recovery = select(vec![Recovery::Quick, Recovery::Slow, Recovery::None]);
    let deviation = (
        turn,
        option::of(eye()),
        option::of(0.0..60.0),
        option::of(recovery),
    )
        .prop_map(|(turn, manifest, prism_pd, recovery)| Deviation {
            turn,
            manifest,
            prism_pd,
            recovery,
        });
    (any::<bool>(), vec(deviation, 0..3)).prop_map(|(with_glasses, deviations)| Cover {
        with_glasses,
        deviations,
    })
}

fn binocular() -> impl Strategy<Value = Section> {
    let motility = prop_oneof![Just(Motility::Full), WORDS.prop_map(Motility::Limited)];
    (
        finding(cover()),
        finding(cover()),
        finding(motility),
        finding(eyes(prism)),
        finding(eyes(prism)),
        WORDS,
    )
        .prop_map(
            |(cover_far, cover_near, motility, disparity, prism, note)| {
                Binocular {
                    cover_far,
                    cover_near,
                    motility,
                    disparity,
                    prism,
                    note,
                }
                .into_section()
            },
        )
}

fn readings() -> impl Strategy<Value = Finding<Readings>> {
    finding(vec(0.0..90.0, 0..5).prop_map(|mmhg| Readings { mmhg }))
}

fn pressure() -> impl Strategy<Value = Section> {
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

fn drops() -> impl Strategy<Value = Section> {
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

fn anterior() -> impl Strategy<Value = Section> {
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

fn posterior() -> impl Strategy<Value = Section> {
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

fn fields() -> impl Strategy<Value = Section> {
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

fn sketches() -> impl Strategy<Value = Section> {
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

fn order() -> impl Strategy<Value = Section> {
    let glass = || {
        let numbers = (
            option::of(0.0..25.0),
            option::of(10.0..60.0),
            option::of(0.0..60.0),
        );
        option::of((lens(), numbers, option::of(prism())).prop_map(
            |(lens, (add_d, centre_mm, height_mm), prism)| OrderedLens {
                lens,
                add_d,
                prism,
                centre_mm,
                height_mm,
            },
        ))
    };
    let pair = (
        used_for(),
        (glass(), glass()),
        option::of(0.0..30.0),
        [WORDS; 2],
        option::of(WORDS),
    )
        .prop_map(
            |((used_for, form), (right, left), vertex_mm, words, engraved)| {
                let [frame, lens_note] = words;
                OrderedPair {
                    used_for,
                    form,
                    lenses: Eyes { right, left },
                    vertex_mm,
                    frame,
                    lens_note,
                    engraved,
                }
            },
        );
    (vec(pair, 0..3), WORDS, option::of(date())).prop_map(|(pairs, made_by, sent_on)| {
        Order {
            pairs,
            made_by,
            sent_on,
        }
        .into_section()
    })
}

fn made(
    lens: SphereCyl,
    add_d: Option<f64>,
    prism: Option<Prism>,
    height: Option<f64>,
) -> MadeLens {
    MadeLens {
        lens,
        add_d,
        prism,
        height_mm: height,
    }
}

fn fitting() -> impl Strategy<Value = Section> {
    let glass = || {
        let parts = (
            lens(),
            option::of(0.0..25.0),
            option::of(prism()),
            option::of(0.0..60.0),
        );
        finding(parts.prop_map(|(lens, add, prism, height)| made(lens, add, prism, height)))
    };
    let read_to = select(vec![ReadTo::Eighth, ReadTo::Sixteenth, ReadTo::Hundredth]);
    let judged_by = select(vec![
        Tolerance::Iso21987,
        Tolerance::AnsiZ801,
        Tolerance::AnsiZ801Progressive,
    ]);
    let pair = (
        (any::<u16>(), read_to, judged_by, option::of(any::<bool>())),
        (option::of(date()), option::of(date())),
        (glass(), glass()),
        WORDS,
        finding(WORDS),
    )
        .prop_map(
            |((pair, read_to, judged_by, name), days, lenses, adjusted, reaction)| Fitted {
                pair,
                received_on: days.0,
                lenses: Eyes {
                    right: lenses.0,
                    left: lenses.1,
                },
                read_to,
                judged_by,
                name_on_it: name,
                fitted_on: days.1,
                adjusted,
                reaction,
            },
        );
    vec(pair, 0..3).prop_map(|pairs| Fitting { pairs }.into_section())
}

/// Any of them. Boxed one by one: together they would be too large for a test's stack.
pub fn other_section() -> impl Strategy<Value = Section> {
    prop_oneof![
        history().boxed(),
        consent().boxed(),
        worn_glasses().boxed(),
        pupils().boxed(),
        near().boxed(),
        binocular().boxed(),
        pressure().boxed(),
        drops().boxed(),
        anterior().boxed(),
        posterior().boxed(),
        fields().boxed(),
        sketches().boxed(),
        order().boxed(),
        fitting().boxed(),
    ]
}
