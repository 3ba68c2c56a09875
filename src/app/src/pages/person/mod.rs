//! A person's story so far: the years at a glance, the last lenses, the last two exams, and everything newest first.

mod from_elsewhere;
mod known;
mod last_two;
mod lenses;
mod same;
mod timeline;
mod whole;
mod years;

use super::keys::Erasing;
use super::rounds::Begin;
use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::person as say;
use from_elsewhere::FromElsewhere;
use known::Known;
use last_two::LastTwo;
use lenses::LastLenses;
use leptos::prelude::*;
use leptos_router::hooks::use_params_map;
use record::{ExamState, PersonId};
use same::SamePerson;
use timeline::{ExamTold, Timeline};
use whole::WholeRecord;
use years::{OverTheYears, so_far};

/// The page.
#[component]
pub fn PersonPage() -> impl IntoView {
    let story = app().door.story();
    let params = use_params_map();
    let person = Memo::new(move |_| params.with(|params| words::person_id(&params.get("person")?)));
    let who = Memo::new(move |_| {
        story.with(|story| {
            let person = story.person(&person.get()?)?;
            Some((
                words::name(person),
                words::whereabouts(person, crate::edge::clock::today()),
                person.details().note.clone(),
            ))
        })
    });
    let exams = Memo::new(move |_| {
        let Some(person) = person.get() else {
            return Vec::new();
        };
        story.with(|story| {
            story
                .exams_of(&person)
                .into_iter()
                .map(ExamTold::of)
                .collect::<Vec<_>>()
        })
    });
    // What is being looked at below must outlive a change of the person's details.
    let person_here = Memo::new(move |_| who.with(Option::is_some).then(|| person.get()).flatten());
    let so_far = so_far(person);
    let name = Signal::derive(move || {
        who.get()
            .map_or_else(|| say::nobody_address().into(), |who| who.0)
    });
    let beside = Signal::derive(move || who.get().map(|who| who.1).unwrap_or_default());
    view! {
        <TopBar title=name beside=beside>
            <a class="pill" id="to-sums" href="/sums">{say::sums()}</a>
            <a class="pill" href="/">{say::rounds()}</a>
        </TopBar>
        <main class="page">
            {move || who.get().map(|who| who.2).filter(|note| !note.trim().is_empty()).map(|note| view! { <p class="caution" id="person-note">{note}</p> })}
            {move || who.get().and(person.get()).map(|person| view! { <BeginOrGoOn person exams/> })}
            {move || who.get().and(person.get()).map(|person| view! { <Known person/> })}
            <OverTheYears so_far/>
            <LastLenses person/>
            <LastTwo person/>
            <Timeline so_far exams/>
            <Show when=move || who.get().is_some() && exams.with(Vec::is_empty)>
                <p class="empty">{say::no_exam_yet()}</p>
            </Show>
            {move || person_here.get().map(|person| view! { <div class="writes"><FromElsewhere person/> <SamePerson person/></div> })}
            {move || person_here.get().map(|person| view! { <WholeRecord person/> <Erasing person/> })}
        </main>
    }
}

#[component]
fn BeginOrGoOn(person: PersonId, exams: Memo<Vec<ExamTold>>) -> impl IntoView {
    let open = move || {
        exams.with(|exams| {
            let mut ours = exams.iter().filter(|told| !told.elsewhere);
            ours.next()
                .filter(|told| told.state == ExamState::Open)
                .map(|told| told.exam)
        })
    };
    view! {
        <div class="find-row" id="begin-exam">
            {move || match open() {
                Some(exam) => view! { <a class="act" id="go-on" href=words::exam_path(&exam, super::exam::to_go_on(exam))>{say::go_exam()}</a> }.into_any(),
                None => view! { <Begin person/> }.into_any(),
            }}
        </div>
    }
}
