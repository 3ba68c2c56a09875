//! A reading of both lenses as it is written on a slip: typed, pasted, or read off a code by the camera.

use crate::edge::camera;
use crate::pages::keys::Camera;
use ::words::app::exam_editors as say;
use leptos::prelude::*;
use record::Jotted;
use widgets::{Disclosure, TextField};

/// The line that opens the field; `on_jotted` gets what was read.
pub fn jotted(on_jotted: impl Fn(Jotted) + Send + Sync + 'static) -> AnyView {
    let on_jotted = Callback::new(on_jotted);
    view! {
        <Disclosure id="jotted" summary=say::jotted()><Reading on_jotted/></Disclosure>
    }
    .into_any()
}

#[component]
fn Reading(on_jotted: Callback<Jotted>) -> impl IntoView {
    let (text, said) = (RwSignal::new(String::new()), RwSignal::new(None::<String>));
    let scanning = RwSignal::new(false);
    let take = move |written: String| match written.parse::<Jotted>() {
        Ok(jotted) => {
            text.set(String::new());
            said.set(None);
            on_jotted.run(jotted);
        }
        Err(error) => {
            // What could not be read stays, to be put right.
            text.set(written);
            said.set(Some(error.to_string()));
        }
    };
    view! {
        {camera::can_scan().then(|| view! {
            <button class="pill" type="button" id="jotted-scan" on:click=move |_| scanning.set(true)>{say::jotted_scan()}</button>
            <Show when=move || scanning.get()><Camera scanning said on_heard=take/></Show>
        })}
        <TextField id="jotted-text" label=say::jotted_both() value=text hint=say::jotted_hint()
            on_change=move |typed| { text.set(typed); said.set(None); } error=said/>
        <button class="pill" type="button" id="jotted-take" on:click=move |_| take(text.get_untracked())>{say::jotted_take()}</button>
    }
    .into_any()
}
