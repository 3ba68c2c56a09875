//! The one button that writes.

use super::{Looking, Taken};
use crate::shell::app;
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
                    trouble.try_set(Some(format!("nothing was taken: {sentence}")));
                }
            }
            taking.try_set(false);
        });
    };
    let words = move || match (taking.get(), count.get()) {
        (true, _) => "being taken \u{2026}".to_owned(),
        (false, 1) => "take this one exam\u{2019}s findings".to_owned(),
        (false, count) => format!("take the findings of these {count} exams"),
    };
    view! {
        <Show when=move || count.get() != 0>
            <button type="button" class="act" id="earlier-take" disabled=move || taking.get() on:click=take>{words}</button>
        </Show>
    }
    .into_any()
}
