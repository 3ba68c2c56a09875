//! Fields that are words, with those at hand that are often written; days, and times of the day.

use super::part::{Part, Spot};
use super::row::{Asked, missing, row};
use crate::edge::clock;
use crate::shell::app;
use ::words::app::exam_fields as say;
use ::words::{Language, in_language};
use chrono::{NaiveDate, NaiveTime};
use leptos::prelude::*;
use record::{Finding, Phrase, Usual, holds_phrase, own_words, turned_phrase};
use widgets::{TextField, TextKind};

/// Words of the examiner.
pub fn words(
    part: &Part<String>,
    id: impl Into<String>,
    label: &'static str,
    usual: impl Into<Option<Usual>>,
) -> AnyView {
    let before = part.before(|words| Some(words.clone()).filter(|words| !words.trim().is_empty()));
    let spot = part.spot(Clone::clone, |words, new| *words = new);
    text(&Asked::new(id, label).before(before), usual.into(), spot)
}

/// A finding in words. The first of the usual ones is what "nothing" is called.
pub fn told(
    part: &Part<Finding<String>>,
    id: impl Into<String>,
    label: &'static str,
    usual: impl Into<Option<Usual>>,
) -> AnyView {
    let asked = part.asked(id, label, Clone::clone);
    let spot = part.spot(
        |found| found.done().cloned().unwrap_or_default(),
        |found, words| {
            *found = if words.is_empty() {
                Finding::Blank
            } else {
                Finding::Done(words)
            }
        },
    );
    text(&asked, usual.into(), spot)
}

/// The field of it. A phrase that is tapped is added, or taken out again; words of one's own can be kept at hand.
pub fn text(asked: &Asked, usual: Option<Usual>, spot: Spot<String>) -> AnyView {
    let Asked { id, label, .. } = asked.clone();
    let Spot { value, put } = spot;
    let control = view! {
        <div class="asked-ways">{usual.map(|field| at_hand(&id, field, value, put))}{missing(asked, say::not_done_2())}</div>
        <TextField id=id.clone() label=label value=value on_change=put/>
        {usual.map(|field| teach(&id, field, value))}
    };
    row(asked, control.into_any())
}

fn phrases(field: Usual) -> Memo<Vec<Phrase>> {
    let story = app().door.story();
    Memo::new(move |_| story.with(|story| story.settings().phrases(field)))
}

/// The phrases of a field.
fn at_hand(
    id: &str,
    field: Usual,
    value: Signal<String>,
    put: Callback<String>,
) -> impl IntoView + use<> {
    let (id, phrases) = (id.to_owned(), phrases(field));
    move || {
        let each = phrases.get().into_iter().enumerate();
        each.map(|(place, phrase)| one_phrase(format!("{id}-{place}"), phrase.words, value, put))
            .collect_view()
    }
}

fn one_phrase(id: String, phrase: String, value: Signal<String>, put: Callback<String>) -> AnyView {
    let (known, shown) = (phrase.clone(), phrase.clone());
    let there = move || value.with(|words| holds_phrase(words, &known));
    let turn = move |_| put.run(turned_phrase(&value.get_untracked(), &phrase));
    view! {
        <button type="button" class="pill toggle" id=id aria-pressed=move || there().to_string() on:click=turn>{shown}</button>
    }
    .into_any()
}

/// Below the field, where it pushes nothing away that is being tapped: keeps the writer's own words at hand.
fn teach(id: &str, field: Usual, value: Signal<String>) -> AnyView {
    let (door, phrases) = (app().door, phrases(field));
    let own = Memo::new(move |_| phrases.with(|known| value.with(|words| own_words(words, known))));
    let refused = RwSignal::new(None::<String>);
    let keep = move |_| {
        let words = own.get_untracked();
        leptos::task::spawn_local(async move {
            let taught = door.set(move |settings| {
                settings
                    .teach(field, &words)
                    .map_err(|error| error.to_string())
            });
            refused.set(taught.await.err());
        });
    };
    let button_id = format!("{id}-teach");
    view! {
        <Show when=move || own.with(|words| !words.is_empty())>
            <div class="teach">
                <button type="button" class="pill" id=button_id.clone() on:click=keep>{move || say::keep_at_hand(&own.get())}</button>
                <span class="field-error" role="status">{move || refused.get()}</span>
            </div>
        </Show>
    }
    .into_any()
}

/// A day; today in one tap.
pub fn day(part: &Part<Option<NaiveDate>>, id: &str, label: &'static str, today: bool) -> AnyView {
    let spot = part.spot(
        |day| day.map(|day| day.to_string()).unwrap_or_default(),
        |day, text| *day = text.parse().ok(),
    );
    let take = move || clock::today().to_string();
    moment(
        (id, label),
        TextKind::Date,
        spot,
        today.then_some((say::today, take)),
    )
}

/// A time of the day; now in one tap.
pub fn time(part: &Part<Option<NaiveTime>>, id: &str, label: &'static str) -> AnyView {
    let spot = part.spot(
        |time| time.map(written).unwrap_or_default(),
        |time, text| *time = read(&text),
    );
    moment(
        (id, label),
        TextKind::Time,
        spot,
        Some((say::now, || written(clock::now()))),
    )
}

/// "14:05".
pub fn written(time: NaiveTime) -> String {
    time.format("%H:%M").to_string()
}

/// Reads what a clock's field gives, with or without seconds.
pub fn read(text: &str) -> Option<NaiveTime> {
    NaiveTime::parse_from_str(text.get(..5)?, "%H:%M").ok()
}

/// What says a word, and the day or the time that it stands for.
pub type AtHand = (fn() -> &'static str, fn() -> String);

/// A day or a time, with the one that is at hand.
pub fn moment(
    (id, label): (&str, &'static str),
    kind: TextKind,
    spot: Spot<String>,
    at_hand: Option<AtHand>,
) -> AnyView {
    let tap = at_hand.map(|(word, take)| {
        let id = format!("{id}-{}", in_language(Language::English, word));
        view! { <button type="button" class="pill" id=id on:click=move |_| spot.put.run(take())>{word()}</button> }
    });
    view! {
        <div class="moment">
            <TextField id=id.to_owned() label=label kind=kind value=spot.value on_change=spot.put/>
            {tap}
        </div>
    }
    .into_any()
}
