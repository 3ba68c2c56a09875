//! A reading of both lenses as it is written on a slip: typed, pasted, or read off a code by the camera.

use crate::edge::camera;
use crate::pages::keys::Camera;
use leptos::prelude::*;
use record::Jotted;
use widgets::{Disclosure, TextField};

/// The line that opens the field; `on_jotted` gets what was read.
pub fn jotted(on_jotted: impl Fn(Jotted) + Send + Sync + 'static) -> AnyView {
    let on_jotted = Callback::new(on_jotted);
    view! {
        <Disclosure id="jotted" summary="a pair as it is written on a slip, or in a code".to_owned()><Reading on_jotted/></Disclosure>
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
            <button class="pill" type="button" id="jotted-scan" on:click=move |_| scanning.set(true)>"read a code with the camera"</button>
            <Show when=move || scanning.get()><Camera scanning said on_heard=take/></Show>
        })}
        <TextField id="jotted-text" label="both lenses" value=text hint="As R +2.50/\u{2212}1.00x90 L +2.25 add +2.50: each eye, then its lens; the sign stands."
            on_change=move |typed| { text.set(typed); said.set(None); } error=said/>
        <button class="pill" type="button" id="jotted-take" on:click=move |_| take(text.get_untracked())>"add this pair"</button>
    }
    .into_any()
}
