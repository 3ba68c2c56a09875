//! Phrases that were taught, field by field, to be forgotten again.

use crate::session::Door;
use crate::shell::app;
use ::words::app::settings as say;
use leptos::prelude::*;
use record::Usual;

/// A field and what was taught for it.
type Taught = (Usual, Vec<String>);

/// Everything that was taught.
#[component]
pub fn Phrases() -> impl IntoView {
    let door = app().door;
    let refused = RwSignal::new(None::<String>);
    let taught = Memo::new(move |_| door.story().with(|story| all(&story.settings())));
    let fields = move || {
        taught
            .get()
            .into_iter()
            .map(move |taught| field(door, taught, refused))
            .collect_view()
    };
    view! {
        <section class="sheet" id="phrases">
            <h2>{say::phrases_hand()}</h2>
            <p class="soft">{say::phrases_why()}</p>
            <Show when=move || taught.with(Vec::is_empty)><p class="empty">{say::no_phrases()}</p></Show>
            {fields}
            <p class="field-error" role="status">{move || refused.get()}</p>
        </section>
    }
    .into_any()
}

fn all(settings: &record::Settings) -> Vec<Taught> {
    let each = Usual::ALL.iter().map(|field| {
        let phrases = settings.phrases(*field).into_iter();
        let taught = phrases.filter(|phrase| phrase.taught);
        (*field, taught.map(|phrase| phrase.words).collect())
    });
    each.filter(|(_, taught): &Taught| !taught.is_empty())
        .collect()
}

fn field(door: Door, (field, phrases): Taught, refused: RwSignal<Option<String>>) -> AnyView {
    let each = phrases.into_iter().enumerate().map(|(at, words)| {
        let id = format!("forget-{}-{at}", field.slug());
        let said = words.clone();
        let forget = move |_| {
            let words = words.clone();
            leptos::task::spawn_local(async move {
                let kept = door.set(move |settings| {
                    settings.forget(field, &words);
                    Ok(())
                });
                refused.set(kept.await.err());
            });
        };
        view! { <li class="taught"><span>{said}</span><button type="button" class="pill writes" id=id on:click=forget>{say::forget()}</button></li> }
    });
    view! { <div><h3>{field.title()}</h3><ul class="changes">{each.collect_view()}</ul></div> }
        .into_any()
}
