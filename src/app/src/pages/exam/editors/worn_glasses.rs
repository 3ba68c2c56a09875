//! Worn glasses: each pair, what its lenses measure, and its state.

use super::super::fields::{
    Asked, Measure, Part, Slate, adding, all_words, always, asks, at, card, cards, eyes,
    found_lens, lens, missing, optional, perhaps, pressed, prism, row, several, take_pair_out,
    told, ways, words,
};
use super::jotted::jotted;
use ::words::app::exam_editors as say;
use leptos::prelude::*;
use optics::limits;
use record::{Eye, Finding, Jotted, UsedFor, Usual, WornGlasses, WornLens, WornPair};

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
    let asked = part.asked("pairs", say::glasses_person(), |pairs| {
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
    let reads = part.clone();
    let read = move |jotted: Jotted| reads.push(WornPair::jotted(&jotted));
    let control = view! {
        <div class="asked-ways">
            {pressed("no-glasses".into(), say::none(), part.none())}
            {missing(&asked, say::not_seen())}
        </div>
        {adding("add-pair", say::add_pair(), all_words::<UsedFor>(), add)}
        {jotted(read)}
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
        {always(&at!(one, used_for), id("used-for"), say::used())}
        {always(&at!(one, form), id("form"), say::made_2())}
        {perhaps(&at!(one, measured), id("measured"), say::measured())}
        {each}
        {optional(&at!(one, centres_mm), id("centres"), say::between_centres(), CENTRES)}
        {words(&at!(one, lens_state), id("lens-state"), say::lenses(), Usual::LensState)}
        {words(&at!(one, frame_state), id("frame-state"), say::frame(), Usual::FrameState)}
        {told(&at!(one, name_on_it), id("name-on-it"), say::name_2(), Usual::NameOnIt)}
        {words(&at!(one, worn), id("worn"), say::worn(), Usual::Worn)}
    };
    let heading = one.shown(WornPair::heading);
    let list = list.clone();
    let remove = move || take_pair_out(&list, place);
    card(id("pair"), heading, remove, holds.into_any())
}

fn worn_lens(part: &Part<Finding<WornLens>>, place: usize, eye: Eye) -> AnyView {
    let id = move |name: &str| format!("{name}-{place}-{}", eye.word());
    let asked = part.asked(id("worn-missing"), say::lens(), move |worn: &WornLens| {
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
            {optional(&add, id("worn-add"), say::addition(), ADDITION)}
            {prism(&Asked::new(id("worn-prism"), say::prism_pupil()), eye, turned)}
        </Show>
        {row(&asked, ways(missing(&asked, say::not_measured()).into_iter().collect()))}
    }
    .into_any()
}
