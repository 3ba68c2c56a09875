//! Whom to go to next: on top, and larger than the rest.

use super::row::{Whom, row};
use super::visits::Marks;
use crate::pages::rounds::Action;
use crate::shell::app;
use ::words::app::round as say;
use leptos::prelude::*;
use record::{PersonId, RoundId};

/// Whom to go to next, with everything in reach of one thumb.
#[component]
pub fn Next(round: RoundId) -> impl IntoView {
    let story = app().door.story();
    let next = Memo::new(move |_| {
        story.with(|story| {
            let known = story.round(&round)?;
            (!known.details().called_off)
                .then(|| story.next_on(known))
                .flatten()
        })
    });
    move || next.get().map(|person| view! { <NextCard round person/> })
}

#[component]
fn NextCard(round: RoundId, person: PersonId) -> impl IntoView {
    let row = row(round, person);
    let exam = Memo::new(move |_| row.with(|row| row.as_ref().and_then(|row| row.exam)));
    view! {
        <section class="sheet next-card" id=format!("next-{round}") data-part="next" aria-label=say::next()>
            <div class="next-who">
                <Whom person row before=say::next()/>
                {move || view! { <Action person exam=exam.get()/> }}
            </div>
            <Marks round person key=format!("next-{round}")/>
        </section>
    }
    .into_any()
}
