//! Places among what was searched for.

use super::Line;
use crate::shell::app;
use ::words::app::places as say;
use leptos::prelude::*;
use record::PlaceId;

/// Each with the way to it; nothing where none was found.
#[component]
pub fn FoundPlaces(
    /// The places, the best first.
    places: Memo<Vec<PlaceId>>,
) -> impl IntoView {
    let story = app().door.story();
    let lines = Memo::new(move |_| {
        story.with(|story| {
            let known = places.get().into_iter();
            let known = known.filter_map(|place| story.place(&place));
            known.map(Line::found).collect::<Vec<_>>()
        })
    });
    view! {
        <Show when=move || lines.with(|lines| !lines.is_empty())>
            <ul class="people" id="found-places" aria-label=say::places()>
                {move || lines.get().into_iter().map(|line| view! {
                    <li class="day-row"><a class="person-who" href=line.path><b>{line.name}</b><span class="soft">{line.told}</span></a></li>
                }).collect_view()}
            </ul>
        </Show>
    }
    .into_any()
}
