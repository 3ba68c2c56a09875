//! The number itself: an input that is stepped by keys, scrubbed by a drag, and typed into.

use crate::mark::marked;
use crate::number::Rules;
use crate::scrub::Drag;
use ::words::app::widgets as say;
use leptos::ev::{FocusEvent, KeyboardEvent, MouseEvent, PointerEvent};
use leptos::html;
use leptos::prelude::*;

/// One field's number and all that may happen to it. Shared by the stepper and the dial.
#[derive(Clone, Copy)]
pub(crate) struct Number {
    /// The value that the page holds.
    pub value: Signal<Option<f64>>,
    /// How it is stepped and shown; it may change with another field.
    pub rules: Signal<Rules>,
    /// What the first step from blank gives.
    pub start: Signal<f64>,
    /// May the typed value stand?
    pub check: Option<Callback<f64, Result<f64, String>>>,
    /// Tells the page.
    pub on_change: Callback<f64>,
    /// Tells the page that the field was emptied, where it may be.
    pub on_clear: Option<Callback<()>>,
    /// What is being typed, until it is taken or given up.
    pub typed: RwSignal<Option<String>>,
    /// Why what was typed can't be taken.
    pub refused: RwSignal<Option<String>>,
}

impl Number {
    pub fn shown(self) -> String {
        let rules = self.rules.get();
        self.typed.get().unwrap_or_else(|| {
            self.value
                .get()
                .map(|v| marked(rules.show(v)))
                .unwrap_or_default()
        })
    }

    pub fn said(self) -> String {
        self.value.get().map_or_else(
            || say::blank().to_owned(),
            |v| marked(self.rules.get().say(v)),
        )
    }

    /// What a step starts from: the typed number where it may stand, else the page's.
    fn standing(self) -> Option<f64> {
        let typed = self
            .typed
            .get_untracked()
            .and_then(|text| self.taken(&text).ok());
        typed.or_else(|| self.value.get_untracked())
    }

    fn taken(self, text: &str) -> Result<f64, String> {
        let rules = self.rules.get_untracked();
        let value = rules.read(text)?;
        match self.check {
            Some(check) => check.run(value),
            None if (rules.min..=rules.max).contains(&value) => Ok(value),
            None => Err(say::from_to(&rules.show(rules.min), &rules.show(rules.max))),
        }
    }

    pub fn step(self, steps: i32) {
        self.go(|rules, from| rules.stepped(from, steps));
    }

    pub fn go(self, to: impl FnOnce(Rules, f64) -> f64) {
        let from = self.standing();
        self.put(from.map_or_else(
            || self.start.get_untracked(),
            |from| to(self.rules.get_untracked(), from),
        ));
    }

    pub fn put(self, value: f64) {
        self.forget();
        if self.value.get_untracked() != Some(value) {
            self.on_change.run(value);
        }
    }

    /// Takes what was typed; a refusal keeps the text and says why.
    pub fn take(self) {
        let Some(text) = self.typed.get_untracked() else {
            return;
        };
        if text.trim().is_empty() {
            self.forget();
            if let Some(clear) = self.on_clear {
                clear.run(());
            }
            return;
        }
        match self.taken(&text) {
            Ok(value) => self.put(value),
            Err(why) => self.refused.set(Some(why)),
        }
    }

    pub fn forget(self) {
        self.typed.set(None);
        self.refused.set(None);
    }
}

/// The input of a [`Number`]. The on-screen keyboard stays away until the number is tapped a second time.
#[component]
pub(crate) fn NumberBox(
    id: String,
    number: Number,
    /// The id of the sentence below it.
    error_id: String,
    #[prop(optional)] node: NodeRef<html::Input>,
) -> impl IntoView {
    let drag = StoredValue::new(None::<(Drag, f64)>);
    let keypad = RwSignal::new(false);
    let mode = move || match (keypad.get(), number.rules.with(|rules| rules.signed)) {
        (false, _) => "none",
        (true, false) => "decimal",
        // The decimal keypad of some tablets has no minus.
        (true, true) => "text",
    };
    let press = move |ev: PointerEvent| {
        if ev.is_primary() && number.typed.with_untracked(Option::is_none) {
            let from = number
                .value
                .get_untracked()
                .unwrap_or_else(|| number.start.get_untracked());
            drag.set_value(Some((
                Drag::at(ev.client_x().into(), ev.client_y().into()),
                from,
            )));
            let _ = event_target::<web_sys::Element>(&ev).set_pointer_capture(ev.pointer_id());
        }
    };
    // Until the finger lifts it is not known whether it drags or points: no focus, no selected text before that.
    let hold_focus = move |ev: MouseEvent| {
        if drag.with_value(Option::is_some) {
            ev.prevent_default();
        }
    };
    let select_all = |ev: FocusEvent| event_target::<web_sys::HtmlInputElement>(&ev).select();
    let release = move |ev: PointerEvent| {
        let Some((drag, _)) = drag.try_update_value(Option::take).flatten() else {
            return;
        };
        let Some(input) = node.get_untracked() else {
            return;
        };
        let focused = document().active_element().is_some_and(|at| at == **input);
        // A drag is done with the number; a tap wants to type, on a screen's keyboard only when it comes again.
        if drag.began() {
            return;
        }
        if focused && ev.pointer_type() != "mouse" {
            keypad.set(true);
            let _ = input.set_attribute("inputmode", mode());
            let _ = input.blur();
        }
        let _ = input.focus();
        input.select();
    };

    view! {
        <input
            type="text"
            class="number"
            id=id
            node_ref=node
            role="spinbutton"
            autocomplete="off"
            spellcheck="false"
            placeholder="\u{2014}"
            inputmode=mode
            aria-valuemin=move || number.rules.with(|rules| rules.min)
            aria-valuemax=move || number.rules.with(|rules| rules.max)
            aria-valuenow=move || number.value.get()
            aria-valuetext=move || number.said()
            aria-invalid=move || number.refused.with(Option::is_some).then_some("true")
            aria-describedby=error_id
            prop:value=move || number.shown()
            on:input:target=move |ev| {
                number.refused.set(None);
                number.typed.set(Some(ev.target().value()));
            }
            on:keydown=move |ev| keys(number, &ev)
            on:focus=select_all
            on:blur=move |_| {
                keypad.set(false);
                number.take();
            }
            on:mousedown=hold_focus
            on:pointerdown=press
            on:pointermove=move |ev: PointerEvent| scrub(number, drag, &ev)
            on:pointerup=release
            on:pointercancel=move |_| drag.set_value(None)
        />
    }
}

fn scrub(number: Number, drag: StoredValue<Option<(Drag, f64)>>, ev: &PointerEvent) {
    let moved = drag.try_update_value(|held| {
        let (drag, from) = held.as_mut()?;
        drag.moved(ev.client_x().into(), ev.client_y().into())
            .map(|steps| (*from, steps))
    });
    if let Some(Some((from, steps))) = moved {
        number.put(number.rules.get_untracked().stepped(from, steps));
    }
}

fn keys(number: Number, ev: &KeyboardEvent) {
    if ev.ctrl_key() || ev.meta_key() || ev.alt_key() {
        return;
    }
    let typing = number.typed.with_untracked(Option::is_some);
    match ev.key().as_str() {
        "ArrowUp" => number.step(1),
        "ArrowDown" => number.step(-1),
        "ArrowRight" if !typing => number.step(1),
        "ArrowLeft" if !typing => number.step(-1),
        "PageUp" => number.go(|rules, from| rules.paged(from, 1)),
        "PageDown" => number.go(|rules, from| rules.paged(from, -1)),
        "Home" if !typing => number.go(|rules, _| rules.min),
        "End" if !typing => number.go(|rules, _| rules.max),
        "Enter" => number.take(),
        "Escape" if typing => number.forget(),
        _ => return,
    }
    ev.prevent_default();
}
