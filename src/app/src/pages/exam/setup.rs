//! Set-up pills: what is set stands on the pill, and one tap opens it.

use crate::shell::app;
use leptos::prelude::*;
use optics::OutOfRange;
use optics::format::plain;
use widgets::{Pill, Sheet, Stepper, Unit};

/// A length on a pill, changed on a sheet of its own.
#[component]
pub fn LengthPill(
    /// The pill's id; the number on its sheet is `{id}-value`.
    id: &'static str,
    /// What is measured, on the pill; may be empty where the length says it.
    label: &'static str,
    /// What is measured, on the sheet.
    #[prop(default = label)]
    title: &'static str,
    /// The length now.
    #[prop(into)]
    value: Signal<f64>,
    /// What it is measured in.
    unit: Unit,
    /// One tap of the stepper.
    step: f64,
    /// The ends of the stepper.
    ends: (f64, f64),
    /// Decimals shown.
    #[prop(optional)]
    decimals: usize,
    /// May it stand? The error is the sentence shown.
    check: fn(f64) -> Result<f64, OutOfRange>,
    /// A softer word after the length.
    #[prop(optional, into)]
    beside: Signal<String>,
    /// Called with each new length.
    #[prop(into)]
    on_change: Callback<f64>,
) -> impl IntoView {
    let open = RwSignal::new(false);
    let shown = Signal::derive(move || format!("{} {}", plain(value.get(), 2), unit.written()));
    let checked = Callback::new(move |length| check(length).map_err(|error| error.to_string()));
    view! {
        <Pill id=id label=label value=shown beside=beside on_press=move |()| open.set(true)/>
        <Sheet id=format!("{id}-sheet") title=title open=open on_close=move |()| open.set(false)>
            <Stepper id=format!("{id}-value") label=title value=Signal::derive(move || Some(value.get())) step=step
                min=ends.0 max=ends.1 decimals=decimals unit=unit check=checked on_change=on_change/>
        </Sheet>
    }
    .into_any()
}

/// A distance in metres: of a chart, from the eye.
#[component]
pub fn Metres(
    /// The pill's id.
    id: &'static str,
    /// What is measured.
    label: &'static str,
    /// The distance now.
    #[prop(into)]
    value: Signal<f64>,
    /// May it stand?
    check: fn(f64) -> Result<f64, OutOfRange>,
    /// Called with each new distance.
    #[prop(into)]
    on_change: Callback<f64>,
) -> impl IntoView {
    let ends = (0.5, optics::limits::CHART_M.high);
    view! { <LengthPill id label value unit=Unit::Metres step=0.5 ends decimals=2 check on_change/> }
}

/// From the back of the trial lens to the cornea, where it was measured. The first tap takes what is usual.
#[component]
pub fn VertexPill(
    /// As it stands.
    #[prop(into)]
    stated: Signal<Option<f64>>,
    /// Called with each new distance, in millimetres.
    #[prop(into)]
    on_change: Callback<f64>,
) -> impl IntoView {
    let usual = app().habits.get_untracked().vertex_mm;
    let mm = optics::limits::VERTEX_MM;
    let measured = Memo::new(move |_| stated.get().is_some());
    view! {
        {move || if measured.get() {
            view! {
                <LengthPill id="vertex" label="vertex" value=Signal::derive(move || stated.get().unwrap_or(usual)) unit=Unit::Millimetres step=1.0
                    ends=(mm.low, mm.high) check=optics::limits::vertex_mm on_change=on_change/>
            }.into_any()
        } else {
            view! { <Pill id="vertex" label="vertex" value=crate::words::NOTHING on_press=move |()| on_change.run(usual)/> }.into_any()
        }}
    }
}
