//! The vault and this tablet's habits.

use super::readiness::Readiness;
use crate::edge::prefs::Palette;
use crate::shell::{TopBar, app};
use leptos::prelude::*;
use optics::{OutOfRange, limits};
use widgets::{Choice, Pick, Stepper, Unit};

/// The page.
#[component]
pub fn VaultPage() -> impl IntoView {
    view! {
        <TopBar title="Vault"><a class="pill" href="/">"Rounds"</a></TopBar>
        <main class="page">
            <Readiness/>
            <Locking/>
            <Looks/>
            <Habits/>
            <p><a class="pill" id="to-practice" href=super::practice::PATH>"practise with a drawn reflex"</a></p>
            <p class="soft">"Light, distances and habits are kept in the clear on this tablet. Nothing about a person is."</p>
            <p class="soft"><a href="/licences/Apache-2.0.txt">"Apache-2.0"</a>" or "<a href="/licences/MIT.txt">"MIT"</a>" · type: "<a href="/licences/OFL-1.1.txt">"OFL-1.1"</a></p>
        </main>
    }
}

#[component]
fn Locking() -> impl IntoView {
    let app = app();
    let minutes = [1, 5, 15, 30]
        .map(|minutes| Pick::new(minutes * 60, format!("{minutes} min")))
        .into();
    view! {
        <section class="sheet">
            <h2>"Locking"</h2>
            <p id="signer">{move || app.door.examiner.get().map(|name| format!("Signs as {name}."))}</p>
            <Choice id="idle" label="locks itself untouched for" picks=minutes value=Signal::derive(move || Some(app.habits.get().idle_seconds))
                on_change=move |seconds| app.habits.update(|habits| habits.idle_seconds = seconds)/>
            <button class="act" type="button" id="lock-now" on:click=move |_| app.door.lock(None)>"Lock now"</button>
        </section>
    }
}

#[component]
fn Looks() -> impl IntoView {
    let habits = app().habits;
    let palettes = vec![
        Pick::new(Palette::Day, "Day"),
        Pick::new(Palette::Night, "Night"),
    ];
    view! {
        <section class="sheet">
            <h2>"Light"</h2>
            <Choice id="palette-choice" label="palette" picks=palettes value=Signal::derive(move || Some(habits.get().palette))
                on_change=move |palette| habits.update(|habits| habits.palette = palette)/>
            <Stepper id="dim" label="brightness at night, per cent" value=Signal::derive(move || Some((habits.get().dim * 100.0).round())) step=10.0 min=40.0 max=100.0
                decimals=0 on_change=move |percent: f64| habits.update(|habits| habits.dim = percent / 100.0)/>
        </section>
    }
}

#[component]
fn Habits() -> impl IntoView {
    let habits = app().habits;
    view! {
        <section class="sheet">
            <h2>"What is usual for you"</h2>
            <Length id="usual-distance" label="working distance" unit=Unit::Centimetres step=1.0 limit=limits::DISTANCE_CM check=limits::distance_cm
                value=Signal::derive(move || habits.get().working_distance_cm) on_change=move |cm| habits.update(|habits| habits.working_distance_cm = cm)/>
            <Length id="usual-spacing" label="trial frame cells apart" unit=Unit::Millimetres step=0.5 limit=limits::CELL_SPACING_MM check=limits::cell_spacing_mm
                value=Signal::derive(move || habits.get().cell_spacing_mm) on_change=move |mm| habits.update(|habits| habits.cell_spacing_mm = mm)/>
            <Length id="usual-chart" label="chart made for" unit=Unit::Metres step=0.5 limit=limits::CHART_M check=limits::chart_m
                value=Signal::derive(move || habits.get().chart_made_for_m) on_change=move |m| habits.update(|habits| habits.chart_made_for_m = m)/>
            <Length id="usual-chart-at" label="chart used at" unit=Unit::Metres step=0.5 limit=limits::CHART_M check=limits::chart_m
                value=Signal::derive(move || habits.get().chart_used_at_m) on_change=move |m| habits.update(|habits| habits.chart_used_at_m = m)/>
            <Length id="usual-vertex" label="vertex distance" unit=Unit::Millimetres step=1.0 limit=limits::VERTEX_MM check=limits::vertex_mm
                value=Signal::derive(move || habits.get().vertex_mm) on_change=move |mm| habits.update(|habits| habits.vertex_mm = mm)/>
        </section>
    }
}

#[component]
fn Length(
    id: &'static str,
    label: &'static str,
    unit: Unit,
    step: f64,
    limit: limits::Limit,
    check: fn(f64) -> Result<f64, OutOfRange>,
    value: Signal<f64>,
    #[prop(into)] on_change: Callback<f64>,
) -> impl IntoView {
    let checked = Callback::new(move |length| check(length).map_err(|error| error.to_string()));
    view! {
        <Stepper id=id label=label value=Signal::derive(move || Some(value.get())) step=step decimals=1 min=limit.low max=limit.high unit=unit check=checked on_change=on_change/>
    }
}
