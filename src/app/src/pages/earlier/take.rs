//! The one button that writes.

use super::{Looking, Taken};
use crate::shell::app;
use ::words::app::earlier as say;
use ::words::app::round::nothing_taken;
use leptos::prelude::*;

#[component]
pub fn Take(looking: Looking, trouble: RwSignal<Option<String>>) -> impl IntoView {
    let door = app().door;
    let taking = RwSignal::new(false);
    let count = Memo::new(move |_| {
        looking
            .judged
            .with(|judged| judged.iter().filter(|each| each.verdict.is_ok()).count())
    });
    let take = move |_| {
        if taking.get_untracked() {
            return;
        }
        taking.set(true);
        let rows = looking.good();
        let taken = Taken::of(&rows, looking);
        leptos::task::spawn_local(async move {
            match door.take_earlier(rows).await {
                Ok(()) => {
                    looking.table.try_set(None);
                    looking.taken.try_set(Some(taken));
                }
                Err(sentence) => {
                    trouble.try_set(Some(nothing_taken(&sentence)));
                }
            }
            taking.try_set(false);
        });
    };
    let words = move || {
        if taking.get() {
            say::being_taken().to_owned()
        } else {
            say::take_findings(count.get())
        }
    };
    view! {
        <Show when=move || count.get() != 0>
            <button type="button" class="act" id="earlier-take" disabled=move || taking.get() on:click=take>{words}</button>
        </Show>
    }
    .into_any()
}
