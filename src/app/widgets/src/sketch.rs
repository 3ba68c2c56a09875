//! A drawing made with a pen or a finger, stroke by stroke.

use leptos::ev::PointerEvent;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// A point: to the right and down in ten-thousandths of the width, and how hard, 0 to 255.
pub type Dot = (u16, u16, u8);

const WIDTH: f64 = 10_000.0;

/// Points nearer than this say nothing new.
const APART: f64 = 40.0;

/// A pointer that does not say how hard it presses counts as so hard.
const ORDINARY: u8 = 128;

/// A stroke that is being drawn.
#[derive(Clone, Copy)]
struct Hand {
    /// The pointer that draws; others are ignored meanwhile.
    pointer: RwSignal<Option<i32>>,
    /// Whether a pen was ever seen here: a palm draws nothing beside it.
    pen: StoredValue<bool>,
    dots: RwSignal<Vec<Dot>>,
}

/// A square to draw on. Without `on_stroke` it is only looked at.
#[component]
pub fn SketchPad(
    /// The pad's id.
    #[prop(into)]
    id: String,
    /// What it shows, for whoever can't see it.
    #[prop(into)]
    label: Signal<String>,
    /// What is drawn over, in a square of ten thousand.
    outline: AnyView,
    /// The strokes.
    #[prop(into)]
    strokes: Signal<Vec<Vec<Dot>>>,
    /// Called with each new stroke.
    #[prop(optional, into)]
    on_stroke: Option<Callback<Vec<Dot>>>,
) -> impl IntoView {
    let hand = Hand {
        pointer: RwSignal::new(None),
        pen: StoredValue::new(false),
        dots: RwSignal::new(Vec::new()),
    };
    let finish = move |ev: PointerEvent, keep: bool| {
        if hand.pointer.get_untracked() == Some(ev.pointer_id()) {
            hand.pointer.set(None);
            let dots = hand.dots.try_update(std::mem::take).unwrap_or_default();
            if let (true, false, Some(on_stroke)) = (keep, dots.is_empty(), on_stroke) {
                on_stroke.run(dots);
            }
        }
    };
    let down = move |ev: PointerEvent| {
        if on_stroke.is_some() {
            begin(hand, &ev);
        }
    };
    let drawn =
        move || strokes.with(|strokes| strokes.iter().map(|dots| stroke(dots)).collect_view());
    view! {
        <div class="sketch-pad" class:drawable=on_stroke.is_some() id=id role="img" aria-label=label
            on:pointerdown=down on:pointermove=move |ev| go_on(hand, &ev)
            on:pointerup=move |ev| finish(ev, true) on:pointercancel=move |ev| finish(ev, false)>
            <svg viewBox="0 0 10000 10000" aria-hidden="true">
                <g class="sketch-outline">{outline}</g>
                <g class="sketch-strokes">{drawn}{move || hand.dots.with(|dots| stroke(dots))}</g>
            </svg>
        </div>
    }
    .into_any()
}

fn begin(hand: Hand, ev: &PointerEvent) {
    let pen = ev.pointer_type() == "pen";
    // A pen takes over from a palm that came first.
    if ev.button() != 0 || (!pen && (hand.pointer.get_untracked().is_some() || palm(hand, ev))) {
        return;
    }
    ev.prevent_default();
    hand.pen.update_value(|seen| *seen |= pen);
    if let Some(pad) = pad(ev) {
        let _ = pad.set_pointer_capture(ev.pointer_id());
    }
    hand.pointer.set(Some(ev.pointer_id()));
    hand.dots.set(dot(ev).into_iter().collect());
}

fn palm(hand: Hand, ev: &PointerEvent) -> bool {
    ev.pointer_type() == "touch" && hand.pen.get_value()
}

fn go_on(hand: Hand, ev: &PointerEvent) {
    if hand.pointer.get_untracked() != Some(ev.pointer_id()) {
        return;
    }
    let Some(next) = dot(ev) else { return };
    let far = hand
        .dots
        .with_untracked(|dots| dots.last().is_none_or(|last| distance(*last, next) > APART));
    if far {
        hand.dots.update(|dots| dots.push(next));
    }
}

fn distance(one: Dot, other: Dot) -> f64 {
    let along = |a: u16, b: u16| f64::from(a) - f64::from(b);
    along(one.0, other.0).hypot(along(one.1, other.1))
}

fn pad(ev: &PointerEvent) -> Option<web_sys::Element> {
    ev.current_target()?.dyn_into().ok()
}

fn dot(ev: &PointerEvent) -> Option<Dot> {
    let shown = pad(ev)?.get_bounding_client_rect();
    let place = |at: i32, from: f64, size: f64| {
        ((f64::from(at) - from) / size * WIDTH).clamp(0.0, WIDTH) as u16
    };
    let pressure = match ev.pressure() {
        hard if hard > 0.0 => (hard * 255.0) as u8,
        _ => ORDINARY,
    };
    Some((
        place(ev.client_x(), shown.left(), shown.width()),
        place(ev.client_y(), shown.top(), shown.height()),
        pressure,
    ))
}

/// A stroke in pieces, each as wide as it was pressed.
fn stroke(dots: &[Dot]) -> AnyView {
    pieces(dots)
        .into_iter()
        .map(|(width, line)| view! { <polyline points=line stroke-width=width.to_string()/> })
        .collect_view()
        .into_any()
}

/// The width and the points of each piece; a piece begins where the one before ends. A dot is a piece of no length.
fn pieces(dots: &[Dot]) -> Vec<(u32, String)> {
    let mut pieces: Vec<(u32, Vec<String>)> = Vec::new();
    let mut last = None;
    for dot in dots {
        let (width, point) = (wide(dot.2), format!("{},{}", dot.0, dot.1));
        match pieces.last_mut() {
            Some((same, points)) if *same == width => points.push(point.clone()),
            _ => pieces.push((width, last.into_iter().chain([point.clone()]).collect())),
        }
        last = Some(point);
    }
    let each = pieces.into_iter();
    each.map(|(width, mut points)| {
        if let [only] = points.as_slice() {
            points.push(only.clone());
        }
        (width, points.join(" "))
    })
    .collect()
}

/// Eight widths, so that a stroke is few pieces.
fn wide(pressure: u8) -> u32 {
    60 + u32::from(pressure / 32) * 20
}

#[cfg(test)]
mod tests {
    use super::pieces;

    #[test]
    fn a_stroke_widens_with_pressure_and_has_no_gap() {
        let drawn = pieces(&[(0, 0, 10), (100, 0, 20), (200, 0, 250)]);
        assert_eq!(
            drawn,
            [
                (60, "0,0 100,0".to_owned()),
                (200, "100,0 200,0".to_owned())
            ]
        );
    }

    #[test]
    fn a_dot_is_drawn() {
        assert_eq!(pieces(&[(5, 6, 128)]), [(140, "5,6 5,6".to_owned())]);
    }
}
