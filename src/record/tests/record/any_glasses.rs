//! Any of the sections about glasses and both eyes together; their numbers lie in and out of range.

use optics::SphereCyl;
use optics::prism::Prism;
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;
use record::{
    Binocular, ClearBetween, Cover, Deviation, Eyes, Fitted, Fitting, HowMeasured, LensForm,
    MadeLens, Magnified, Motility, Near, Order, OrderedLens, OrderedPair, Part, PrintRead,
    PrintSize, ReadTo, Recovery, Section, Tolerance, Turn, UsedFor, WornGlasses, WornLens,
    WornPair,
};

use crate::any::{eyes, finding, lens};
use crate::any_other::{WORDS, date, eye, prism};

fn used_for() -> impl Strategy<Value = (UsedFor, LensForm)> {
    (select(&UsedFor::ALL[..]), select(&LensForm::ALL[..]))
}

pub fn worn_glasses() -> impl Strategy<Value = Section> {
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

pub fn near() -> impl Strategy<Value = Section> {
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

pub fn binocular() -> impl Strategy<Value = Section> {
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

pub fn order() -> impl Strategy<Value = Section> {
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

pub fn fitting() -> impl Strategy<Value = Section> {
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
