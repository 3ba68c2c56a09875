//! The glasses that are to be made.

use super::super::fields::{
    Asked, Measure, Part, Slate, Spot, adding, all_words, always, asks, at, card, cards, day, eyes,
    lens, optional, prism, several, take_pair_out, ways, words,
};
use crate::shell::app;
use ::words::app::exam_editors as say;
use leptos::prelude::*;
use optics::{SphereCyl, limits};
use record::{ExamId, Eye, Order, OrderedLens, OrderedPair, UsedFor, Usual};
use widgets::TextField;

const ADDITION: Measure = Measure::new(limits::ADD, 0.25, 2.0, 2).signed();
const CENTRE: Measure = Measure::new(limits::HALF_DISTANCE_MM, 0.5, 31.0, 1);
const HEIGHT: Measure = Measure::new(limits::SEGMENT_MM, 0.5, 18.0, 1);
const VERTEX: Measure = Measure::new(limits::VERTEX_MM, 1.0, 12.0, 0);

/// The section's fields.
pub fn order(slate: Slate) -> AnyView {
    let all = Part::<Order>::whole(slate);
    let list = at!(all, pairs);
    let (each, length) = (list.clone(), list.shown(Vec::len));
    let exam = slate.halves.exam;
    let add = move |place: usize| {
        let pair = ordered(exam, UsedFor::ALL[place]);
        list.change(|pairs| pairs.push(pair));
    };
    several(vec![
        asks(vec![adding(
            "order-pair",
            say::order_pair_lenses_exam(),
            all_words::<UsedFor>(),
            add,
        )]),
        cards(length, move |place| pair(&each, place, exam)),
        asks(vec![
            words(&at!(all, made_by), "made-by", say::made(), Usual::MadeBy),
            day(&at!(all, sent_on), "sent-on", say::sent(), true),
        ]),
    ])
}

/// A pair with the lenses of this exam, as the record makes it.
fn ordered(exam: ExamId, used_for: UsedFor) -> OrderedPair {
    app().door.story().with_untracked(|story| {
        story
            .exam(&exam)
            .map(|exam| exam.pair_to_order(used_for))
            .unwrap_or_default()
    })
}

fn pair(list: &Part<Vec<OrderedPair>>, place: usize, exam: ExamId) -> AnyView {
    let one = list.item(place);
    let id = move |name: &str| format!("{name}-{place}");
    let slate = one.slate;
    let each = eyes(slate, |eye| {
        ordered_lens(&at!(one, lenses).eye(eye), place, eye)
    });
    let holds = view! {
        {always(&at!(one, used_for), id("order-for"), say::for_word())}
        {always(&at!(one, form), id("order-form"), say::made_2())}
        {each}
        {optional(&at!(one, vertex_mm), id("order-vertex"), say::vertex_distance_frame(), VERTEX)}
        {words(&at!(one, frame), id("frame"), say::frame_size_colour(), None::<Usual>)}
        {words(&at!(one, lens_note), id("lens-note"), say::material_tint_coating(), Usual::LensNote)}
        {engraved(&at!(one, engraved), id("engraved"), exam)}
    };
    let heading = one.shown(OrderedPair::heading);
    let list = list.clone();
    let remove = move || take_pair_out(&list, place);
    card(id("ordered"), heading, remove, holds.into_any())
}

/// The person's own name in one tap.
fn engraved(part: &Part<Option<String>>, id: String, exam: ExamId) -> AnyView {
    let name = app().door.story().with_untracked(|story| {
        let person = story.person(&story.exam(&exam)?.person())?;
        Some(person.details().name.to_string())
    });
    let on = part.spot(Option::is_some, move |engraved, on| {
        *engraved = on.then(|| name.clone().unwrap_or_default());
    });
    let text = part.spot(
        |engraved| engraved.clone().unwrap_or_default(),
        |engraved, name| *engraved = Some(name),
    );
    view! {
        {ways(vec![super::super::fields::pressed(id.clone(), say::engrave_name(), on)])}
        <Show when=move || on.value.get()>
            <TextField id=format!("{id}-name") label=say::which_name() value=text.value on_change=text.put/>
        </Show>
    }
    .into_any()
}

fn ordered_lens(part: &Part<Option<OrderedLens>>, place: usize, eye: Eye) -> AnyView {
    let id = move |name: &str| format!("{name}-{place}-{}", eye.word());
    let beside = StoredValue::new(None::<OrderedLens>);
    let spot: Spot<Option<SphereCyl>> = part.spot(
        |ordered| ordered.map(|ordered| ordered.lens),
        move |ordered, lens| {
            if ordered.is_some() {
                beside.set_value(*ordered);
            }
            *ordered = lens.map(|lens| OrderedLens {
                lens,
                ..beside.get_value().unwrap_or(OrderedLens::new(lens))
            });
        },
    );
    let lens_there = part.some(Option::as_ref, Option::as_mut);
    let there = lens_there.shown(|_| true);
    let turned = at!(lens_there, prism).spot(|prism| *prism, |prism, new| *prism = new);
    view! {
        {lens(part.slate, ("order", place, eye), spot, Signal::stored(None))}
        <Show when=move || there.get()>
            {optional(&at!(lens_there, add_d), id("order-add"), say::addition(), ADDITION)}
            {prism(&Asked::new(id("order-prism"), say::prism()), eye, turned)}
            {optional(&at!(lens_there, centre_mm), id("order-centre"), say::bridge_centre(), CENTRE)}
            {optional(&at!(lens_there, height_mm), id("order-height"), say::height(), HEIGHT)}
        </Show>
    }
    .into_any()
}
