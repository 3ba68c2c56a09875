//! Fields that are words, with those at hand that are often written; days, and times of the day.

use super::part::{Part, Spot};
use super::row::{Asked, missing, row};
use crate::edge::clock;
use chrono::{NaiveDate, NaiveTime};
use leptos::prelude::*;
use record::Finding;
use widgets::{TextField, TextKind};

/// Words of the examiner.
pub fn words(
    part: &Part<String>,
    id: impl Into<String>,
    label: &'static str,
    usual: &'static [&'static str],
) -> AnyView {
    let before = part.before(|words| Some(words.clone()).filter(|words| !words.trim().is_empty()));
    let spot = part.spot(Clone::clone, |words, new| *words = new);
    text(&Asked::new(id, label).before(before), usual, spot)
}

/// A finding in words. The first of the usual ones is what "nothing" is called.
pub fn told(
    part: &Part<Finding<String>>,
    id: impl Into<String>,
    label: &'static str,
    usual: &'static [&'static str],
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
    text(&asked, usual, spot)
}

/// The field of it. A phrase that is tapped is added, or taken out again.
pub fn text(asked: &Asked, usual: &'static [&'static str], spot: Spot<String>) -> AnyView {
    let Asked { id, label, .. } = asked.clone();
    let phrases = usual.iter().enumerate().map(|(place, phrase)| {
        let there = move || spot.value.with(|words| has(words, phrase));
        let turn = move |_| spot.put.run(turned(&spot.value.get_untracked(), phrase));
        view! {
            <button type="button" class="pill toggle" id=format!("{id}-{place}") aria-pressed=move || there().to_string() on:click=turn>{*phrase}</button>
        }
    });
    let control = view! {
        <div class="asked-ways">{phrases.collect_view()}{missing(asked, "not done \u{2026}")}</div>
        <TextField id=id.clone() label=label value=spot.value on_change=spot.put/>
    };
    row(asked, control.into_any())
}

const BETWEEN: &str = ", ";

fn has(words: &str, phrase: &str) -> bool {
    words.split(BETWEEN).any(|part| part.trim() == phrase)
}

fn turned(words: &str, phrase: &str) -> String {
    if words.trim().is_empty() {
        return phrase.to_owned();
    }
    if !has(words, phrase) {
        return format!("{}{BETWEEN}{phrase}", words.trim());
    }
    let others: Vec<&str> = words
        .split(BETWEEN)
        .filter(|part| part.trim() != phrase)
        .collect();
    others.join(BETWEEN)
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
        today.then_some(("today", take)),
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
        Some(("now", || written(clock::now()))),
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

/// A word, and the day or the time that it stands for.
pub type AtHand = (&'static str, fn() -> String);

/// A day or a time, with the one that is at hand.
pub fn moment(
    (id, label): (&str, &'static str),
    kind: TextKind,
    spot: Spot<String>,
    at_hand: Option<AtHand>,
) -> AnyView {
    let tap = at_hand.map(|(word, take)| {
        view! { <button type="button" class="pill" id=format!("{id}-{word}") on:click=move |_| spot.put.run(take())>{word}</button> }
    });
    view! {
        <div class="moment">
            <TextField id=id.to_owned() label=label kind=kind value=spot.value on_change=spot.put/>
            {tap}
        </div>
    }
    .into_any()
}
