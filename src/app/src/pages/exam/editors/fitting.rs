//! The glasses that came: measured against what was ordered, fitted, and how they were taken.

use super::super::fields::{
    Asked, Measure, Part, Slate, adding, always, at, card, cards, day, eyes, found_lens, known,
    lens, missing, optional, prism, row, take_pair_out, told, words,
};
use crate::edge::clock;
use crate::shell::app;
use crate::words::number;
use ::words::app::exam_editors as say;
use leptos::prelude::*;
use optics::limits;
use record::{
    Eye, Finding, Fitted, Fitting, MadeLens, Order, OrderedPair, Section, SectionKind, Usual,
};

const ADDITION: Measure = Measure::new(limits::ADD, 0.25, 2.0, 2).signed();
const HEIGHT: Measure = Measure::new(limits::SEGMENT_MM, 0.5, 18.0, 1);

/// The section's fields.
pub fn fitting(slate: Slate) -> AnyView {
    let all = Part::<Fitting>::whole(slate);
    let list = at!(all, pairs);
    let (each, length) = (list.clone(), list.shown(Vec::len));
    let order = ordered(slate);
    let came = move || {
        let list = list.clone();
        let add = move |place: usize| {
            list.change(|pairs| {
                pairs.push(Fitted {
                    pair: u16::try_from(place).unwrap_or_default(),
                    received_on: Some(clock::today()),
                    ..Fitted::default()
                });
            });
        };
        let pairs: Vec<String> =
            order.with(|order| order.pairs.iter().map(OrderedPair::heading).collect());
        if pairs.is_empty() {
            return view! { <p class="soft">{say::nothing_ordered_exam()}</p> }.into_any();
        }
        adding("came", say::pair_came_today(), pairs, add)
    };
    view! {
        <section class="sheet asks">{came}</section>
        {cards(length, move |place| pair(&each, place, order, all.clone()))}
    }
    .into_any()
}

/// The order as it stands, drafted or kept.
fn ordered(slate: Slate) -> Memo<Order> {
    let (door, exam) = (app().door, slate.halves.exam);
    Memo::new(move |_| {
        let drafted = door
            .draft(exam, SectionKind::Order)
            .map(|draft| draft.section);
        let section = drafted.or_else(|| {
            door.story().with(|story| {
                let latest = story.exam(&exam)?.section(SectionKind::Order).latest();
                latest.map(|latest| latest.value.clone())
            })
        });
        match section {
            Some(Section::Order(order)) => order,
            _ => Order::default(),
        }
    })
}

fn pair(list: &Part<Vec<Fitted>>, place: usize, order: Memo<Order>, all: Part<Fitting>) -> AnyView {
    let one = list.item(place);
    let id = move |name: &str| format!("{name}-{place}");
    let slate = one.slate;
    let each = eyes(slate, |eye| {
        made_lens(
            &at!(one, lenses).eye(eye),
            place,
            eye,
            order,
            one.shown(|one| one.pair),
        )
    });
    let holds = view! {
        {day(&at!(one, received_on), &id("received"), say::came(), true)}
        {always(&at!(one, read_to), id("read-to"), say::focimeter_reads())}
        {each}
        {always(&at!(one, judged_by), id("judged-by"), say::judged())}
        {judged(all, place, order)}
        {known(&at!(one, name_on_it), id("name-there"), say::name(), [say::no, say::yes])}
        {day(&at!(one, fitted_on), &id("fitted"), say::fitted(), true)}
        {words(&at!(one, adjusted), id("adjusted"), say::adjusted(), Usual::Adjusted)}
        {told(&at!(one, reaction), id("taken"), say::how_taken(), Usual::Taken)}
    };
    let heading = one.shown(Fitted::heading);
    let list = list.clone();
    let remove = move || take_pair_out(&list, place);
    card(id("fitted-pair"), heading, remove, holds.into_any())
}

/// What the comparison says, and each thing that is not well within.
fn judged(all: Part<Fitting>, place: usize, order: Memo<Order>) -> AnyView {
    let report = Memo::new(move |_| {
        order
            .with(|order| all.ask(|all| all.report(place, order)))
            .flatten()
    });
    view! {
        {move || report.get().map(|report| {
            let verdicts = report.verdicts.iter().map(optics::tolerance::Verdict::sentence);
            let left_out = report.unjudged.iter().map(optics::tolerance::Unjudged::sentence);
            let lines: Vec<String> = verdicts.chain(left_out).collect();
            view! {
                <div class="judged" role="status">
                    <p class="hand">{number(&report.sentence())}</p>
                    <ul class="signatures">{lines.into_iter().map(|line| view! { <li>{number(&line)}</li> }).collect_view()}</ul>
                </div>
            }
        })}
    }
    .into_any()
}

fn made_lens(
    part: &Part<Finding<MadeLens>>,
    place: usize,
    eye: Eye,
    order: Memo<Order>,
    pair: Signal<u16>,
) -> AnyView {
    let id = move |name: &str| format!("{name}-{place}-{}", eye.word());
    let asked = part.asked(id("made-missing"), say::lens(), move |made: &MadeLens| {
        made.in_words(eye)
    });
    let spot = found_lens(
        part,
        |made| made.lens,
        |made, lens| MadeLens {
            lens,
            ..made.unwrap_or(MadeLens {
                lens,
                add_d: None,
                prism: None,
                height_mm: None,
            })
        },
    );
    let wanted = Signal::derive(move || {
        order.with(|order| {
            let pair = order.pairs.get(usize::from(pair.get()))?;
            (*pair.lenses.of(eye)).map(|ordered| ordered.in_words(eye))
        })
    });
    let done = part.done();
    let there = done.shown(|_| true);
    let turned = at!(done, prism).spot(|prism| *prism, |prism, new| *prism = new);
    view! {
        {move || wanted.get().map(|wanted| view! { <p class="last-line"><span>{say::ordered()}</span><b>{wanted}</b></p> })}
        {lens(part.slate, ("made", place, eye), spot, Signal::stored(None))}
        <Show when=move || there.get()>
            {optional(&at!(done, add_d), id("made-add"), say::addition(), ADDITION)}
            {prism(&Asked::new(id("made-prism"), say::prism()), eye, turned)}
            {optional(&at!(done, height_mm), id("made-height"), say::height(), HEIGHT)}
        </Show>
        {row(&asked, view! {
            <div class="asked-ways">{missing(&asked, say::not_measured())}</div>
        }.into_any())}
    }
    .into_any()
}
