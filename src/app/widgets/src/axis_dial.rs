//! The dial as a control.

use crate::arc::{axis_step, degrees_at, snapped};
use crate::dial::{CENTRE, RIM, SIZE, axis_line, face, last_notch};
use crate::field::FieldError;
use crate::number::Rules;
use crate::number_box::Number;
use crate::stepper::StepperRow;
use leptos::ev::{KeyboardEvent, PointerEvent};
use leptos::prelude::*;

/// An axis, dragged on its half-circle, stepped, or typed.
///
/// Its parts are `{id}` (the slider), `{id}-number` (the typed number), `{id}-number-less`, `{id}-number-more` and
/// `{id}-number-error`.
#[component]
pub fn AxisDial(
    /// The slider's id.
    #[prop(into)]
    id: String,
    /// What it is, such as "axis, right eye".
    #[prop(into)]
    label: String,
    /// The page's axis, degrees.
    #[prop(into)]
    value: Signal<Option<f64>>,
    /// The cylinder's power, dioptres: the larger, the finer the steps.
    #[prop(into)]
    cyl: Signal<f64>,
    /// Called with each new axis, above 0 to 180.
    #[prop(into)]
    on_change: Callback<f64>,
    /// Last time's axis.
    #[prop(optional, into)]
    last: Signal<Option<f64>>,
    /// May a typed axis stand? The error is the sentence shown.
    #[prop(optional, into)]
    check: Option<Callback<f64, Result<f64, String>>>,
) -> impl IntoView {
    let rules = Signal::derive(move || Rules::axis(axis_step(cyl.get())));
    let start = Signal::derive(move || last.get().unwrap_or(90.0));
    let on_change = Callback::new(move |degrees: f64| {
        on_change.run(if degrees <= 0.0 { 180.0 } else { degrees });
    });
    let (typed, refused) = (RwSignal::new(None), RwSignal::new(None));
    let number = Number {
        value,
        rules,
        start,
        check,
        on_change,
        on_clear: None,
        typed,
        refused,
    };
    let typed_id = format!("{id}-number");
    let held = RwSignal::new(false);
    view! {
        <div class="axis-dial" data-part="axis-dial">
            <div class="dial-touch" id=id tabindex="0" role="slider" aria-label=label.clone() aria-valuemin="0" aria-valuemax="180"
                aria-valuenow=move || value.get() aria-valuetext=move || number.said() class:held=held
                on:pointerdown=move |ev| if on_the_ring(&ev) {
                    ev.prevent_default();
                    let _ = event_target::<web_sys::Element>(&ev).set_pointer_capture(ev.pointer_id());
                    held.set(true);
                    point(number, &ev);
                }
                on:pointermove=move |ev| if held.get_untracked() { point(number, &ev) }
                on:pointerup=move |_| held.set(false)
                on:pointercancel=move |_| held.set(false)
                on:keydown={ let typed_id = typed_id.clone(); move |ev| keys(number, &typed_id, &ev) }
            >
                <svg class="dial" viewBox=format!("0 0 {} {}", SIZE.0, SIZE.1) aria-hidden="true">
                    {face()}
                    {move || last.get().map(last_notch)}
                    {move || value.get().map(axis_line)}
                </svg>
            </div>
            <StepperRow id=typed_id.clone() label=label number=number/>
            <FieldError id=format!("{typed_id}-error") error=refused/>
        </div>
    }
    .into_any()
}

/// Where a pointer is, in the drawing's own units.
fn in_drawing(ev: &PointerEvent) -> Option<(f64, f64)> {
    use wasm_bindgen::JsCast;
    let touched = ev.current_target()?.dyn_into::<web_sys::Element>().ok()?;
    let shown = touched.get_bounding_client_rect();
    let scale = SIZE.0 / shown.width();
    Some((
        (f64::from(ev.client_x()) - shown.left()) * scale,
        (f64::from(ev.client_y()) - shown.top()) * scale,
    ))
}

/// Near the centre a hair's breadth is many degrees: a touch there is no answer.
fn on_the_ring(ev: &PointerEvent) -> bool {
    ev.is_primary()
        && ev.button() == 0
        && in_drawing(ev).is_some_and(|at| (at.0 - CENTRE.0).hypot(at.1 - CENTRE.1) > RIM * 0.35)
}

fn point(number: Number, ev: &PointerEvent) {
    if let Some(at) = in_drawing(ev) {
        number.put(snapped(
            degrees_at(CENTRE, at),
            number.rules.get_untracked().step,
        ));
    }
}

/// Arrows turn the way that the degrees run; a digit goes on in the number below.
fn keys(number: Number, typed_id: &str, ev: &KeyboardEvent) {
    if ev.ctrl_key() || ev.meta_key() || ev.alt_key() {
        return;
    }
    match ev.key().as_str() {
        "ArrowUp" | "ArrowRight" => number.step(1),
        "ArrowDown" | "ArrowLeft" => number.step(-1),
        "PageUp" => number.go(|rules, from| rules.paged(from, 1)),
        "PageDown" => number.go(|rules, from| rules.paged(from, -1)),
        // Both ends are one line.
        "Home" | "End" => number.put(180.0),
        digit if digit.len() == 1 && digit.chars().all(|c| c.is_ascii_digit()) => {
            crate::choice::focus(typed_id);
            number.typed.set(Some(digit.to_owned()));
        }
        _ => return,
    }
    ev.prevent_default();
}
