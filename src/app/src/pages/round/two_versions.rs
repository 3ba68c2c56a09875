//! Two tablets changed the same round without knowing of each other: both stand until somebody chooses.

use super::undo::Doing;
use crate::edge::clock::local;
use crate::shell::app;
use crate::words;
use ::words::app::round as say;
use leptos::prelude::*;
use record::{RoundDetails, RoundId};
use widgets::Notice;

/// One of them.
#[derive(Clone, PartialEq)]
struct Way {
    words: String,
    details: RoundDetails,
}

/// The question, where there is one.
#[component]
pub fn TwoVersions(round: RoundId) -> impl IntoView {
    let story = app().door.story();
    let ways = Memo::new(move |_| {
        story.with(|story| {
            let known = story.round(&round)?;
            let versions = known.versions();
            let ways: Vec<Way> = versions
                .versions()
                .iter()
                .map(|version| Way {
                    words: say::version_of(
                        &version.entry.author,
                        &words::moment(local(version.entry.stamp)),
                        version.value.people.len(),
                    ),
                    details: version.value.clone(),
                })
                .collect();
            (ways.len() > 1).then(|| (ways, known.together()))
        })
    });
    move || {
        ways.get()
            .map(|(ways, together)| view! { <Ask round ways together/> })
    }
}

#[component]
fn Ask(round: RoundId, ways: Vec<Way>, together: RoundDetails) -> impl IntoView {
    let (door, doing) = (app().door, Doing::here());
    let settle = move |chosen: RoundDetails| {
        doing.run(door.change_round(round, move |_, details| *details = chosen))
    };
    let each = ways.into_iter().enumerate().map(move |(at, way)| view! {
        <button type="button" class="pill" id=format!("version-{at}") on:click=move |_| settle(way.details.clone())>{way.words.clone()}</button>
    });
    view! {
        <Notice id="round-versions">
            <span>{say::two_versions()}</span>
            <span class="pills writes">
                {each.collect_view()}
                <button type="button" class="pill" id="version-together" on:click=move |_| settle(together.clone())>{say::everybody_both()}</button>
            </span>
        </Notice>
    }
    .into_any()
}
