//! Fields: each quadrant by confrontation, and the middle on a grid.

use super::super::fields::{
    Part, Slate, asks, at, choice, eyes, known, several, then_words, toggle, words,
};
use super::usual;
use leptos::prelude::*;
use record::{Eye, Fields, Finding, Grid, OneOf, Quadrant, Quadrants};

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
        {asks(vec![words(&at!(all, how), "fields-how", "tested otherwise than by confrontation", usual::FIELDS_HOW), words(&at!(all, note), "fields-note", "note", &[])])}
        <p class="caution">"Confrontation finds only coarse loss, and a grid seen whole excludes nothing."</p>
    }
    .into_any()
}

/// The four squares lie as the person sees them; a tap goes from full to reduced to missing.
fn quadrants(part: &Part<Finding<Quadrants>>, eye: Eye) -> AnyView {
    let id = format!("quadrants-{}", eye.word());
    let asked = part.asked(id.clone(), "quadrants, as seen", Quadrants::in_words);
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
        quadrant(&at!(all, upper_temporal), &id, "up, temple side"),
        quadrant(&at!(all, upper_nasal), &id, "up, nose side"),
    ];
    let lower = [
        quadrant(&at!(all, lower_temporal), &id, "down, temple side"),
        quadrant(&at!(all, lower_nasal), &id, "down, nose side"),
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
        {choice(&asked, vec!["all full".to_owned()], full)}
        <div class="quadrants" class:hidden=move || !there.get()>{seen(upper)}{seen(lower)}</div>
    }
    .into_any()
}

fn quadrant(part: &Part<Quadrant>, id: &str, name: &'static str) -> AnyView {
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
    let next = move |_| spot.put.run(spot.value.get_untracked() + 1);
    let id = format!("{id}-{}", name.replace(", ", "-").replace(' ', "-"));
    view! {
        <button type="button" class="quadrant" id=id data-seen=word on:click=next>
            <small>{name}</small><b>{word}</b>
        </button>
    }
    .into_any()
}

fn grid(part: &Part<Finding<Grid>>, eye: Eye) -> AnyView {
    let id = format!("grid-{}", eye.word());
    let asked = part.asked(id.clone(), "grid", Grid::in_words);
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
    let ways = ["whole and straight", "bent or missing"].map(str::to_owned);
    view! {
        {choice(&asked, ways.into(), whole)}
        <Show when=move || there.get()>
            <div class="asked-ways">
                {toggle(&at!(amiss, bent), format!("{id}-bent"), "lines bent")}
                {toggle(&at!(amiss, missing), format!("{id}-missing"), "part missing")}
            </div>
            {known(&at!(amiss, known), known_id.clone(), "was it there before?", ["new", "known before"])}
        </Show>
        {then_words(&place, place_id, "where on the grid?")}
    }
    .into_any()
}
