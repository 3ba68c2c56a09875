//! Capacity and consent: whether the person can decide about this, and who agreed.

use super::super::fields::{Part, Slate, asks, at, choice, then_words, toggle, words};
use ::words::app::exam_editors as say;
use leptos::prelude::*;
use record::{Agreed, Assessed, Capacity, Consent, Finding, Usual};
use widgets::{Label, TextField};

/// The section's fields.
pub fn consent(slate: Slate) -> AnyView {
    let all = Part::<Consent>::whole(slate);
    view! {
        {asks(vec![capacity(&at!(all, capacity)), agreed(&at!(all, agreed))])}
        {asks(vec![words(&at!(all, asked_for_by), "asked-for-by", say::who_asked_visit(), Usual::AskedForBy), words(&at!(all, identified_by), "identified-by", say::how_made_sure_who(), Usual::IdentifiedBy), words(&at!(all, present), "present", say::who_room(), Usual::Present), words(&at!(all, communication), "communication", say::what_helps_follow(), Usual::Communication), words(&at!(all, declined), "declined", say::what_declined_broken_off(), Usual::Declined), words(&at!(all, note), "consent-note", say::note(), Usual::ConsentNote)])}
        <p class="caution">{say::capacity_presumed()}</p>
    }
    .into_any()
}

fn capacity(part: &Part<Finding<Capacity>>) -> AnyView {
    let asked = part.asked("capacity", say::can_decide(), Capacity::in_words);
    let spot = part.spot(
        |found| {
            found
                .done()
                .map(|capacity| usize::from(*capacity != Capacity::Presumed))
        },
        |found, place| {
            *found = match place {
                None => Finding::Blank,
                Some(0) => Finding::Done(Capacity::Presumed),
                Some(_) => Finding::Done(Capacity::Assessed(Assessed::default())),
            }
        },
    );
    let assessed = part.done().some(
        |capacity| match capacity {
            Capacity::Assessed(assessed) => Some(assessed),
            Capacity::Presumed => None,
        },
        |capacity| match capacity {
            Capacity::Assessed(assessed) => Some(assessed),
            Capacity::Presumed => None,
        },
    );
    let there = assessed.shown(|_| true);
    let how = at!(assessed, how);
    let ways = [say::yes_presumed, say::doubted_assessed].map(Label::of);
    view! {
        {choice(&asked, ways.into(), spot)}
        <Show when=move || there.get()>
            <div class="asked-ways">
                {toggle(&at!(assessed, understands), "understands", say::understands())}
                {toggle(&at!(assessed, retains), "retains", say::keeps_mind())}
                {toggle(&at!(assessed, weighs), "weighs", say::weighs())}
                {toggle(&at!(assessed, communicates), "communicates", say::tells_choice())}
            </div>
        </Show>
        {then_words(&how, "assessed-how".into(), say::how_found_out())}
    }
    .into_any()
}

fn agreed(part: &Part<Finding<Agreed>>) -> AnyView {
    let asked = part.asked("agreed", say::who_agreed_how(), Agreed::in_words);
    let spot = part.spot(
        |found| {
            let way = found.done()?.way();
            Agreed::all().iter().position(|other| other.way() == way)
        },
        |found, place| {
            let agreed = place.and_then(|place| Agreed::all().into_iter().nth(place));
            *found = agreed.map_or(Finding::Blank, Finding::Done);
        },
    );
    let ways = Agreed::all().map(|way| Label::of(|| way.way()));
    let asks = part.shown(|found| found.done().and_then(Agreed::asks));
    let said = part
        .done()
        .spot(|agreed| agreed.said().to_owned(), Agreed::say);
    view! {
        {choice(&asked, ways.into(), spot)}
        {move || asks.get().map(|asks| view! {
            <TextField id="agreed-said" label=asks value=said.value on_change=said.put/>
        })}
    }
    .into_any()
}
