//! A message from one tablet to another: shown as a picture and as letters, and taken by camera, by hand, or from a file.

use super::carry::Picker;
use crate::edge::{camera, files};
use ::words::app::keys as say;
use leptos::ev::SubmitEvent;
use leptos::html::Video;
use leptos::prelude::*;
use qrcodegen::{QrCode, QrCodeEcc};
use std::cell::Cell;
use std::fmt::Write as _;
use std::rc::Rc;
use widgets::{Disclosure, TextField, TextKind};

/// Modules of white around the picture, by the standard of such codes (ISO/IEC 18004).
const QUIET: i32 = 4;

/// A message that waits to be taken by the other tablet. Its letters are `{id}-letters`.
#[component]
pub fn Told(
    /// Its id.
    id: &'static str,
    /// Its lines of letters.
    lines: Vec<String>,
) -> impl IntoView {
    let text = StoredValue::new(lines.join("\n"));
    let said = RwSignal::new(None::<String>);
    let save = move |_| {
        let name = format!("lightround {id}.txt");
        let saved = text.with_value(|text| files::save_bytes(&name, text.as_bytes()));
        said.set(saved.err());
    };
    view! {
        <div class="told-message" id=id>
            <Picture text=lines.concat().replace(' ', "")/>
            <Disclosure id=format!("{id}-as-letters") summary=say::letters_type_send()>
                <pre class="letters" id=format!("{id}-letters")>{text.get_value()}</pre>
                <button class="pill" type="button" id=format!("{id}-save") on:click=save>{say::save_file()}</button>
                <p class="field-error" role="alert">{move || said.get()}</p>
            </Disclosure>
        </div>
    }
    .into_any()
}

/// The message as a picture for a camera.
#[component]
fn Picture(text: String) -> impl IntoView {
    let Ok(code) = QrCode::encode_text(&text, QrCodeEcc::Low) else {
        return view! { <p class="soft">{say::too_long_for_picture()}</p> }.into_any();
    };
    let size = code.size();
    let mut path = String::new();
    for y in 0..size {
        for x in (0..size).filter(|x| code.get_module(*x, y)) {
            let _ = write!(path, "M{} {}h1v1h-1z", x + QUIET, y + QUIET);
        }
    }
    let whole = size + 2 * QUIET;
    view! {
        <svg class="code-picture" viewBox=format!("0 0 {whole} {whole}") role="img" aria-label=say::code_other_tablets_camera() shape-rendering="crispEdges">
            <path d=path/>
        </svg>
    }
    .into_any()
}

/// Takes a message. The letters go into `{id}`, and `{id}-go` hands them on.
#[component]
pub fn Heard(
    /// Its id.
    id: &'static str,
    /// What is to be taken.
    label: &'static str,
    /// What was wrong with it.
    said: RwSignal<Option<String>>,
    /// Called with its letters.
    #[prop(into)]
    on_heard: Callback<String>,
) -> impl IntoView {
    let text = RwSignal::new(String::new());
    let scanning = RwSignal::new(false);
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        on_heard.run(text.get_untracked());
    };
    let picked = move |bytes: Result<Vec<u8>, String>| match bytes {
        Ok(bytes) => on_heard.run(String::from_utf8_lossy(&bytes).into_owned()),
        Err(sentence) => said.set(Some(sentence)),
    };
    let file = format!("{id}-file");
    view! {
        <form class="form heard" on:submit=submit>
            {camera::can_scan().then(|| view! {
                <button class="act" type="button" id=format!("{id}-scan") on:click=move |_| scanning.set(true)>{say::read_camera()}</button>
                <Show when=move || scanning.get()><Camera scanning said on_heard/></Show>
            })}
            <TextField id=id label=label kind=TextKind::Lines value=text hint=say::letters_hint()
                on_change=move |typed| { text.set(typed); said.set(None); } error=said/>
            <div class="row">
                <Picker id=file label=say::file() on_picked=picked/>
                <button class="act" type="submit" id=format!("{id}-go")>{say::go()}</button>
            </div>
        </form>
    }
    .into_any()
}

/// The camera's picture until a code is seen in it, or it is put away.
#[component]
pub fn Camera(
    /// Whether it is to be seen.
    scanning: RwSignal<bool>,
    /// What was wrong.
    said: RwSignal<Option<String>>,
    /// Called with what the code says.
    #[prop(into)]
    on_heard: Callback<String>,
) -> impl IntoView {
    let video = NodeRef::<Video>::new();
    let stop = StoredValue::new_local(Rc::new(Cell::new(false)));
    let put_away = move || stop.with_value(|stop| stop.set(true));
    on_cleanup(put_away);
    Effect::new(move |_| {
        let Some(video) = video.get() else { return };
        let stop = stop.get_value();
        leptos::task::spawn_local(async move {
            match camera::scan(video, stop).await {
                Ok(Some(text)) => on_heard.run(text),
                Ok(None) => {}
                Err(sentence) => said.set(Some(sentence)),
            }
            scanning.try_set(false);
        });
    });
    view! {
        <div class="camera">
            <video node_ref=video muted=true playsinline="true"></video>
            <button class="pill" type="button" id="stop-camera" on:click=move |_| put_away()>{say::put_camera_away()}</button>
        </div>
    }
    .into_any()
}
