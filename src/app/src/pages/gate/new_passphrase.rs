//! Choosing a passphrase: words that are offered, or one's own with a word on how hard it is to guess.

use super::strength::{Strength, strength_of};
use ::words::app::gate as say;
use leptos::prelude::*;

/// Words in an offered passphrase.
const WORDS: usize = 6;

/// A passphrase that is being chosen.
#[derive(Clone, Copy)]
pub struct Passphrase {
    /// As it stands.
    pub words: RwSignal<String>,
    is_offered: RwSignal<bool>,
    written: RwSignal<bool>,
}

impl Passphrase {
    /// Words drawn at random.
    pub fn offered() -> Self {
        Self {
            words: RwSignal::new(offered()),
            is_offered: RwSignal::new(true),
            written: RwSignal::new(false),
        }
    }

    /// The words, once it is ticked that they are on paper.
    ///
    /// # Errors
    /// A sentence that asks for it.
    pub fn written_down(self) -> Result<String, String> {
        if self.written.get_untracked() {
            Ok(self.words.get_untracked())
        } else {
            Err(say::write_phrase_down().into())
        }
    }
}

/// A fresh passphrase of random words; empty where the browser gives no randomness, which making the vault then says.
fn offered() -> String {
    vault::phrase::offer(WORDS).unwrap_or_default()
}

/// The words or the field, with the way from one to the other.
#[component]
pub fn NewPassphrase(passphrase: Passphrase) -> impl IntoView {
    let Passphrase {
        words, is_offered, ..
    } = passphrase;
    let offer = move |_| {
        words.set(offered());
        is_offered.set(true);
    };
    let own = move |_| {
        words.set(String::new());
        is_offered.set(false);
    };
    view! {
        <div class="field">
            <span class="field-label">{say::passphrase()}</span>
            {move || if is_offered.get() {
                view! {
                    <output id="offered" class="offered" for="another">{words}</output>
                    <p class="soft">{say::six_words()}</p>
                    <div class="row">
                        <button class="pill" type="button" id="another" on:click=offer>{say::other_words()}</button>
                        <button class="pill" type="button" id="own" on:click=own>{say::use_my_own()}</button>
                    </div>
                }.into_any()
            } else {
                view! {
                    <OwnPassphrase passphrase=words/>
                    <div class="row"><button class="pill" type="button" id="offer" on:click=offer>{say::offer_me_words()}</button></div>
                }.into_any()
            }}
        </div>
    }
}

/// The tick that the words are on paper.
#[component]
pub fn Written(passphrase: Passphrase) -> impl IntoView {
    let written = passphrase.written;
    view! {
        <label class="tick" for="written">
            <input type="checkbox" id="written" prop:checked=written on:change:target=move |event| written.set(event.target().checked())/>
            <span>{say::phrase_written_down()}</span>
        </label>
    }
}

#[component]
fn OwnPassphrase(passphrase: RwSignal<String>) -> impl IntoView {
    let strength = RwSignal::new(None::<Strength>);
    let typed = move |text: String| {
        passphrase.set(text.clone());
        leptos::task::spawn_local(async move {
            let found = strength_of(&text).await;
            // A slower answer for an earlier text must not stand beside a later one.
            if passphrase.get_untracked() == text {
                strength.set(found);
            }
        });
    };
    view! {
        <input id="own-passphrase" class="text-input" autocomplete="new-password" autocapitalize="none" spellcheck="false"
            aria-label=say::passphrase() aria-describedby="strength"
            prop:value=passphrase on:input:target=move |event| typed(event.target().value())/>
        <p id="strength" class="soft" role="status">{move || strength.get().map(|found| found.sentence)}</p>
        <meter class="strength" min="0" max="4" aria-hidden="true" prop:value=move || strength.get().map_or(0.0, |found| f64::from(found.score))></meter>
    }
}
