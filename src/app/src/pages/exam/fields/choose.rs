//! Fields that are one of a few, yes or no.

use super::part::{Part, Spot};
use super::row::{Asked, row};
use ::words::app::exam_fields as say;
use leptos::prelude::*;
use record::{Finding, Looks, OneOf};
use widgets::{Choice, ChoiceLook, Label, Pick, TextField};

/// One of these words by its place; the chosen one tapped again clears it. The last square asks why it is missing, where
/// that can be said.
pub fn choice(asked: &Asked, labels: Vec<Label>, spot: Spot<Option<usize>>) -> AnyView {
    let missing = labels.len();
    let mut picks: Vec<_> = labels.into_iter().enumerate().collect();
    let slate_why = asked.why.clone();
    if slate_why.is_some() {
        picks.push((missing, Label::of(say::not_done)));
    }
    let why = slate_why.clone();
    let shown = Signal::derive(move || {
        let not = why
            .as_ref()
            .is_some_and(|why| why.spot.value.get().is_some());
        if not { Some(missing) } else { spot.value.get() }
    });
    let pick = move |place: usize| match &slate_why {
        Some(why) if place == missing => why.ask(),
        _ if spot.value.get_untracked() == Some(place) => spot.put.run(None),
        _ => spot.put.run(Some(place)),
    };
    let picks = picks
        .into_iter()
        .map(|(place, label)| {
            let pick = Pick::labelled(place, label);
            // The style sheet knows it by this name.
            if place == missing {
                pick.slug("not-done")
            } else {
                pick
            }
        })
        .collect();
    let control = view! {
        <Choice id=asked.id.clone() label=asked.label.clone() unseen_label=true look=ChoiceLook::Squares picks=picks value=shown on_change=pick/>
    };
    row(asked, control.into_any())
}

/// The words of every answer.
pub fn all_words<T: OneOf>() -> Vec<String> {
    let all = T::all().into_iter();
    all.map(|one| one.in_words().to_owned()).collect()
}

/// The labels of every answer.
pub fn all_labels<T: OneOf>() -> Vec<Label> {
    let all = T::all().into_iter();
    all.map(|one| Label::of(|| one.in_words())).collect()
}

fn place<T: OneOf>(one: &T) -> Option<usize> {
    T::all().iter().position(|other| other == one)
}

fn at<T: OneOf>(place: Option<usize>) -> Option<T> {
    T::all().into_iter().nth(place?)
}

/// A finding that is one of a few.
pub fn found<T: OneOf>(
    part: &Part<Finding<T>>,
    id: impl Into<String>,
    label: &'static str,
) -> AnyView {
    let asked = part.asked(id, label, |one| one.in_words().to_owned());
    let spot = part.spot(
        |found| found.done().and_then(place),
        |found, place| *found = at(place).map_or(Finding::Blank, Finding::Done),
    );
    choice(&asked, all_labels::<T>(), spot)
}

/// One of a few, or nothing.
pub fn perhaps<T: OneOf>(
    part: &Part<Option<T>>,
    id: impl Into<String>,
    label: &'static str,
) -> AnyView {
    let before = part.before(|one| one.as_ref().map(|one| one.in_words().to_owned()));
    let spot = part.spot(
        |one| one.as_ref().and_then(place),
        |one, place| *one = at(place),
    );
    choice(
        &Asked::new(id, label).before(before),
        all_labels::<T>(),
        spot,
    )
}

/// One of a few, always.
pub fn always<T: OneOf>(part: &Part<T>, id: impl Into<String>, label: &'static str) -> AnyView {
    let spot = part.spot(place, |one, place| {
        if let Some(other) = at(place) {
            *one = other;
        }
    });
    choice(&Asked::new(id, label), all_labels::<T>(), spot)
}

/// How a part looks: normal, or in words.
pub fn looks(part: &Part<Finding<Looks>>, id: String, label: &'static str) -> AnyView {
    let asked = part.asked(id.clone(), label, Looks::in_words);
    let spot = part.spot(
        |found| {
            found
                .done()
                .map(|looks| usize::from(*looks != Looks::Normal))
        },
        |found, place| {
            *found = match place {
                None => Finding::Blank,
                Some(0) => Finding::Done(Looks::Normal),
                Some(_) => Finding::Done(Looks::Other(String::new())),
            }
        },
    );
    let other = part.done().some(
        |looks| match looks {
            Looks::Other(words) => Some(words),
            Looks::Normal => None,
        },
        |looks| match looks {
            Looks::Other(words) => Some(words),
            Looks::Normal => None,
        },
    );
    let picks = [say::normal, say::otherwise].map(Label::of);
    view! {
        {choice(&asked, picks.into(), spot)}
        {then_words(&other, format!("{id}-words"), say::how_does_look())}
    }
    .into_any()
}

/// Words that are asked for only while there is a place for them.
pub fn then_words(part: &Part<String>, id: String, label: &'static str) -> AnyView {
    let there = part.shown(|_| true);
    let spot = part.spot(Clone::clone, |words, new| *words = new);
    view! {
        <Show when=move || there.get()>
            <TextField id=id.clone() label=label value=spot.value on_change=spot.put/>
        </Show>
    }
    .into_any()
}

/// Yes or no, in one tap.
pub fn toggle(part: &Part<bool>, id: impl Into<String>, label: &'static str) -> AnyView {
    let spot = part.spot(|on| *on, |on, new| *on = new);
    pressed(id.into(), label, spot)
}

/// The button of it.
pub fn pressed(id: String, label: &'static str, spot: Spot<bool>) -> AnyView {
    view! {
        <button type="button" class="pill toggle" id=id aria-pressed=move || spot.value.get().to_string()
            on:click=move |_| spot.put.run(!spot.value.get_untracked())>{label}</button>
    }
    .into_any()
}

/// Yes, no, or nobody knows.
pub fn known(
    part: &Part<Option<bool>>,
    id: impl Into<String>,
    label: &'static str,
    answers: [fn() -> &'static str; 2],
) -> AnyView {
    let spot = part.spot(
        |known| known.map(usize::from),
        |known, place| *known = place.map(|place| place == 1),
    );
    let before = part.before(move |known| Some(answers[usize::from((*known)?)]().to_owned()));
    let asked = Asked::new(id, label).before(before);
    choice(&asked, answers.map(Label::of).into(), spot)
}
