//! Sphere, cylinder and axis of one eye.

use crate::axis_dial::AxisDial;
use crate::half::{Half, Lacks};
use crate::icons::AskIcon;
use crate::mark::marked;
use crate::number::Unit;
use crate::stepper::Stepper;
use ::words::app::widgets as say;
use leptos::prelude::*;
use optics::format::power;
use optics::{OutOfRange, SphereCyl, limits};

/// A lens entered by steps, drags or typing. Half a lens is asked about: the page hears of no lens until the numbers are
/// one, and may keep the half of it meanwhile.
///
/// Its parts are `{id}-sphere`, `{id}-cylinder`, `{id}-axis`, `{id}-question`, `{id}-take-last` and `{id}-clear`.
#[component]
pub fn LensField(
    /// The id of the whole.
    #[prop(into)]
    id: String,
    /// Whose lens: "right" or "left".
    #[prop(into)]
    eye: String,
    /// The page's lens.
    #[prop(into)]
    value: Signal<Option<SphereCyl>>,
    /// Called with each whole lens, and with none while it is blank or half entered.
    #[prop(optional, into)]
    on_change: Option<Callback<Option<SphereCyl>>>,
    /// Half a lens to go on from, where the page has no lens.
    #[prop(default = None)]
    begun: Option<Half>,
    /// Called with the numbers after every change, when they are a lens and when they are not.
    #[prop(optional, into)]
    on_half: Option<Callback<Half>>,
    /// Last time's lens.
    #[prop(optional, into)]
    last: Signal<Option<SphereCyl>>,
    /// The trial-lens step, dioptres.
    #[prop(default = Signal::stored(0.25), into)]
    step: Signal<f64>,
) -> impl IntoView {
    let begun = begun.filter(|_| value.with_untracked(Option::is_none));
    let half = RwSignal::new(begun.unwrap_or_else(|| Half::of(value.get_untracked())));
    let told = StoredValue::new(value.get_untracked());
    // The page's lens wins when it is not the one that this field told it of: an undo, or another section.
    Effect::new(move |_| {
        let now = value.get();
        if now != told.get_value() {
            told.set_value(now);
            half.set(Half::of(now));
        }
    });
    let put = move |change: &dyn Fn(&mut Half)| {
        half.update(|half| change(half));
        let now = half.get_untracked();
        let whole = now.whole().ok().flatten();
        // Half a lens stands in place of any other answer that the page may hold.
        if whole != told.get_value() || now.whole().is_err() {
            told.set_value(whole);
            if let Some(on_change) = on_change {
                on_change.run(whole);
            }
        }
        if let Some(on_half) = on_half {
            on_half.run(now);
        }
    };
    let sphere = Signal::derive(move || half.get().sphere);
    // Beside a sphere, a cylinder not yet touched is nought: the first tap on minus gives the first step.
    let cylinder = Signal::derive(move || {
        half.get()
            .cylinder
            .or_else(|| half.get().sphere.map(|_| 0.0))
    });
    let axis = Signal::derive(move || half.get().axis);
    let question = move || half.get().whole().err().map(Lacks::question);
    let last_axis = Signal::derive(move || {
        last.get()
            .and_then(|l| l.cylinder)
            .map(|c| c.axis().degrees())
    });
    let standing = Memo::new(move |_| half.get().standing_cylinder().is_some());
    let [sphere_id, cylinder_id, axis_id] =
        ["sphere", "cylinder", "axis"].map(|part| format!("{id}-{part}"));
    let eye_label = say::eye(&eye);
    view! {
        <section class="lens" id=id.clone() data-part="lens-field" role="group" aria-label=eye_label>
            <LensHead id=id.clone() eye=eye half=half last=last
                take=move || put(&|half| *half = Half::of(last.get_untracked())) clear=move || put(&|half| *half = Half::default())/>
            <Stepper id=sphere_id label=say::sphere() value=sphere step=step min=limits::SPHERE.low max=limits::SPHERE.high signed=true
                page=1.0 unit=Unit::Dioptres check=check(limits::sphere) on_change=move |v| put(&|half| half.sphere = Some(v))
                on_clear=move |()| put(&|half| half.sphere = None)/>
            <Stepper id=cylinder_id label=say::cylinder() value=cylinder step=step min=limits::CYLINDER.low max=limits::CYLINDER.high
                signed=true page=1.0 unit=Unit::Dioptres check=check(limits::cylinder)
                on_change=move |v| put(&|half| half.cylinder = Some(v)) on_clear=move |()| put(&|half| half.cylinder = None)/>
            <Show when=move || standing.get()>
                <AxisDial id=axis_id.clone() label=say::axis() value=axis last=last_axis check=check(limits::axis)
                    cyl=Signal::derive(move || half.get().cylinder.unwrap_or_default())
                    on_change=move |v| put(&|half| half.axis = Some(v))/>
            </Show>
            <div class="lens-question" id=format!("{id}-question") role="status">
                {move || question().map(|words| view! { <p class="notice"><AskIcon/><span>{words}</span></p> })}
            </div>
        </section>
    }
    .into_any()
}

/// A limit as a stepper's check.
fn check(limit: fn(f64) -> Result<f64, OutOfRange>) -> Callback<f64, Result<f64, String>> {
    Callback::new(move |value| limit(value).map_err(|refused| refused.to_string()))
}

/// The eye, the lens as it stands, last time's, and the way to take or clear it.
#[component]
fn LensHead<Take, Clear>(
    id: String,
    eye: String,
    half: RwSignal<Half>,
    last: Signal<Option<SphereCyl>>,
    take: Take,
    clear: Clear,
) -> impl IntoView
where
    Take: Fn() + Copy + Send + Sync + 'static,
    Clear: Fn() + Copy + Send + Sync + 'static,
{
    let blank = move || half.get() == Half::default();
    let (take_id, clear_id) = (
        StoredValue::new(format!("{id}-take-last")),
        format!("{id}-clear"),
    );
    view! {
        <header class="lens-head">
            <span class="eye">{eye}</span>
            <button type="button" class="pill" id=clear_id disabled=blank on:click=move |_| clear()>{say::clear()}</button>
        </header>
        <output class="lens-written" id=format!("{id}-written")>{move || marked(written(half.get()))}</output>
        {move || last.get().map(|lens| view! {
            <p class="lens-last">
                <span>{say::last_time_before()}<b>{marked(lens.to_string())}</b></span>
                <Show when=blank>
                    <button type="button" class="pill" id=take_id.get_value() on:click=move |_| take()>{say::start()}</button>
                </Show>
            </p>
        })}
    }
}

/// The lens, or as much of it as there is, with a question mark where a number is missing.
fn written(half: Half) -> String {
    match half.whole() {
        Ok(Some(lens)) => lens.to_string(),
        Ok(None) => "\u{2014}".to_owned(),
        Err(_) => {
            let sphere = half.sphere.map_or("?".to_owned(), power);
            let cylinder = power(half.cylinder.unwrap_or_default());
            let axis = half
                .axis
                .map_or("?".to_owned(), |axis| optics::format::plain(axis, 1));
            format!("{sphere} / {cylinder} \u{d7} {axis}")
        }
    }
}
