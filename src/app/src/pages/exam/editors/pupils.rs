//! Pupils and media.

use super::super::fields::{
    Asked, Measure, Part, Slate, all_labels, asks, at, choice, eyes, found, measured, number,
    perhaps, several, words,
};
use ::words::app::exam_editors as say;
use leptos::prelude::*;
use optics::limits;
use record::{Amount, Finding, Grade, LensState, OneOf, Opacity, Pupils, Usual};
use widgets::{Disclosure, Label};

const WIDTH: Measure = Measure::new(limits::PUPIL_MM, 0.5, 3.0, 1);

/// The section's fields.
pub fn pupils(slate: Slate) -> AnyView {
    let all = Part::<Pupils>::whole(slate);
    let each = eyes(slate, |eye| {
        let one = at!(all, eyes).eye(eye);
        let id = |name: &str| format!("{name}-{}", eye.word());
        several(vec![
            measured(&at!(one, light_mm), id("light"), say::light(), WIDTH),
            measured(&at!(one, dark_mm), id("dark"), say::dark(), WIDTH),
            found(&at!(one, direct), id("direct"), say::direct()),
            found(&at!(one, consensual), id("consensual"), say::consensual()),
            found(&at!(one, near), id("near"), say::near()),
            lens(&at!(one, lens), &id("lens")),
            words(
                &at!(one, note),
                id("pupil-note"),
                say::shape_anything_else_way(),
                Usual::Pupil,
            ),
        ])
    });
    several(vec![
        each,
        asks(vec![found(
            &at!(all, afferent),
            "afferent",
            say::relative_afferent_defect(),
        )]),
    ])
}

fn lens(part: &Part<Finding<LensState>>, id: &str) -> AnyView {
    let asked = part.asked(id, say::lens(), LensState::in_words);
    let spot = part.spot(
        |found| {
            found.done().map(|lens| match lens {
                LensState::Own(_) => 0,
                LensState::Implant { .. } => 1,
                LensState::None => 2,
            })
        },
        |found, place| {
            *found = match place {
                None => Finding::Blank,
                Some(0) => Finding::Done(LensState::Own(Opacity::default())),
                Some(1) => Finding::Done(LensState::Implant { capsule: None }),
                Some(_) => Finding::Done(LensState::None),
            }
        },
    );
    let own = part.done().some(
        |lens| match lens {
            LensState::Own(own) => Some(own),
            _ => None,
        },
        |lens| match lens {
            LensState::Own(own) => Some(own),
            _ => None,
        },
    );
    let capsule = part.done().some(
        |lens| match lens {
            LensState::Implant { capsule } => Some(capsule),
            _ => None,
        },
        |lens| match lens {
            LensState::Implant { capsule } => Some(capsule),
            _ => None,
        },
    );
    let (is_own, is_implant) = (own.shown(|_| true), capsule.shown(|_| true));
    let states = [say::own, say::implant, say::no_lens].map(Label::of);
    let id = id.to_owned();
    let capsule_id = format!("{id}-capsule");
    view! {
        {choice(&asked, states.into(), spot)}
        <Show when=move || is_own.get()>
            {grade(&at!(own, nuclear), format!("{id}-nuclear"), say::nucleus(), limits::LOCS_NUCLEAR)}
            {grade(&at!(own, cortical), format!("{id}-cortical"), say::cortex(), limits::LOCS_OTHER)}
            {grade(&at!(own, posterior), format!("{id}-posterior"), say::back_lens(), limits::LOCS_OTHER)}
        </Show>
        <Show when=move || is_implant.get()>{perhaps(&capsule, capsule_id.clone(), say::capsule_behind())}</Show>
    }
    .into_any()
}

/// Plain words, or behind one tap a figure on the published scale.
fn grade(
    part: &Part<Option<Grade>>,
    id: String,
    label: &'static str,
    limit: limits::Limit,
) -> AnyView {
    let before = part.before(|grade| grade.as_ref().map(Grade::in_words));
    let plain = part.spot(
        |grade| match grade {
            Some(Grade::Plain(amount)) => Amount::all().iter().position(|one| one == amount),
            _ => None,
        },
        |grade, place| {
            let amount = place.and_then(|place| Amount::all().into_iter().nth(place));
            *grade = amount.map(Grade::Plain);
        },
    );
    let figure = part.spot(
        |grade| match grade {
            Some(Grade::LocsIii(figure)) => Some(*figure),
            _ => None,
        },
        |grade, figure| *grade = figure.map(Grade::LocsIii),
    );
    let scale = Measure::new(limit, 0.1, 2.0, 1);
    let figured = Asked::new(format!("{id}-locs"), say::against_photographs());
    view! {
        {choice(&Asked::new(id.clone(), label).before(before), all_labels::<Amount>(), plain)}
        <Disclosure id=format!("{id}-scale") summary=say::graded_locs_iii()>{number(&figured, scale, figure)}</Disclosure>
    }
    .into_any()
}
