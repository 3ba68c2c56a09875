//! The whole record of a person, as files: for the person, who may ask for it, or for whoever looks after them next.

use crate::edge::clock;
use crate::pages::hand_over::{HandOver, Offer, kinds};
use crate::pages::papers::whole_bundle;
use crate::session::Door;
use crate::shell::{App, app};
use ::words::app::person as say;
use leptos::prelude::*;
use papers::{Document, holds, whole_record};
use record::{Manner, PersonId};
use widgets::Disclosure;
use workers::Job;

/// The line that opens it.
#[component]
pub fn WholeRecord(
    /// Who.
    person: PersonId,
) -> impl IntoView {
    view! {
        <Disclosure id="whole-record" summary=say::whole_record()><Files person/></Disclosure>
    }
    .into_any()
}

#[component]
fn Files(person: PersonId) -> impl IntoView {
    let App {
        door,
        habits,
        manner,
        ..
    } = app();
    let story = door.story();
    let today = clock::today();
    let told = Memo::new(move |_| {
        let whole = story.with(|story| story.whole(&person).as_ref().map(holds::whole_record));
        whole.unwrap_or_default()
    });
    let readable = Offer {
        id: "whole-pdf",
        label: say::readable_pdf(),
        kind: kinds::PDF,
        name: Callback::new(move |()| format!("whole-record-{today}.pdf")),
        job: Callback::new(move |()| {
            let document = document(door, person, manner.get_untracked())?;
            let size = habits.with_untracked(|habits| habits.paper);
            Ok(Job::Pdf { document, size })
        }),
    };
    let for_systems = Offer {
        id: "whole-fhir",
        label: say::other_system_fhir(),
        kind: kinds::FHIR,
        name: Callback::new(move |()| format!("whole-record-{today}.fhir.json")),
        job: Callback::new(move |()| Ok(story.with_untracked(|story| whole_bundle(story, person)))),
    };
    view! { <HandOver id="whole" offers=vec![readable, for_systems] holds=told always=true/> }
        .into_any()
}

/// The record as it stands now, in its reader's manner.
fn document(door: Door, person: PersonId, manner: Manner) -> Result<Document, String> {
    let made = door.story().with_untracked(|story| {
        let whole = story.whole(&person)?;
        Some(whole_record(&whole, &clock::local, clock::today()))
    });
    let made = made.ok_or(say::no_such_person())?;
    let made = made.in_manner(manner);
    Ok(if door.made_up.get_untracked() {
        made.about_nobody()
    } else {
        made
    })
}
