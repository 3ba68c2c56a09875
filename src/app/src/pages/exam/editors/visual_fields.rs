//! Fields: each quadrant by confrontation, and the middle on a grid.

use super::super::fields::{
    Part, Slate, asks, at, choice, eyes, known, several, then_words, toggle, words,
};
use ::words::{Language, app::exam_editors as say, in_language};
use leptos::prelude::*;
use record::{Eye, Fields, Finding, Grid, OneOf, Quadrant, Quadrants, Usual};
use widgets::Label;

/// The section's fields.
pub fn fields(slate: Slate) -> AnyView {
    let all = Part::<Fields>::whole(slate);
    let each = eyes(slate, |eye| {
        several(vec![
            quadrants(&at!(all, quadrants).eye(eye), eye),
            grid(&at!(all, grid).eye(eye), eye),
        ])
    });
    view! {
        {each}
        {asks(vec![words(&at!(all, how), "fields-how", say::tested_otherwise_than_confrontation(), Usual::FieldsHow), words(&at!(all, note), "fields-note", say::note(), Usual::FieldsNote)])}
        <p class="caution">{say::confrontation_coarse()}</p>
    }
    .into_any()
}

/// The four squares lie as the person sees them; a tap goes from full to reduced to missing.
fn quadrants(part: &Part<Finding<Quadrants>>, eye: Eye) -> AnyView {
    let id = format!("quadrants-{}", eye.word());
    let asked = part.asked(id.clone(), say::quadrants_seen(), Quadrants::in_words);
    let full = part.spot(
        |found| (*found == Finding::Done(Quadrants::FULL)).then_some(0),
        |found, place| {
            *found = match place {
                None => Finding::Blank,
                Some(_) => Finding::Done(Quadrants::FULL),
            }
        },
    );
    let all = part.done();
    let upper = [
        quadrant(&at!(all, upper_temporal), &id, say::up_temple_side),
        quadrant(&at!(all, upper_nasal), &id, say::up_nose_side),
    ];
    let lower = [
        quadrant(&at!(all, lower_temporal), &id, say::down_temple_side),
        quadrant(&at!(all, lower_nasal), &id, say::down_nose_side),
    ];
    // The temple lies on the right of what a right eye sees.
    let seen = |mut pair: [AnyView; 2]| {
        if eye == Eye::Right {
            pair.reverse();
        }
        pair.into_iter().collect_view()
    };
    let there = all.shown(|_| true);
    view! {
        {choice(&asked, vec![Label::of(say::all_full)], full)}
        <div class="quadrants" class:hidden=move || !there.get()>{seen(upper)}{seen(lower)}</div>
    }
    .into_any()
}

fn quadrant(part: &Part<Quadrant>, id: &str, name: fn() -> &'static str) -> AnyView {
    let spot = part.spot(
        |seen| {
            Quadrant::all()
                .iter()
                .position(|one| one == seen)
                .unwrap_or_default()
        },
        |seen, place| {
            let all = Quadrant::all();
            *seen = all[place % all.len()];
        },
    );
    let word = move || Quadrant::all()[spot.value.get()].in_words();
    let seen = move || in_language(Language::English, word);
    let next = move |_| spot.put.run(spot.value.get_untracked() + 1);
    let plain = in_language(Language::English, name);
    let id = format!("{id}-{}", plain.replace(", ", "-").replace(' ', "-"));
    view! {
        <button type="button" class="quadrant" id=id data-seen=seen on:click=next>
            <small>{name()}</small><b>{word}</b>
        </button>
    }
    .into_any()
}

fn grid(part: &Part<Finding<Grid>>, eye: Eye) -> AnyView {
    let id = format!("grid-{}", eye.word());
    let asked = part.asked(id.clone(), say::grid(), Grid::in_words);
    let whole = part.spot(
        |found| found.done().map(|grid| usize::from(!grid.is_whole())),
        |found, place| {
            *found = match place {
                None => Finding::Blank,
                Some(0) => Finding::Done(Grid::default()),
                Some(_) => Finding::Done(Grid {
                    bent: true,
                    ..Grid::default()
                }),
            }
        },
    );
    let all = part.done();
    let amiss = all.some(
        |grid| (!grid.is_whole()).then_some(grid),
        |grid| (!grid.is_whole()).then_some(grid),
    );
    let there = amiss.shown(|_| true);
    let place = at!(amiss, place);
    let (known_id, place_id) = (format!("{id}-known"), format!("{id}-place"));
    let ways = [say::whole_straight, say::bent_missing].map(Label::of);
    view! {
        {choice(&asked, ways.into(), whole)}
        <Show when=move || there.get()>
            <div class="asked-ways">
                {toggle(&at!(amiss, bent), format!("{id}-bent"), say::lines_bent())}
                {toggle(&at!(amiss, missing), format!("{id}-missing"), say::part_missing())}
            </div>
            {known(&at!(amiss, known), known_id.clone(), say::there_before(), [say::new, say::known_before])}
        </Show>
        {then_words(&place, place_id, say::where_grid())}
    }
    .into_any()
}
