//! Worn glasses: each pair, what its lenses measure, and its state.

use super::super::fields::{
    Asked, Measure, Part, Slate, adding, all_words, always, asks, at, card, cards, eyes,
    found_lens, lens, missing, optional, perhaps, pressed, prism, row, several, take_pair_out,
    told, ways, words,
};
use super::usual;
use leptos::prelude::*;
use optics::limits;
use record::{Eye, Finding, UsedFor, WornGlasses, WornLens, WornPair};

const ADDITION: Measure = Measure::new(limits::ADD, 0.25, 2.0, 2).signed();
const CENTRES: Measure = Measure::new(limits::CENTRE_DISTANCE_MM, 1.0, 62.0, 0);

/// The section's fields.
pub fn worn_glasses(slate: Slate) -> AnyView {
    let all = Part::<WornGlasses>::whole(slate);
    let pairs = at!(all, pairs);
    let list = pairs.done();
    let (each, length) = (list.clone(), list.shown(Vec::len));
    several(vec![
        asks(vec![add_pair(&pairs)]),
        cards(length, move |place| pair(&each, place)),
    ])
}

fn add_pair(part: &Part<Finding<Vec<WornPair>>>) -> AnyView {
    let asked = part.asked("pairs", "glasses that the person has", |pairs| {
        let each: Vec<String> = pairs.iter().map(WornPair::heading).collect();
        each.join("; ")
    });
    let adds = part.clone();
    let add = move |place: usize| {
        adds.push(WornPair {
            used_for: UsedFor::ALL[place],
            ..WornPair::default()
        });
    };
    let control = view! {
        <div class="asked-ways">
            {pressed("no-glasses".into(), "none", part.none())}
            {missing(&asked, "not seen \u{2026}")}
        </div>
        {adding("add-pair", "add a pair for", all_words::<UsedFor>(), add)}
    };
    row(&asked, control.into_any())
}

fn pair(list: &Part<Vec<WornPair>>, place: usize) -> AnyView {
    let one = list.item(place);
    let id = move |name: &str| format!("{name}-{place}");
    let slate = one.slate;
    let each = eyes(slate, |eye| {
        worn_lens(&at!(one, lenses).eye(eye), place, eye)
    });
    let holds = view! {
        {always(&at!(one, used_for), id("used-for"), "used for")}
        {always(&at!(one, form), id("form"), "made as")}
        {perhaps(&at!(one, measured), id("measured"), "measured")}
        {each}
        {optional(&at!(one, centres_mm), id("centres"), "between the centres", CENTRES)}
        {words(&at!(one, lens_state), id("lens-state"), "the lenses are", usual::LENS_STATE)}
        {words(&at!(one, frame_state), id("frame-state"), "the frame is", usual::FRAME_STATE)}
        {told(&at!(one, name_on_it), id("name-on-it"), "name on it", usual::NAME_ON_IT)}
        {words(&at!(one, worn), id("worn"), "worn", usual::WORN)}
    };
    let heading = one.shown(WornPair::heading);
    let list = list.clone();
    let remove = move || take_pair_out(&list, place);
    card(id("pair"), heading, remove, holds.into_any())
}

fn worn_lens(part: &Part<Finding<WornLens>>, place: usize, eye: Eye) -> AnyView {
    let id = move |name: &str| format!("{name}-{place}-{}", eye.word());
    let asked = part.asked(id("worn-missing"), "lens", move |worn: &WornLens| {
        worn.in_words(eye)
    });
    let spot = found_lens(
        part,
        |worn| worn.lens,
        |worn, lens| WornLens {
            lens,
            add_d: worn.as_ref().and_then(|worn| worn.add_d),
            prism: worn.and_then(|worn| worn.prism),
        },
    );
    let done = part.done();
    let there = done.shown(|_| true);
    let turned = at!(done, prism).spot(|prism| *prism, |prism, new| *prism = new);
    let add = at!(done, add_d);
    view! {
        {lens(part.slate, ("worn", place, eye), spot, Signal::stored(None))}
        <Show when=move || there.get()>
            {optional(&add, id("worn-add"), "addition", ADDITION)}
            {prism(&Asked::new(id("worn-prism"), "prism at the pupil"), eye, turned)}
        </Show>
        {row(&asked, ways(missing(&asked, "not measured \u{2026}").into_iter().collect()))}
    }
    .into_any()
}
