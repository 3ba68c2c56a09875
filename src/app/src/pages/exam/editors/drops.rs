//! Drops: what was given, from which bottle, when, and what was made sure of before.

use super::super::fields::{
    Measure, Part, Slate, adding, always, asks, at, card, cards, day, missing, optional, pressed,
    row, then_words, time, toggle, words,
};
use crate::edge::clock;
use ::words::app::exam_editors as say;
use leptos::prelude::*;
use optics::limits;
use record::{Drops, Drug, Finding, Given, Usual, WhichEyes};

const STRENGTH: Measure = Measure::new(limits::STRENGTH_PERCENT, 0.25, 0.5, 2);

/// The section's fields.
pub fn drops(slate: Slate) -> AnyView {
    let all = Part::<Drops>::whole(slate);
    let given = at!(all, given);
    let list = given.done();
    let (each, length) = (list.clone(), list.shown(Vec::len));
    view! {
        <section class="sheet asks">
            <div class="asked-ways">
                {toggle(&at!(all, allergies_asked), "allergies-asked", say::allergies_asked_before())}
                {toggle(&at!(all, angle_judged), "angle-judged", say::angle_judged_before())}
            </div>
            {give(&given)}
        </section>
        {cards(length, move |place| bottle(&each, place))}
        {asks(vec![words(&at!(all, told_person), "told-person", say::what_person_told(), Usual::ToldPerson), words(&at!(all, told_staff), "told-staff", say::what_staff_told(), Usual::ToldStaff), words(&at!(all, reaction), "reaction", say::how_eyes_bore(), Usual::Reaction)])}
        <p class="caution">{say::before_widening()}</p>
    }
    .into_any()
}

/// A button for each drug; "none" where it was thought of and left.
fn give(part: &Part<Finding<Vec<Given>>>) -> AnyView {
    let asked = part.asked("given", say::given(), |all| {
        let each: Vec<String> = all.iter().map(Given::in_words).collect();
        each.join("; ")
    });
    let drugs = Drug::all().into_iter().map(|drug| match drug.name() {
        "" => say::another().to_owned(),
        name => name.to_owned(),
    });
    let adds = part.clone();
    let add = move |place: usize| {
        if let Some(drug) = Drug::all().into_iter().nth(place) {
            adds.push(fresh(drug));
        }
    };
    let control = view! {
        <div class="asked-ways">
            {pressed("no-drops".into(), say::none(), part.none())}
            {missing(&asked, say::not_done())}
        </div>
        {adding("give", say::give_now(), drugs.collect(), add)}
    };
    row(&asked, control.into_any())
}

fn fresh(drug: Drug) -> Given {
    Given {
        drug,
        strength_percent: None,
        batch: String::new(),
        expires: None,
        at: Some(clock::now()),
        into: WhichEyes::Both,
        by: String::new(),
    }
}

fn bottle(list: &Part<Vec<Given>>, place: usize) -> AnyView {
    let one = list.item(place);
    let id = move |name: &str| format!("{name}-{place}");
    let name = at!(one, drug).some(
        |drug| match drug {
            Drug::Other(name) => Some(name),
            _ => None,
        },
        |drug| match drug {
            Drug::Other(name) => Some(name),
            _ => None,
        },
    );
    let holds = view! {
        {then_words(&name, id("drug"), say::which_drug())}
        {always(&at!(one, into), id("into"), say::into())}
        {optional(&at!(one, strength_percent), id("strength"), say::strength(), STRENGTH)}
        <div class="two">
            {words(&at!(one, batch), id("batch"), say::batch_number(), None::<Usual>)}
            {day(&at!(one, expires), &id("expires"), say::use_word(), false)}
            {time(&at!(one, at), &id("given-at"), say::when())}
            {words(&at!(one, by), id("given-by"), say::whom_if_not_you(), Usual::GivenBy)}
        </div>
    };
    let heading = one.shown(Given::in_words);
    let list = list.clone();
    card(
        id("bottle"),
        heading,
        move || list.remove(place),
        holds.into_any(),
    )
}
