//! The set-up of retinoscopy on its pills: how far, with which lens in the frame, in which cell.

use super::setup::LengthPill;
use crate::shell::app;
use crate::words;
use ::words::{Language, app::exam as say, in_language};
use leptos::prelude::*;
use optics::cells::Cell;
use optics::retinoscopy::{Setup, WorkingDistance, WorkingLens};
use optics::{CylinderSign, Step, limits};
use widgets::{Choice, Pick, Pill, Sheet, Stepper, Unit};

/// Distance, working lens and cells; each stands on its pill and opens with one tap.
#[component]
pub fn SetupPills(
    /// The set-up now.
    setup: Signal<Setup>,
    /// Called with every change.
    on_change: Callback<Setup>,
) -> impl IntoView {
    let put_distance = move |cm: f64| {
        // The stepper's own check has refused what is no distance.
        if let Ok(distance) = WorkingDistance::from_cm(cm) {
            on_change.run(Setup {
                distance,
                ..setup.get_untracked()
            });
        }
    };
    let put_spacing = move |cell_spacing_mm| {
        on_change.run(Setup {
            cell_spacing_mm,
            ..setup.get_untracked()
        })
    };
    let cm = limits::DISTANCE_CM;
    view! {
            <LengthPill id="distance" label="" title=say::working_distance() value=Signal::derive(move || setup.get().distance.cm()) unit=Unit::Centimetres step=1.0
                ends=(cm.low, cm.high) check=limits::distance_cm on_change=put_distance
                beside=Signal::derive(move || words::dioptres(setup.get().distance.dioptres()))/>
            <LensPill setup on_change/>
            <TrialPill setup on_change/>
            <Show when=move || setup.get().working_lens.is_some()>
                <LengthPill id="spacing" label=say::cells_apart() value=Signal::derive(move || setup.get().cell_spacing_mm)
                    unit=Unit::Millimetres step=0.5 ends=(0.0, 10.0) decimals=1 check=limits::cell_spacing_mm on_change=put_spacing/>
            </Show>
    }
}

/// Step of the trial lenses, and the sign of the cylinders: while working, and as results are written.
#[component]
fn TrialPill(setup: Signal<Setup>, on_change: Callback<Setup>) -> impl IntoView {
    let open = RwSignal::new(false);
    let habits = app().habits;
    let shown = Signal::derive(move || {
        let now = setup.get();
        say::trial_lenses_now(&now.cylinders.said(), &step_word(now.step))
    });
    let signs = || {
        CylinderSign::ALL
            .map(|sign| Pick::new(sign, || sign.said()))
            .into()
    };
    let steps = || {
        Step::ALL
            .map(|step| Pick::new(step, || step_word(step)))
            .into()
    };
    let put_sign = move |cylinders| {
        on_change.run(Setup {
            cylinders,
            ..setup.get_untracked()
        })
    };
    let put_step = move |step| {
        on_change.run(Setup {
            step,
            ..setup.get_untracked()
        })
    };
    view! {
        <Pill id="trial" label="" value=shown on_press=move |()| open.set(true)/>
        <Sheet id="trial-sheet" title=say::which_trial_lenses() open=open on_close=move |()| open.set(false)>
            <Choice id="sign-working" label=say::sign_working() picks=signs() value=Signal::derive(move || Some(setup.get().cylinders)) on_change=put_sign/>
            <Choice id="sign-written" label=say::sign_written() picks=signs() value=Signal::derive(move || Some(habits.get().written))
                on_change=move |sign| habits.update(|habits| habits.written = sign)/>
            <Choice id="step" label=say::one_step() picks=steps() value=Signal::derive(move || Some(setup.get().step)) on_change=put_step/>
        </Sheet>
    }
    .into_any()
}

/// As the trade writes it: an eighth is 0.12.
const fn step_word(step: Step) -> &'static str {
    match step {
        Step::Quarter => "0.25",
        Step::Eighth => "0.12",
    }
}

#[component]
fn LensPill(setup: Signal<Setup>, on_change: Callback<Setup>) -> impl IntoView {
    let open = RwSignal::new(false);
    let shown = Signal::derive(move || match setup.get().working_lens {
        None => say::off_at_end().to_owned(),
        Some(lens) => say::lens_in_cell(&optics::format::power(lens.power()), &lens.cell()),
    });
    view! {
        <Pill id="working-lens" value=shown on_press=move |()| open.set(true)/>
        <Sheet id="working-lens-sheet" title=say::how_distance_allowed() open=open on_close=move |()| open.set(false)>
            <LensChoice setup on_change/>
        </Sheet>
    }
    .into_any()
}

#[component]
fn LensChoice(setup: Signal<Setup>, on_change: Callback<Setup>) -> impl IntoView {
    let in_frame = Signal::derive(move || setup.get().working_lens);
    let put = move |working_lens| {
        on_change.run(Setup {
            working_lens,
            ..setup.get_untracked()
        })
    };
    let usual =
        move || WorkingLens::new(setup.get_untracked().distance.usual_dioptres(), Cell::Front).ok();
    let change = move |power: f64, cell: Cell| {
        if let Ok(lens) = WorkingLens::new(power, cell) {
            put(Some(lens));
        }
    };
    let ways = vec![
        Pick::new(false, say::taken_off_end).slug("off"),
        Pick::new(true, say::lens_frame).slug("in"),
    ];
    let cells = Cell::ALL
        .map(|cell| {
            let slug = in_language(Language::English, || cell.to_string());
            Pick::new(cell, || say::cell(&cell)).slug(slug)
        })
        .into();
    let check =
        Callback::new(|power| limits::working_lens(power).map_err(|error| error.to_string()));
    let power = Signal::derive(move || in_frame.get().map(WorkingLens::power));
    let cell = Signal::derive(move || in_frame.get().map(WorkingLens::cell));
    view! {
        <Choice id="allowed" label=say::distance_allowed() unseen_label=true picks=ways
            value=Signal::derive(move || Some(in_frame.get().is_some()))
            on_change=move |with_lens: bool| put(if with_lens { in_frame.get_untracked().or_else(usual) } else { None })/>
        <div class:hidden=move || in_frame.get().is_none()>
            <Stepper id="working-lens-power" label=say::working_lens() value=power step=0.25 min=limits::WORKING_LENS.low
                max=limits::WORKING_LENS.high signed=true unit=Unit::Dioptres check=check
                on_change=move |power| change(power, cell.get_untracked().unwrap_or_default())/>
            <Choice id="working-lens-cell" label=say::stands() picks=cells value=cell
                on_change=move |cell| change(power.get_untracked().unwrap_or(1.5), cell)/>
        </div>
    }
}
