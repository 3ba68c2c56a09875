//! Putting a person down, and changing what is known of them.

mod groups;
mod rows;
mod typed;

use crate::edge::clock::today;
use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::person_form as say;
use groups::{Beside, Names};
use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use leptos_router::NavigateOptions;
use leptos_router::hooks::{use_navigate, use_params_map};
use record::{Heads, PersonDetails, PersonId};
use typed::Typed;

/// What was refused: which field, and why.
pub type Refused = RwSignal<Vec<(String, String)>>;

/// Somebody new.
#[component]
pub fn NewPersonPage() -> impl IntoView {
    view! {
        <TopBar title=say::new_person()><a class="pill" href="/">{say::rounds()}</a></TopBar>
        <main class="page"><PersonForm person=None known=PersonDetails::default()/></main>
    }
}

/// Somebody on record.
#[component]
pub fn DetailsPage() -> impl IntoView {
    let story = app().door.story();
    let params = use_params_map();
    let person = Memo::new(move |_| params.with(|params| words::person_id(&params.get("person")?)));
    // What is on record when the page opens is what is changed: it does not change under the fingers.
    let known = Memo::new(move |_| {
        story.with_untracked(|story| {
            let known = story.person(&person.get()?)?;
            let several = matches!(known.versions(), Heads::Several(_));
            Some((known.id(), known.details().clone(), several))
        })
    });
    let name = Signal::derive(move || {
        let name = known.get().map(|(_, details, _)| details.name.to_string());
        name.unwrap_or_else(|| say::nobody_address().into())
    });
    let back = Signal::derive(move || person.get().map(|person| words::person_path(&person)));
    view! {
        <TopBar title=name beside=say::what_known() leads_to=back><a class="pill" href="/">{say::rounds()}</a></TopBar>
        <main class="page">
            {move || known.get().map(|(person, known, several)| view! {
                {several.then(|| view! { <p class="caution" id="two-versions">{say::two_versions()}</p> })}
                <PersonForm person=Some(person) known/>
            })}
        </main>
    }
}

#[component]
fn PersonForm(person: Option<PersonId>, known: PersonDetails) -> impl IntoView {
    let door = app().door;
    let navigate = use_navigate();
    let typed = StoredValue::new(Typed::of(known));
    let refused: Refused = RwSignal::new(Vec::new());
    // A second tap while the first is being kept must not put the person down twice.
    let keeping = RwSignal::new(false);
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        if keeping.get_untracked() {
            return;
        }
        let details = match typed.with_value(Typed::read) {
            Ok(details) => details,
            Err(found) => return refused.set(vec![found]),
        };
        let found = details.check(today()).into_iter();
        let found: Vec<_> = found.map(|error| (error.field, error.sentence)).collect();
        if !found.is_empty() {
            return refused.set(found);
        }
        let navigate = navigate.clone();
        keeping.set(true);
        leptos::task::spawn_local(async move {
            let kept = match person {
                Some(person) => door.change_person(person, details).await.map(|()| person),
                None => door.add_person(details).await,
            };
            match kept {
                Ok(person) => navigate(&words::person_path(&person), NavigateOptions::default()),
                Err(sentence) => {
                    refused.set(vec![("all".into(), sentence)]);
                    keeping.set(false);
                }
            }
        });
    };
    view! {
        <form class="sheet form" id="person-form" on:submit=submit>
            <Names typed refused/>
            <Beside typed refused/>
            <p class="field-error" role="alert" id="person-said">{move || said(refused, "all").or_else(|| refused.with(|all| all.first().map(|(_, sentence)| sentence.clone())))}</p>
            <button class="act" type="submit" id="keep-person">{say::keep()}</button>
        </form>
    }
    .into_any()
}

/// What was refused of one field.
fn said(refused: Refused, field: &str) -> Option<String> {
    refused.with(|all| {
        let found = all.iter().find(|(name, _)| name == field);
        found.map(|(_, sentence)| sentence.clone())
    })
}
