//! A number between a minus and a plus.

use crate::field::FieldError;
use crate::hold_button::HoldButton;
use crate::number::{Rules, Unit};
use crate::number_box::{Number, NumberBox};
use ::words::app::widgets as say;
use leptos::prelude::*;

/// A number changed by steps: tap, hold, drag, arrow keys, or typed straight in.
///
/// Its parts are `{id}` (the number), `{id}-less`, `{id}-more` and `{id}-error`.
#[component]
pub fn Stepper(
    /// The number's id.
    #[prop(into)]
    id: String,
    /// What the number is, in the trade's words.
    #[prop(into)]
    label: String,
    /// The page's value; blank where none.
    #[prop(into)]
    value: Signal<Option<f64>>,
    /// Called with each new value.
    #[prop(into)]
    on_change: Callback<f64>,
    /// One tap.
    #[prop(into)]
    step: Signal<f64>,
    /// The least that stepping reaches.
    min: f64,
    /// The most that stepping reaches.
    max: f64,
    /// Decimals shown.
    #[prop(default = 2)]
    decimals: usize,
    /// Whether the sign always stands.
    #[prop(optional)]
    signed: bool,
    /// What it counts.
    #[prop(optional)]
    unit: Unit,
    /// One page key; four steps unless given.
    #[prop(optional)]
    page: Option<f64>,
    /// What the first tap from blank gives.
    #[prop(optional, into)]
    start: Signal<f64>,
    /// May a typed value stand? The error is the sentence shown. Without it only the ends are kept.
    #[prop(optional, into)]
    check: Option<Callback<f64, Result<f64, String>>>,
    /// Called when the number is emptied and Enter pressed; without it an emptied number comes back.
    #[prop(optional, into)]
    on_clear: Option<Callback<()>>,
    /// A sentence from the page about this value.
    #[prop(optional, into)]
    error: Signal<Option<String>>,
) -> impl IntoView {
    let rules = Signal::derive(move || {
        let step = step.get();
        Rules {
            step,
            page: page.unwrap_or(step * 4.0),
            min,
            max,
            decimals,
            trimmed: false,
            signed,
            round: false,
            unit,
        }
    });
    let (typed, refused) = (RwSignal::new(None), RwSignal::new(None));
    let number = Number {
        value,
        rules,
        start,
        check,
        on_change,
        on_clear,
        typed,
        refused,
    };
    view! {
        <div class="stepper" data-part="stepper">
            <StepperRow id=id.clone() label=label number=number/>
            <FieldError id=format!("{id}-error") error=Signal::derive(move || refused.get().or_else(|| error.get()))/>
        </div>
    }
}

/// Minus, number, plus; also the lower half of the dial.
#[component]
pub(crate) fn StepperRow(id: String, label: String, number: Number) -> impl IntoView {
    // Focus stays on the button that is pressed, so the new value is said aloud from here.
    let aloud = RwSignal::new(String::new());
    let press = move |steps: i32| {
        number.step(steps);
        aloud.set(number.said());
    };
    let at = move |end: fn(Rules) -> f64| {
        Signal::derive(move || {
            let rules = number.rules.get();
            !rules.round && number.value.get() == Some(end(rules))
        })
    };
    let wide = move || number.shown().chars().count().to_string();
    let unit = number.rules.with_untracked(|rules| rules.unit.written());
    view! {
        <div class="stepper-row">
            <HoldButton id=format!("{id}-less") label=say::less(&label) on_step=move |()| press(-1) off=at(|r| r.min)>
                "\u{2212}"
            </HoldButton>
            <div class="stepper-middle">
                <label class="stepper-label" for=id.clone()>{label.clone()}</label>
                <div class="stepper-value">
                    <NumberBox error_id=format!("{id}-error") id=id.clone() number=number/>
                    {(!unit.is_empty()).then(|| view! { <span class="stepper-unit" aria-hidden="true" style:--wide=wide><small>{unit}</small></span> })}
                </div>
            </div>
            <HoldButton id=format!("{id}-more") label=say::more(&label) on_step=move |()| press(1) off=at(|r| r.max)>
                "+"
            </HoldButton>
            <span class="unseen" aria-live="polite">{aloud}</span>
        </div>
    }
}
