//! History: why the person is seen, what they or others tell.

use super::super::fields::{
    Measure, Part, Slate, asks, at, card, cards, missing, number, perhaps, pressed, row, several,
    told, words,
};
use super::usual;
use leptos::prelude::*;
use optics::limits::{Limit, Unit};
use record::{Complaint, Eye, Finding, History, Symptom};
use widgets::{Choice, Pick, TextField};

/// As many falls as a stepper reaches; the record takes more.
const FALLS: Measure = Measure::new(
    Limit {
        what: "falls in twelve months",
        unit: Unit::Number,
        low: 0.0,
        high: 1000.0,
    },
    1.0,
    0.0,
    0,
);

/// The section's fields.
pub fn history(slate: Slate) -> AnyView {
    let all = Part::<History>::whole(slate);
    several(vec![
        asks(vec![
            words(
                &at!(all, reason),
                "reason",
                "seen because",
                usual::SEEN_BECAUSE,
            ),
            words(
                &at!(all, cannot_travel),
                "cannot-travel",
                "can\u{2019}t travel because",
                usual::CANNOT_TRAVEL,
            ),
            words(&at!(all, told_by), "told-by", "told by", usual::TOLD_BY),
        ]),
        complaints(&at!(all, complaints)),
        asks(vec![
            words(
                &at!(all, eyes_before),
                "eyes-before",
                "eyes before: operations, diseases, injuries",
                usual::EYES_BEFORE,
            ),
            words(&at!(all, health), "health", "health", usual::HEALTH),
            words(
                &at!(all, medicines),
                "medicines",
                "medicines, drops among them",
                usual::MEDICINES,
            ),
            told(
                &at!(all, allergies),
                "allergies",
                "allergies",
                usual::ALLERGIES,
            ),
            words(
                &at!(all, family),
                "family",
                "eye diseases in the family",
                usual::FAMILY,
            ),
            falls(&at!(all, falls_in_12_months)),
            perhaps(&at!(all, mobility), "mobility", "gets about"),
            words(&at!(all, uses), "uses", "uses the eyes for", usual::USES),
        ]),
    ])
}

fn falls(part: &Part<Finding<u16>>) -> AnyView {
    let asked = part.asked("falls", "falls in twelve months", u16::to_string);
    let spot = part.spot(
        |found| found.done().map(|falls| f64::from(*falls)),
        |found, falls| {
            *found = falls.map_or(Finding::Blank, |falls| Finding::Done(falls as u16));
        },
    );
    number(&asked, FALLS, spot)
}

/// A square for each symptom, and a card for each that was told.
fn complaints(part: &Part<Finding<Vec<Complaint>>>) -> AnyView {
    let list = part.done();
    let asked = part.asked("complaints", "complaints", |all| {
        Complaint::all_in_words(all)
    });
    let symptoms = Symptom::ALL.iter().enumerate().map(|(place, symptom)| {
        let (told, part) = (list.clone(), part.clone());
        let there = list.shown(|all| all.iter().map(|one| one.what).collect::<Vec<_>>());
        let turn = move |_| match untrack(|| {
            told.ask(|all| all.iter().position(|one| one.what == *symptom))
        }) {
            Some(Some(at)) => told.remove(at),
            _ => part.push(told_of(*symptom)),
        };
        view! {
            <button type="button" class="pill toggle" id=format!("complaint-{place}") aria-pressed=move || there.get().contains(symptom).to_string()
                on:click=turn>{symptom.words()}</button>
        }
    });
    let control = view! {
        <div class="asked-ways">
            {pressed("no-complaint".into(), "none, though asked", part.none())}
            {symptoms.collect_view()}
            {missing(&asked, "not asked \u{2026}")}
        </div>
    };
    let (each, length) = (list.clone(), list.shown(Vec::len));
    several(vec![
        asks(vec![row(&asked, control.into_any())]),
        cards(length, move |place| complaint(&each, place)),
    ])
}

fn told_of(what: Symptom) -> Complaint {
    Complaint {
        what,
        eye: None,
        words: String::new(),
    }
}

fn complaint(list: &Part<Vec<Complaint>>, place: usize) -> AnyView {
    let one = list.item(place);
    let eye = at!(one, eye).spot(|eye| Some(*eye), |eye, new| *eye = new.flatten());
    let said = at!(one, words).spot(Clone::clone, |words, new| *words = new);
    let picks = vec![
        Pick::new(None, "both, or neither").slug("both"),
        Pick::new(Some(Eye::Right), "right eye"),
        Pick::new(Some(Eye::Left), "left eye"),
    ];
    let holds = view! {
        <Choice id=format!("complaint-eye-{place}") label="which eye" unseen_label=true picks=picks value=eye.value on_change=move |picked| eye.put.run(Some(picked))/>
        <TextField id=format!("complaint-words-{place}") label="since when, and how" value=said.value on_change=said.put/>
    };
    let list = list.clone();
    let heading = one.shown(|one| one.what.words().to_owned());
    card(
        format!("complained-{place}"),
        heading,
        move || list.remove(place),
        holds.into_any(),
    )
}
