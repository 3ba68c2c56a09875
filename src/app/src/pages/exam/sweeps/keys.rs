//! The pad from a keyboard: one letter each, wherever the focus is, except where it writes.

use super::desk::Desk;
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::Element;
use optics::retinoscopy::{Beam, Motion};
use record::Eye;

/// Listens while the pad is there.
pub fn listen(desk: Desk, on_frame: Callback<Eye>, asking: RwSignal<bool>) {
    let pressed = window_event_listener(leptos::ev::keydown, move |ev| {
        if meant_for_the_pad(&ev) && act(desk, on_frame, asking, &ev.key()) {
            ev.prevent_default();
        }
    });
    on_cleanup(move || pressed.remove());
}

/// Neither a shortcut of the browser's, nor typed into a field or beside an open sheet.
fn meant_for_the_pad(ev: &KeyboardEvent) -> bool {
    let target = ev.target().and_then(|at| at.dyn_into::<Element>().ok());
    let writes = "input, textarea, select, [contenteditable], [role=slider], dialog";
    let writing = target.is_some_and(|at| at.closest(writes).is_ok_and(|found| found.is_some()));
    let sheet = document().query_selector("dialog[open]");
    let covered = sheet.is_ok_and(|open| open.is_some());
    !(ev.ctrl_key() || ev.meta_key() || ev.alt_key() || writing || covered)
}

/// Whether the key was one of the pad's.
fn act(desk: Desk, on_frame: Callback<Eye>, asking: RwSignal<bool>, key: &str) -> bool {
    let eye = desk.working.get_untracked();
    match key {
        "w" => desk.sweep(Motion::With),
        "n" => desk.sweep(Motion::Neutral),
        "a" => desk.sweep(Motion::Against),
        "t" => desk.sweep(Motion::CannotTell),
        "+" | "=" => desk.step(eye, 1),
        "-" | "\u{2212}" => desk.step(eye, -1),
        "m" => desk.take_in_hand(eye, |hand| hand.meridian = hand.meridian.crossed()),
        "b" => desk.take_in_hand(eye, |hand| {
            hand.beam = match hand.beam {
                Beam::Normal => Beam::Reversed,
                Beam::Reversed => Beam::Normal,
            };
        }),
        "u" => desk.undo(),
        "x" => desk.follow(eye),
        "f" => on_frame.run(eye),
        "i" if desk.has_swept(eye) => asking.set(true),
        _ => return false,
    }
    true
}
