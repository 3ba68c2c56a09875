//! Binocular: how the eyes work together.

use super::super::fields::{
    Asked, Measure, Part, Slate, adding, all_words, asks, at, card, cards, choice, eyes, optional,
    perhaps, prism, several, then_words, toggle, ways, words,
};
use ::words::app::exam_editors as say;
use leptos::prelude::*;
use optics::limits;
use optics::prism::Prism;
use record::{Binocular, Cover, Deviation, Eye, Eyes, Finding, Motility, OneOf, Turn, Usual};
use widgets::{Choice, Label, Pick};

const SIZE: Measure = Measure::new(limits::PRISM, 1.0, 2.0, 1);

/// The section's fields.
pub fn binocular(slate: Slate) -> AnyView {
    let all = Part::<Binocular>::whole(slate);
    several(vec![
        cover(&at!(all, cover_far), "cover-far", say::cover_test_far()),
        cover(&at!(all, cover_near), "cover-near", say::cover_test_near()),
        asks(vec![motility(&at!(all, motility))]),
        prisms(&at!(all, disparity), "disparity", say::prism_aligns_marks()),
        prisms(&at!(all, prism), "helping", say::prism_found_help()),
        asks(vec![words(
            &at!(all, note),
            "binocular-note",
            say::double_vision_head_posture_anything(),
            Usual::Binocular,
        )]),
    ])
}

fn cover(part: &Part<Finding<Cover>>, id: &'static str, label: &'static str) -> AnyView {
    let asked = part.asked(id, label, Cover::in_words);
    let moves = part.spot(
        |found| {
            found
                .done()
                .filter(|cover| cover.deviations.is_empty())
                .map(|_| 0)
        },
        |found, place| {
            let cover = || Cover {
                with_glasses: found.done().is_some_and(|cover| cover.with_glasses),
                ..Cover::default()
            };
            *found = place.map_or(Finding::Blank, |_| Finding::Done(cover()));
        },
    );
    let (cover, there) = (part.done(), part.done().shown(|_| true));
    let list = at!(cover, deviations);
    let (each, length) = (list.clone(), list.shown(Vec::len));
    let add_to = part.clone();
    let add = move |place: usize| {
        if let Some(turn) = Turn::all().into_iter().nth(place) {
            add_to.change(|found| deviate(found, turn));
        }
    };
    let glasses = at!(cover, with_glasses);
    view! {
        <section class="sheet asks">
            {choice(&asked, vec![Label::of(say::no_movement)], moves)}
            {adding(id, say::moves(), all_words::<Turn>(), add)}
            <Show when=move || there.get()>{ways(vec![toggle(&glasses, format!("{id}-glasses"), say::glasses())])}</Show>
            {cards(length, move |place| deviation(&each, id, place))}
        </section>
    }
    .into_any()
}

fn deviate(found: &mut Finding<Cover>, turn: Turn) {
    let deviation = Deviation {
        turn,
        manifest: None,
        prism_pd: None,
        recovery: None,
    };
    found.fill(Cover::default());
    if found.done().is_none() {
        *found = Finding::Done(Cover::default());
    }
    if let Some(cover) = found.done_mut() {
        cover.deviations.push(deviation);
    }
}

fn deviation(list: &Part<Vec<Deviation>>, name: &str, place: usize) -> AnyView {
    let one = list.item(place);
    let id = move |part: &str| format!("{name}-{part}-{place}");
    let manifest = at!(one, manifest).spot(|eye| Some(*eye), |eye, new| *eye = new.flatten());
    let picks = vec![
        Pick::new(None, say::latent),
        Pick::new(Some(Eye::Right), say::right_eye_turns),
        Pick::new(Some(Eye::Left), say::left_eye_turns),
    ];
    let holds = view! {
        <Choice id=id("manifest") label=say::seen_without_covering() unseen_label=true picks=picks value=manifest.value
            on_change=move |eye| manifest.put.run(Some(eye))/>
        {optional(&at!(one, prism_pd), id("size"), say::how_far(), SIZE)}
        {perhaps(&at!(one, recovery), id("recovery"), say::recovery())}
    };
    let heading = one.shown(|one| one.turn.in_words().to_owned());
    let list = list.clone();
    card(
        id("turn"),
        heading,
        move || list.remove(place),
        holds.into_any(),
    )
}

fn motility(part: &Part<Finding<Motility>>) -> AnyView {
    let asked = part.asked("motility", say::eyes_follow(), Motility::in_words);
    let spot = part.spot(
        |found| {
            found
                .done()
                .map(|follow| usize::from(*follow != Motility::Full))
        },
        |found, place| {
            *found = match place {
                None => Finding::Blank,
                Some(0) => Finding::Done(Motility::Full),
                Some(_) => Finding::Done(Motility::Limited(String::new())),
            }
        },
    );
    let limited = part.done().some(
        |follow| match follow {
            Motility::Limited(words) => Some(words),
            Motility::Full => None,
        },
        |follow| match follow {
            Motility::Limited(words) => Some(words),
            Motility::Full => None,
        },
    );
    let ways = [say::everywhere, say::not_everywhere].map(Label::of);
    several(vec![
        choice(&asked, ways.into(), spot),
        then_words(
            &limited,
            "motility-words".into(),
            say::where_do_they_not_follow(),
        ),
    ])
}

fn prisms(part: &Part<Finding<Eyes<Prism>>>, id: &'static str, label: &'static str) -> AnyView {
    let asked = part.asked(id, label, |eyes: &Eyes<Prism>| {
        let [right, left] = [Eye::Right, Eye::Left].map(|eye| eyes.of(eye).written(eye));
        format!("R {right}, L {left}")
    });
    let spot = part.spot(
        |found| found.done().map(|_| 0),
        |found, place| {
            let none = Eyes {
                right: Prism::NONE,
                left: Prism::NONE,
            };
            *found = place.map_or(Finding::Blank, |_| Finding::Done(none));
        },
    );
    let done = part.done();
    let (there, slate) = (done.shown(|_| true), part.slate);
    view! {
        {asks(vec![choice(&asked, vec![Label::of(say::tried)], spot)])}
        <Show when=move || there.get()>
            {eyes(slate, |eye| {
                let one = done.eye(eye).spot(|prism| Some(*prism), |prism, new| *prism = new.unwrap_or(Prism::NONE));
                prism(&Asked::new(format!("{id}-{}", eye.word()), label), eye, one)
            })}
        </Show>
    }
    .into_any()
}
