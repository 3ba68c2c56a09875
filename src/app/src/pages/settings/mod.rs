//! Settings: how things are shown on this tablet, and what holds for all tablets of the vault: local figures, phrases.

mod figures;
mod language;
mod phrases;
mod shown;

use crate::session::Door;
use crate::shell::TopBar;
use ::words::app::settings as say;
use figures::Figures;
use language::LanguageChoice;
use leptos::prelude::*;
use phrases::Phrases;
use record::Settings;
use shown::HowShown;

/// The page.
#[component]
pub fn SettingsPage() -> impl IntoView {
    view! {
        <TopBar title=say::settings()>
            <a class="pill" href="/vault">{say::vault()}</a>
            <a class="pill" href="/">{say::rounds()}</a>
        </TopBar>
        <main class="page">
            <LanguageChoice/>
            <HowShown/>
            <Figures/>
            <Phrases/>
        </main>
    }
    .into_any()
}

/// Changes what holds for the whole vault; what keeps it from being written down is said, unless the page is gone by then.
pub fn set(
    door: Door,
    refused: RwSignal<Option<String>>,
    change: impl FnOnce(&mut Settings) + 'static,
) {
    set_then(door, refused, change, || ());
}

/// The same; once it is written down, `then` is called.
pub fn set_then(
    door: Door,
    refused: RwSignal<Option<String>>,
    change: impl FnOnce(&mut Settings) + 'static,
    then: impl FnOnce() + 'static,
) {
    leptos::task::spawn_local(async move {
        let kept = door.set(|settings| {
            change(settings);
            Ok(())
        });
        let kept = kept.await;
        if kept.is_ok() {
            then();
        }
        refused.try_set(kept.err());
    });
}
