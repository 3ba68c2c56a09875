//! Putting a person down.

use crate::edge::clock::today;
use crate::shell::{TopBar, app};
use crate::words;
use chrono::{Datelike, NaiveDate};
use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use leptos_router::hooks::use_navigate;
use record::{Born, Name, PersonDetails};
use widgets::{TextField, TextKind};

/// The fields as typed.
#[derive(Clone, Copy)]
struct Typed {
    given: RwSignal<String>,
    family: RwSignal<String>,
    born: RwSignal<String>,
    age: RwSignal<String>,
    place: RwSignal<String>,
    room: RwSignal<String>,
    note: RwSignal<String>,
}

impl Typed {
    fn new() -> Self {
        let blank = || RwSignal::new(String::new());
        Self {
            given: blank(),
            family: blank(),
            born: blank(),
            age: blank(),
            place: blank(),
            room: blank(),
            note: blank(),
        }
    }

    /// The details, or the field that can't be read and why.
    fn read(self) -> Result<PersonDetails, (&'static str, String)> {
        let text = |field: RwSignal<String>| field.get_untracked().trim().to_owned();
        Ok(PersonDetails {
            name: Name {
                given: text(self.given),
                family: text(self.family),
            },
            born: self.born()?,
            place: text(self.place),
            room: text(self.room),
            identifier: None,
            note: text(self.note),
        })
    }

    fn born(self) -> Result<Option<Born>, (&'static str, String)> {
        let (date, age) = (self.born.get_untracked(), self.age.get_untracked());
        if !date.trim().is_empty() {
            let date = NaiveDate::parse_from_str(date.trim(), "%Y-%m-%d");
            return date.map(|date| Some(Born::Date(date))).map_err(|_| {
                (
                    "born",
                    "that is no date of birth: day, month and year".into(),
                )
            });
        }
        if age.trim().is_empty() {
            return Ok(None);
        }
        let years = age.trim().parse().map_err(|_| {
            (
                "born",
                format!("\u{201c}{}\u{201d} is no age in whole years", age.trim()),
            )
        })?;
        Ok(Some(Born::Stated {
            years,
            in_year: today().year(),
        }))
    }
}

/// The page.
#[component]
pub fn NewPersonPage() -> impl IntoView {
    let door = app().door;
    let navigate = use_navigate();
    let typed = Typed::new();
    let refused = RwSignal::new(Vec::<(String, String)>::new());
    // A second tap while the first is being kept must not put the person down twice.
    let keeping = RwSignal::new(false);
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        if keeping.get_untracked() {
            return;
        }
        let details = match typed.read() {
            Ok(details) => details,
            Err((field, sentence)) => return refused.set(vec![(field.into(), sentence)]),
        };
        let found: Vec<_> = details
            .check(today())
            .into_iter()
            .map(|error| (error.field, error.sentence))
            .collect();
        if !found.is_empty() {
            return refused.set(found);
        }
        let navigate = navigate.clone();
        keeping.set(true);
        leptos::task::spawn_local(async move {
            match door.add_person(details).await {
                Ok(person) => navigate(
                    &words::person_path(&person),
                    leptos_router::NavigateOptions::default(),
                ),
                Err(sentence) => {
                    refused.set(vec![("all".into(), sentence)]);
                    keeping.set(false);
                }
            }
        });
    };
    let said = move |field: &'static str| {
        Signal::derive(move || {
            refused.with(|all| {
                all.iter()
                    .find(|(name, _)| name == field)
                    .map(|(_, sentence)| sentence.clone())
            })
        })
    };
    view! {
        <TopBar title="New person"><a class="pill" href="/">"Rounds"</a></TopBar>
        <main class="page">
            <form class="sheet form" id="person-form" on:submit=submit>
                <div class="two"><TextField id="given" label="given name" value=typed.given error=said("name") on_change=move |text| typed.given.set(text)/>
                <TextField id="family" label="family name" value=typed.family on_change=move |text| typed.family.set(text)/></div>
                <div class="two"><TextField id="born" label="date of birth" kind=TextKind::Date value=typed.born error=said("born") on_change=move |text| typed.born.set(text)/>
                <TextField id="age" label="or the age as stated" value=typed.age on_change=move |text| typed.age.set(text)/></div>
                <div class="two"><TextField id="place" label="home or address" value=typed.place on_change=move |text| typed.place.set(text)/>
                <TextField id="room" label="room" value=typed.room on_change=move |text| typed.room.set(text)/></div>
                <TextField id="note" label="to remember before knocking" kind=TextKind::Lines value=typed.note on_change=move |text| typed.note.set(text)/>
                <p class="field-error" role="alert" id="person-said">{said("all")}</p>
                <button class="act" type="submit" id="keep-person">"Keep"</button>
            </form>
        </main>
    }
}
