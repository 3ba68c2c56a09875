//! The reflex as it looks: an eye, the patch of light that sweeps over it, and what lights up in the pupil.

use crate::eye_picture::{Band, HALF_HEIGHT, HALF_WIDTH, along};
use leptos::ev::{KeyboardEvent, PointerEvent};
use leptos::prelude::*;

/// How the band of light looks, wherever it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Glow {
    /// Along which direction the band moves, degrees anticlockwise from the right.
    pub across: f64,
    /// How bright, 0 to 1.
    pub brightness: f64,
    /// How far it fades beyond its edges, millimetres.
    pub softness: f64,
}

/// One key moves the streak so many millimetres.
const KEY_MM: f64 = 0.5;

/// An eye under the streak. Dragged over, or with the arrow keys, the streak moves along the meridian that it tests.
#[component]
pub fn Reflex(
    /// The picture's id.
    #[prop(into)]
    id: String,
    /// What it is, for a screen reader.
    #[prop(into)]
    label: String,
    /// The pupil, millimetres.
    #[prop(into)]
    pupil_mm: Signal<f64>,
    /// Along which direction the streak moves, degrees anticlockwise from the right, −45 to 135.
    #[prop(into)]
    sweeps_along: Signal<f64>,
    /// Where the middle of the streak is, millimetres from the pupil's.
    #[prop(into)]
    streak_mm: Signal<f64>,
    /// Half the patch of light on the face.
    patch_half_mm: f64,
    /// How far the streak goes either way.
    #[prop(into)]
    reach_mm: Signal<f64>,
    /// What of the pupil is lit; nothing where it is dark.
    #[prop(into)]
    band: Signal<Option<Band>>,
    /// How that looks.
    #[prop(into)]
    glow: Signal<Glow>,
    /// What is seen, in words.
    #[prop(into)]
    said: Signal<String>,
    /// Called with where the streak is moved to.
    #[prop(into)]
    on_move: Callback<f64>,
) -> impl IntoView {
    let held = RwSignal::new(false);
    let to = move |mm: f64| {
        let reach = reach_mm.get_untracked();
        on_move.run(mm.clamp(-reach, reach));
    };
    let point = move |ev: &PointerEvent| {
        if let Some(at) = in_drawing(ev) {
            to(along(sweeps_along.get_untracked(), at));
        }
    };
    let keys = move |ev: KeyboardEvent| {
        let (now, reach) = (streak_mm.get_untracked(), reach_mm.get_untracked());
        let next = match ev.key().as_str() {
            "ArrowRight" | "ArrowUp" => now + KEY_MM,
            "ArrowLeft" | "ArrowDown" => now - KEY_MM,
            "Home" => -reach,
            "End" => reach,
            _ => return,
        };
        ev.prevent_default();
        to(next);
    };
    let at = Memo::new(move |_| streak_mm.get().round());
    view! {
        <div class="reflex" id=id data-part="reflex" tabindex="0" role="slider" aria-label=label
            aria-valuemin=move || -reach_mm.get() aria-valuemax=move || reach_mm.get() aria-valuenow=at aria-valuetext=said class:held=held
            on:pointerdown=move |ev| if ev.is_primary() && ev.button() == 0 {
                let _ = event_target::<web_sys::Element>(&ev).set_pointer_capture(ev.pointer_id());
                held.set(true);
                point(&ev);
            }
            on:pointermove=move |ev| if held.get_untracked() { point(&ev) }
            on:pointerup=move |_| held.set(false) on:pointercancel=move |_| held.set(false) on:keydown=keys
        >
            <div class="reflex-patch" style:border-left-width=mm(patch_half_mm * 2.0) style:margin-left=mm(-patch_half_mm)
                style:transform=move || format!("{} {}", turned(sweeps_along.get()), moved(streak_mm.get()))></div>
            {face(pupil_mm)}
            {lit(pupil_mm, band, glow)}
        </div>
    }
    .into_any()
}

/// The lids and the iris over the patch, and the dark pupil.
fn face(pupil_mm: Signal<f64>) -> impl IntoView {
    view! {
        <svg viewBox=format!("{} {} {} {}", -HALF_WIDTH, -HALF_HEIGHT, HALF_WIDTH * 2.0, HALF_HEIGHT * 2.0) aria-hidden="true">
            <path class="reflex-lid" d="M -12 0.6 Q -1 -11.4 12 0.2 Q 1 11.4 -12 0.6 Z"/>
            <circle class="reflex-rim" r="5.7"/>
            <circle class="reflex-pupil" r=move || pupil_mm.get() / 2.0/>
        </svg>
    }
}

/// The band in three layers, the widest the faintest: an edge that fades, at the price of three boxes. What moves is only
/// ever transformed, so that no frame lays the page out or draws the eye again.
fn lit(pupil_mm: Signal<f64>, band: Signal<Option<Band>>, glow: Signal<Glow>) -> impl IntoView {
    let band = Memo::new(move |_| band.get());
    let layers = [
        ("reflex-light reflex-fringe", 1.0),
        ("reflex-light reflex-fringe", 0.5),
        ("reflex-light", 0.0),
    ];
    let layers = layers.map(|(class, share)| {
        let shape = move || {
            let band = band.get()?.wider(share * glow.get().softness);
            Some(format!("{} scaleX({:.4})", moved(band.from), band.width()))
        };
        view! { <div class=class style:transform=move || shape().unwrap_or_else(|| "scaleX(0)".into())></div> }
    });
    let size = move || mm(pupil_mm.get());
    let back = move || mm(-pupil_mm.get() / 2.0);
    view! {
        <div class="reflex-in" style:width=size style:height=size style:margin-left=back style:margin-top=back>
            <div class="reflex-turned" style:transform=move || turned(glow.get().across) style:opacity=move || format!("{:.3}", glow.get().brightness)>
                {layers.into_iter().collect_view()}
            </div>
        </div>
    }
}

/// A length in the picture, as a share of its width.
fn mm(length: f64) -> String {
    format!("{:.3}cqw", length * 100.0 / (HALF_WIDTH * 2.0))
}

fn turned(degrees: f64) -> String {
    format!("rotate({:.2}deg)", -degrees)
}

fn moved(by_mm: f64) -> String {
    format!("translateX({})", mm(by_mm))
}

/// Where a pointer is, in millimetres from the middle.
fn in_drawing(ev: &PointerEvent) -> Option<(f64, f64)> {
    use wasm_bindgen::JsCast;
    let touched = ev.current_target()?.dyn_into::<web_sys::Element>().ok()?;
    let shown = touched.get_bounding_client_rect();
    let scale = HALF_WIDTH * 2.0 / shown.width();
    Some((
        (f64::from(ev.client_x()) - shown.left()) * scale - HALF_WIDTH,
        (f64::from(ev.client_y()) - shown.top()) * scale - HALF_HEIGHT,
    ))
}
