//! What the thumb does: the beam, the streak, the lens.

use super::{Practice, drawn_eye};
use ::words::app::practice as say;
use leptos::prelude::*;
use optics::format::plain;
use optics::retinoscopy::Beam;
use optics::{Meridian, SphereCyl, limits};
use widgets::{AxisDial, Choice, LensField, Pick, Pill, Sheet, Stepper, StreakIcon, Unit};

/// The meridians that one tap reaches.
const AT_HAND: [f64; 4] = [180.0, 45.0, 90.0, 135.0];

#[component]
pub fn Pad(
    /// What is set up.
    practice: RwSignal<Practice>,
    /// Whether the streak moves by itself.
    by_itself: RwSignal<bool>,
    /// Whether the eye is shown.
    shown: RwSignal<bool>,
) -> impl IntoView {
    let sphere = Signal::derive(move || Some(practice.get().lens.sphere));
    let put = move |power| practice.update(|now| now.lens.sphere = power);
    let check = Callback::new(|power| limits::sphere(power).map_err(|error| error.to_string()));
    let another = move |_| {
        practice.update(|now| {
            now.eye = drawn_eye();
            now.lens = SphereCyl::sphere(0.0);
        });
        shown.set(false);
    };
    view! {
        <section class="practice-pad sheet" aria-label=say::scope_and_lens()>
            <Stepper id="lens" label=say::lens_place() value=sphere step=0.25 min=limits::SPHERE.low max=limits::SPHERE.high signed=true
                page=1.0 unit=Unit::Dioptres check=check on_change=put/>
            <TestsChoice practice/>
            <div class="practice-row"><BeamChoice practice/><TurnPill practice/></div>
            <div class="practice-row">
                <CylinderPill practice/>
                <button class="pill" type="button" id="by-itself" aria-pressed=move || by_itself.get().to_string()
                    on:click=move |_| by_itself.update(|moves| *moves = !*moves)>
                    {move || if by_itself.get() { say::hold_streak_still() } else { say::let_streak_sweep() }}
                </button>
                <button class="pill" type="button" id="another-eye" on:click=another>{say::another_eye()}</button>
                <button class="pill" type="button" id="show-eye" aria-pressed=move || shown.get().to_string() on:click=move |_| shown.update(|shown| *shown = !*shown)>
                    {move || if shown.get() { say::hide_eye() } else { say::show_eye() }}
                </button>
            </div>
        </section>
    }
    .into_any()
}

#[component]
fn BeamChoice(practice: RwSignal<Practice>) -> impl IntoView {
    let picks = vec![
        Pick::new(Beam::Normal, say::normal),
        Pick::new(Beam::Reversed, say::reversed),
    ];
    view! {
        <Choice id="beam" label=say::beam() unseen_label=true picks=picks value=Signal::derive(move || Some(practice.get().beam))
            on_change=move |beam| practice.update(|now| now.beam = beam)/>
    }
}

fn turn(practice: RwSignal<Practice>, degrees: f64) {
    // Picks and dial give what is a meridian, and the dial's check refuses the rest.
    if let Ok(meridian) = Meridian::new(degrees) {
        practice.update(|now| now.tests = meridian);
    }
}

#[component]
fn TestsChoice(practice: RwSignal<Practice>) -> impl IntoView {
    let pick = |degrees: f64| {
        let stands = (degrees + 90.0) % 180.0;
        Pick::new(degrees, || plain(degrees, 0)).picture(view! { <StreakIcon stands_at=stands/> })
    };
    let tests = Signal::derive(move || Some(practice.get().tests.degrees()));
    view! {
        <div class="practice-tests">
            <Choice id="tests" label=say::streak_tests() picks=AT_HAND.map(pick).into() value=tests on_change=move |degrees| turn(practice, degrees)/>
        </div>
    }
}

/// The meridian by the degree, on a dial.
#[component]
fn TurnPill(practice: RwSignal<Practice>) -> impl IntoView {
    let open = RwSignal::new(false);
    let tests = Signal::derive(move || Some(practice.get().tests.degrees()));
    let check =
        Callback::new(|degrees| limits::meridian(degrees).map_err(|error| error.to_string()));
    let stands = Signal::derive(move || {
        let now = practice.get().tests;
        say::tests_at(&plain(now.degrees(), 1), &plain(now.streak_degrees(), 1))
    });
    view! {
        <Pill id="turn" label=say::tests() value=stands on_press=move |()| open.set(true)/>
        <Sheet id="turn-sheet" title=say::which_meridian_does_streak_test() open=open on_close=move |()| open.set(false)>
            <AxisDial id="meridian" label=say::tests() value=tests check=check cyl=Signal::stored(0.0) on_change=move |degrees| turn(practice, degrees)/>
        </Sheet>
    }
}

/// A cylinder in the frame beside the sphere.
#[component]
fn CylinderPill(practice: RwSignal<Practice>) -> impl IntoView {
    let open = RwSignal::new(false);
    let lens = Signal::derive(move || Some(practice.get().lens));
    let written = Signal::derive(move || {
        let cylinder = practice.get().lens.cylinder;
        cylinder.map_or_else(
            || say::none().into(),
            |cylinder| {
                format!(
                    "{} \u{d7} {}",
                    optics::format::power(cylinder.power()),
                    plain(cylinder.axis().degrees(), 1)
                )
            },
        )
    });
    let put = move |lens: Option<SphereCyl>| {
        practice.update(|now| now.lens = lens.unwrap_or(SphereCyl::sphere(0.0)));
    };
    view! {
        <Pill id="cylinder" label=say::cylinder() value=written on_press=move |()| open.set(true)/>
        <Sheet id="cylinder-sheet" title=say::lens_frame() open=open on_close=move |()| open.set(false)>
            <LensField id="frame" eye=say::frame() value=lens on_change=put/>
        </Sheet>
    }
}
