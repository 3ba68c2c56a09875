//! What to know of a person before the door: told at the last visits, and written down beside the name. Nothing to touch.

use crate::shell::app;
use crate::words;
use ::words::app::person as say;
use leptos::prelude::*;
use record::{Line, PersonId, Said, ToldOn};

/// A short block to scan, and the way to change what is known.
#[component]
pub fn Known(
    /// Who.
    person: PersonId,
) -> impl IntoView {
    let story = app().door.story();
    let told = Memo::new(move |_| story.with(|story| story.told_of(&person)));
    let lines = Memo::new(move |_| {
        story.with(|story| {
            let known = story.person(&person);
            known
                .map(|known| known.details().keyed_lines())
                .unwrap_or_default()
        })
    });
    let nothing = move || told.with(Vec::is_empty) && lines.with(Vec::is_empty);
    view! {
        <section class="sheet known" id="known">
            <div class="eye-head">
                <h2>{say::know_before_door()}</h2>
                <a class="pill writes" id="change-details" href=format!("{}/details", words::person_path(&person))>{say::change()}</a>
            </div>
            <Show when=nothing><p class="soft">{say::only_name_known()}</p></Show>
            <dl>
                {move || told.get().into_iter().map(told_line).collect_view()}
                {move || lines.get().into_iter().map(known_line).collect_view()}
            </dl>
        </section>
    }
    .into_any()
}

fn told_line(told: ToldOn) -> AnyView {
    let id = format!("told-{}", told.told.label.replace(' ', "-"));
    view! { <div id=id><dt>{told.told.said()}</dt><dd>{words::number(&told.words)}<span class="soft">" "{words::month(told.on)}</span></dd></div> }
        .into_any()
}

fn known_line((key, line): (String, Line)) -> AnyView {
    let words = match line.said {
        // What others know the person by, and how to reach somebody, stays as it was written.
        Said::One(words) if key == "looks at" => words::number(&words),
        Said::One(words) => words,
        Said::Eyes(eyes) => format!("{}, {}", eyes.right, eyes.left),
    };
    let id = format!("known-{}", key.replace(' ', "-"));
    view! { <div id=id><dt>{line.label}</dt><dd>{words}</dd></div> }.into_any()
}
