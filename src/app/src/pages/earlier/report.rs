//! What came of a file that was taken.

use super::{ASIDE, Looking};
use crate::pages::table::{KeptAside, faults};
use crate::shell::app;
use crate::words;
use ::words::app::earlier as say;
use leptos::prelude::*;
use record::PersonId;
use record::earlier_list::Earlier;
use std::collections::BTreeSet;

/// What was taken, and what was kept aside.
#[derive(Clone)]
pub struct Taken {
    exams: usize,
    people: Vec<PersonId>,
    faults: Vec<String>,
    aside: String,
}

impl Taken {
    /// Of a file as it is looked at.
    pub fn of(rows: &[Earlier], looking: Looking) -> Self {
        let people: BTreeSet<PersonId> = rows.iter().map(|row| row.person).collect();
        Self {
            exams: rows.len(),
            people: people.into_iter().collect(),
            faults: looking.judged.with_untracked(|judged| faults(judged)),
            aside: looking.aside(),
        }
    }

    fn in_words(&self) -> String {
        say::taken_over(
            &say::findings_of_exams(self.exams),
            &say::of_people(self.people.len()),
            &say::rows_aside(self.faults.len()),
        )
    }
}

/// The report.
#[component]
pub fn Report(taken: Taken) -> impl IntoView {
    let said = taken.in_words();
    let Taken {
        people,
        faults,
        aside,
        ..
    } = taken;
    let links = app().door.story().with_untracked(|story| {
        let known = people.iter().filter_map(|person| story.person(person));
        let links = known.map(|person| {
            view! { <li><a class="pill" href=words::person_path(&person.id())>{words::name(person)}</a></li> }
        });
        links.collect_view()
    });
    view! {
        <section class="sheet" id="earlier-report">
            <h2>{say::taken()}</h2>
            <p role="status">{said}</p>
            <ul class="pills earlier-people">{links}</ul>
        </section>
        <KeptAside id="earlier-bad" faults=Signal::stored(faults) then=say::aside_after()
            name=ASIDE.to_owned() text=move |()| aside.clone()/>
    }
    .into_any()
}
