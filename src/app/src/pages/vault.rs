//! The vault and this tablet's habits.

use super::exam::setup::far_unit;
use super::home::HomeSheet;
use super::keeping::ToKeeping;
use super::keys::KeysSheets;
use super::readiness::Readiness;
use crate::edge::prefs::Palette;
use crate::shell::{TopBar, app};
use ::words::app::pages as say;
use leptos::prelude::*;
use optics::{OutOfRange, limits};
use widgets::{Choice, Pick, Stepper, Unit};

/// The page.
#[component]
pub fn VaultPage() -> impl IntoView {
    view! {
        <TopBar title=say::vault()><a class="pill" href="/">{say::rounds()}</a></TopBar>
        <main class="page">
            <Readiness/>
            <HomeSheet/>
            <KeysSheets/>
            <Locking/>
            <Looks/>
            <Habits/>
            <p><a class="pill" id="vault-to-log" href="/log">{say::visit_log()}</a></p>
            <p class="writes"><a class="pill" id="vault-to-earlier" href="/earlier">{say::earlier_findings()}</a></p>
            <p><a class="pill" id="to-settings" href="/settings">{say::settings()}</a></p>
            <ToKeeping/>
            <p><a class="pill" id="to-practice" href=super::practice::PATH>{say::practise()}</a></p>
            <p class="soft">{say::kept_in_clear()}</p>
            <p class="soft"><a href="/licences/Apache-2.0.txt">"Apache-2.0"</a>{say::licence_or()}<a href="/licences/MIT.txt">"MIT"</a>{say::licence_type()}<a href="/licences/OFL-1.1.txt">"OFL-1.1"</a></p>
        </main>
    }
}

#[component]
fn Locking() -> impl IntoView {
    let app = app();
    let minutes = [1, 5, 15, 30]
        .map(|minutes| Pick::new(minutes * 60, || say::minutes(&minutes)))
        .into();
    view! {
        <section class="sheet">
            <h2>{say::locking()}</h2>
            <p id="signer">{move || app.door.examiner.get().map(|name| say::signs_as(&name))}</p>
            <Choice id="idle" label=say::locks_itself_untouched() picks=minutes value=Signal::derive(move || Some(app.habits.get().idle_seconds))
                on_change=move |seconds| app.habits.update(|habits| habits.idle_seconds = seconds)/>
            <button class="act" type="button" id="lock-now" on:click=move |_| app.door.lock(None)>{say::lock_now()}</button>
        </section>
    }
}

#[component]
fn Looks() -> impl IntoView {
    let habits = app().habits;
    let palettes = vec![
        Pick::new(Palette::Day, say::day),
        Pick::new(Palette::Night, say::night),
    ];
    view! {
        <section class="sheet">
            <h2>{say::light()}</h2>
            <Choice id="palette-choice" label=say::palette() picks=palettes value=Signal::derive(move || Some(habits.get().palette))
                on_change=move |palette| habits.update(|habits| habits.palette = palette)/>
            <Stepper id="dim" label=say::night_brightness() value=Signal::derive(move || Some((habits.get().dim * 100.0).round())) step=10.0 min=40.0 max=100.0
                decimals=0 on_change=move |percent: f64| habits.update(|habits| habits.dim = percent / 100.0)/>
        </section>
    }
}

#[component]
fn Habits() -> impl IntoView {
    let habits = app().habits;
    let manner = crate::words::manner();
    let (foot, (far, _)) = (manner.far.in_metres(), far_unit(manner.far));
    view! {
        <section class="sheet">
            <h2>{say::usual_for_you()}</h2>
            <Length id="usual-distance" label=say::working_distance() unit=Unit::Centimetres step=1.0 limit=limits::DISTANCE_CM check=limits::distance_cm
                value=Signal::derive(move || habits.get().working_distance_cm) on_change=move |cm| habits.update(|habits| habits.working_distance_cm = cm)/>
            <Length id="usual-spacing" label=say::cells_apart() unit=Unit::Millimetres step=0.5 limit=limits::CELL_SPACING_MM check=limits::cell_spacing_mm
                value=Signal::derive(move || habits.get().cell_spacing_mm) on_change=move |mm| habits.update(|habits| habits.cell_spacing_mm = mm)/>
            <Length id="usual-chart" label=say::chart_made() unit=far per_unit=foot step=0.5 limit=limits::CHART_M check=limits::chart_m
                value=Signal::derive(move || habits.get().chart_made_for_m) on_change=move |m| habits.update(|habits| habits.chart_made_for_m = m)/>
            <Length id="usual-chart-at" label=say::chart_used() unit=far per_unit=foot step=0.5 limit=limits::CHART_M check=limits::chart_m
                value=Signal::derive(move || habits.get().chart_used_at_m) on_change=move |m| habits.update(|habits| habits.chart_used_at_m = m)/>
            <Length id="usual-vertex" label=say::vertex_distance() unit=Unit::Millimetres step=1.0 limit=limits::VERTEX_MM check=limits::vertex_mm
                value=Signal::derive(move || habits.get().vertex_mm) on_change=move |mm| habits.update(|habits| habits.vertex_mm = mm)/>
        </section>
    }
}

#[component]
fn Length(
    id: &'static str,
    label: &'static str,
    unit: Unit,
    #[prop(default = 1.0)] per_unit: f64,
    step: f64,
    limit: limits::Limit,
    check: fn(f64) -> Result<f64, OutOfRange>,
    value: Signal<f64>,
    #[prop(into)] on_change: Callback<f64>,
) -> impl IntoView {
    let checked = Callback::new(move |length: f64| {
        let checked = check(length * per_unit).map(|_| length);
        checked.map_err(|error| error.to_string())
    });
    view! {
        <Stepper id=id label=label value=Signal::derive(move || Some(value.get() / per_unit)) step=step decimals=1 min=limit.low / per_unit max=limit.high / per_unit
            unit=unit check=checked on_change=move |length: f64| on_change.run(length * per_unit)/>
    }
}
