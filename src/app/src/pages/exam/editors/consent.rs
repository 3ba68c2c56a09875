//! Capacity and consent: whether the person can decide about this, and who agreed.

use super::super::fields::{Part, Slate, asks, at, choice, then_words, toggle, words};
use super::usual;
use leptos::prelude::*;
use record::{Agreed, Assessed, Capacity, Consent, Finding};
use widgets::TextField;

/// The section's fields.
pub fn consent(slate: Slate) -> AnyView {
    let all = Part::<Consent>::whole(slate);
    view! {
        {asks(vec![capacity(&at!(all, capacity)), agreed(&at!(all, agreed))])}
        {asks(vec![words(&at!(all, asked_for_by), "asked-for-by", "who asked for the visit", usual::ASKED_FOR_BY), words(&at!(all, identified_by), "identified-by", "how it was made sure who this is", usual::IDENTIFIED_BY), words(&at!(all, present), "present", "who was in the room", usual::PRESENT), words(&at!(all, communication), "communication", "what helps to follow", usual::COMMUNICATION), words(&at!(all, declined), "declined", "what was declined or broken off", usual::DECLINED), words(&at!(all, note), "consent-note", "note", &[])])}
        <p class="caution">"Capacity is presumed, and is about this decision at this time. Local law governs; a relative can\u{2019}t consent for an adult without legal power."</p>
    }
    .into_any()
}

fn capacity(part: &Part<Finding<Capacity>>) -> AnyView {
    let asked = part.asked(
        "capacity",
        "can the person decide about this?",
        Capacity::in_words,
    );
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
    let ways = ["yes, presumed", "doubted, so assessed"].map(str::to_owned);
    view! {
        {choice(&asked, ways.into(), spot)}
        <Show when=move || there.get()>
            <div class="asked-ways">
                {toggle(&at!(assessed, understands), "understands", "understands it")}
                {toggle(&at!(assessed, retains), "retains", "keeps it in mind")}
                {toggle(&at!(assessed, weighs), "weighs", "weighs it")}
                {toggle(&at!(assessed, communicates), "communicates", "tells the choice")}
            </div>
        </Show>
        {then_words(&how, "assessed-how".into(), "how was that found out?")}
    }
    .into_any()
}

fn agreed(part: &Part<Finding<Agreed>>) -> AnyView {
    let asked = part.asked("agreed", "who agreed, and how?", Agreed::in_words);
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
    let ways = Agreed::all().map(|way| way.way().to_owned());
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
