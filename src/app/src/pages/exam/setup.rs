//! Set-up pills: what is set stands on the pill, and one tap opens it.

use crate::shell::app;
use crate::words;
use ::words::app::exam as say;
use leptos::prelude::*;
use optics::OutOfRange;
use optics::format::plain;
use record::FarUnit;
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
    /// One of it in the unit of the value.
    #[prop(default = 1.0)]
    per_unit: f64,
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
    let shown = Signal::derive(move || match unit {
        Unit::Metres | Unit::Feet => words::far(value.get()),
        unit => words::number(&format!("{} {}", plain(value.get(), 2), unit.written())),
    });
    // What is kept is in the record's unit; the stepper counts in the reader's.
    let checked = Callback::new(move |length: f64| {
        let checked = check(length * per_unit).map(|_| length);
        checked.map_err(|error| error.to_string())
    });
    let stepped = move |length: f64| on_change.run(length * per_unit);
    view! {
        <Pill id=id label=label value=shown beside=beside on_press=move |()| open.set(true)/>
        <Sheet id=format!("{id}-sheet") title=title open=open on_close=move |()| open.set(false)>
            <Stepper id=format!("{id}-value") label=title value=Signal::derive(move || Some(value.get() / per_unit)) step=step
                min=ends.0 / per_unit max=ends.1 / per_unit decimals=decimals unit=unit check=checked on_change=stepped/>
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
    let far = words::manner().far;
    let (unit, decimals) = far_unit(far);
    view! { <LengthPill id label value unit per_unit=far.in_metres() step=0.5 ends decimals check on_change/> }
}

/// The stepper's unit for a chart's distance, and its decimals.
pub fn far_unit(far: FarUnit) -> (Unit, usize) {
    match far {
        FarUnit::Metres => (Unit::Metres, 2),
        FarUnit::Feet => (Unit::Feet, 1),
    }
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
                <LengthPill id="vertex" label=say::vertex() value=Signal::derive(move || stated.get().unwrap_or(usual)) unit=Unit::Millimetres step=1.0
                    ends=(mm.low, mm.high) check=optics::limits::vertex_mm on_change=on_change/>
            }.into_any()
        } else {
            view! { <Pill id="vertex" label=say::vertex() value=crate::words::NOTHING on_press=move |()| on_change.run(usual)/> }.into_any()
        }}
    }
}
