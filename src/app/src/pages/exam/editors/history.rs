//! History: why the person is seen, what they or others tell.

use super::super::fields::{
    Measure, Part, Slate, asks, at, card, cards, missing, number, perhaps, pressed, row, several,
    told, words,
};
use ::words::app::exam_editors as say;
use leptos::prelude::*;
use optics::limits::{Limit, Unit};
use record::{Complaint, Eye, Finding, History, Symptom, Usual};
use widgets::{Choice, Pick, TextField};

/// As many falls as a stepper reaches; the record takes more.
const FALLS: Measure = Measure::new(
    Limit {
        what: say::falls_twelve_months,
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
                say::seen_because(),
                Usual::SeenBecause,
            ),
            words(
                &at!(all, cannot_travel),
                "cannot-travel",
                say::cant_travel_because(),
                Usual::CannotTravel,
            ),
            words(&at!(all, told_by), "told-by", say::told(), Usual::ToldBy),
        ]),
        complaints(&at!(all, complaints)),
        asks(vec![
            words(
                &at!(all, eyes_before),
                "eyes-before",
                say::eyes_before_operations_diseases_injuries(),
                Usual::EyesBefore,
            ),
            words(&at!(all, health), "health", say::health(), Usual::Health),
            words(
                &at!(all, medicines),
                "medicines",
                say::medicines_drops_among_them(),
                Usual::Medicines,
            ),
            told(
                &at!(all, allergies),
                "allergies",
                say::allergies(),
                Usual::Allergies,
            ),
            words(
                &at!(all, family),
                "family",
                say::eye_diseases_family(),
                Usual::Family,
            ),
            falls(&at!(all, falls_in_12_months)),
            perhaps(&at!(all, mobility), "mobility", say::gets_about()),
            words(&at!(all, uses), "uses", say::uses_eyes(), Usual::Uses),
        ]),
    ])
}

fn falls(part: &Part<Finding<u16>>) -> AnyView {
    let asked = part.asked("falls", say::falls_twelve_months(), u16::to_string);
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
    let asked = part.asked("complaints", say::complaints(), |all| {
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
            {pressed("no-complaint".into(), say::none_though_asked(), part.none())}
            {symptoms.collect_view()}
            {missing(&asked, say::not_asked())}
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
        Pick::new(None, say::both_neither).slug("both"),
        Pick::new(Some(Eye::Right), say::right_eye),
        Pick::new(Some(Eye::Left), say::left_eye),
    ];
    let holds = view! {
        <Choice id=format!("complaint-eye-{place}") label=say::which_eye() unseen_label=true picks=picks value=eye.value on_change=move |picked| eye.put.run(Some(picked))/>
        <TextField id=format!("complaint-words-{place}") label=say::since_when_how() value=said.value on_change=said.put/>
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
