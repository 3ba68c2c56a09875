//! A button that steps once when tapped and goes on stepping while held.

use crate::repeat;
use leptos::ev::{MouseEvent, PointerEvent};
use leptos::leptos_dom::helpers::{TimeoutHandle, set_timeout_with_handle};
use leptos::prelude::*;

/// What one press has done so far.
#[derive(Default)]
struct Press {
    wait: Option<TimeoutHandle>,
    repeats: u32,
}

/// A tap is one step, on release, so that a finger which scrolls the page away changes nothing. A hold repeats after
/// [`repeat::wait_before`] and stops where the finger lets go, slides off, or is taken over by the browser.
#[component]
pub fn HoldButton(
    /// The button's id.
    #[prop(into)]
    id: String,
    /// What it does, for a screen reader.
    #[prop(into)]
    label: String,
    /// Called once for each step.
    #[prop(into)]
    on_step: Callback<()>,
    /// Whether there is nothing to step to.
    #[prop(optional, into)]
    off: Signal<bool>,
    /// What it shows.
    children: Children,
) -> impl IntoView {
    let press = StoredValue::new_local(Press::default());
    let let_go = move || {
        press.try_update_value(|press| press.wait.take().map(|wait| wait.clear()));
    };
    let down = move |ev: PointerEvent| {
        let_go();
        press.set_value(Press::default());
        if ev.is_primary() && ev.button() == 0 {
            wait_then_step(press, on_step);
        }
    };
    let click = move |ev: MouseEvent| {
        let_go();
        // A click without a pointer (keyboard, screen reader) has no detail, and is never the end of a hold.
        if ev.detail() == 0 || press.with_value(|press| press.repeats == 0) {
            on_step.run(());
        }
    };
    on_cleanup(let_go);

    view! {
        <button
            type="button"
            class="hold-button"
            id=id
            aria-label=label
            aria-disabled=move || off.get().then_some("true")
            on:pointerdown=down
            on:pointerup=move |_| let_go()
            on:pointerleave=move |_| let_go()
            on:pointercancel=move |_| let_go()
            on:blur=move |_| let_go()
            on:contextmenu=move |ev| ev.prevent_default()
            on:click=click
        >
            {children()}
        </button>
    }
}

fn wait_then_step(press: StoredValue<Press, LocalStorage>, on_step: Callback<()>) {
    let again = move || {
        let held = press.try_update_value(|press| press.repeats += 1).is_some();
        if held && !document().hidden() {
            on_step.run(());
            wait_then_step(press, on_step);
        }
    };
    let Some(repeats) = press.try_with_value(|press| press.repeats) else {
        return;
    };
    let wait = set_timeout_with_handle(again, repeat::wait_before(repeats)).ok();
    press.try_update_value(|press| press.wait = wait);
}
