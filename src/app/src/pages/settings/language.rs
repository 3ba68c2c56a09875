//! The language of this tablet.

use crate::shell::app;
use ::words::{Language, app::language as say};
use leptos::prelude::*;
use widgets::{Choice, Pick};

/// One of the languages, by the name that its speakers give it.
#[component]
pub fn LanguageChoice() -> impl IntoView {
    let app = app();
    let picks = Language::ALL
        .map(|language| Pick::new(language, || language.own_name()).slug(language.tag()));
    let speak = move |language: Language| {
        app.speak(language);
        // The page is built anew: whoever chose by keys goes on where they were.
        request_animation_frame(move || focus(&format!("language-{}", language.tag())));
    };
    view! {
        <section class="sheet" id="languages">
            <h2>{say::heading()}</h2>
            <Choice id="language" label=say::choose() picks=picks.into() value=Signal::derive(move || Some(app.language.get())) on_change=speak/>
            <p class="soft">{say::only_here()}</p>
        </section>
    }
    .into_any()
}

fn focus(id: &str) {
    let there = document().get_element_by_id(id);
    let there =
        there.and_then(|there| wasm_bindgen::JsCast::dyn_into::<web_sys::HtmlElement>(there).ok());
    if let Some(there) = there {
        let _ = there.focus();
    }
}
