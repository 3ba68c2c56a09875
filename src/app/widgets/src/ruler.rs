//! The ruler: dioptres on an upright scale, what is still possible, every lens tried, and last time.

use crate::scale::{Mark, Motion, Scale, Tick};
use leptos::prelude::*;
use optics::format::power;

const WIDTH: f64 = 200.0;
const HEIGHT: f64 = 300.0;
const TOP: f64 = 34.0;
const LINE_X: f64 = 76.0;
const MARK_X: f64 = 106.0;

/// One meridian's ruler, as a picture.
#[component]
pub fn Ruler(
    /// The picture's id.
    #[prop(into)]
    id: String,
    /// The meridian, as it stands above: "180".
    #[prop(into)]
    label: Signal<String>,
    /// The stretch shown.
    #[prop(into)]
    scale: Signal<Scale>,
    /// Every lens tried, oldest first.
    #[prop(optional, into)]
    marks: Signal<Vec<Mark>>,
    /// What is still possible: the least and the most, dioptres.
    #[prop(optional, into)]
    band: Signal<Option<(f64, f64)>>,
    /// The most likely power.
    #[prop(optional, into)]
    at: Signal<Option<f64>>,
    /// Last time's power.
    #[prop(optional, into)]
    last: Signal<Option<f64>>,
) -> impl IntoView {
    let said = move || spoken(&label.get(), &marks.get(), band.get(), at.get(), last.get());
    view! {
        <svg class="ruler" id=id data-part="ruler" role="img" aria-label=said viewBox=format!("0 0 {WIDTH} {HEIGHT}")>
            <text class="ruler-title" x=LINE_X y="18">{label}</text>
            <line class="ruler-line" x1=LINE_X y1=TOP - 6.0 x2=LINE_X y2=HEIGHT - 6.0/>
            {move || band.get().map(|(low, high)| band_view(scale.get(), low, high))}
            {move || scale.get().ticks().into_iter().map(|tick| tick_view(scale.get(), tick)).collect_view()}
            {move || at.get().and_then(|p| y(scale.get(), p)).map(|cy| view! { <circle class="ruler-at" cx=LINE_X cy=cy r="8.5"/> })}
            {move || last.get().and_then(|power| last_view(scale.get(), &marks.get(), power))}
            {move || marks_view(scale.get(), &marks.get())}
        </svg>
    }
}

/// Whether both stand at one place: no two trial lenses are nearer than an eighth of a dioptre.
fn same(a: &Mark, b: &Mark) -> bool {
    (a.power - b.power).abs() < 0.01
}

fn y(scale: Scale, power: f64) -> Option<f64> {
    scale.place(power).map(down)
}

fn down(place: f64) -> f64 {
    TOP + 8.0 + place * (HEIGHT - TOP - 28.0)
}

fn tick_view(scale: Scale, tick: Tick) -> impl IntoView {
    let reach = if tick.long {
        12.0
    } else if tick.figure.is_some() {
        8.0
    } else {
        4.5
    };
    let class = if tick.long {
        "ruler-tick ruler-tick-long"
    } else {
        "ruler-tick"
    };
    let at = down(scale.place_within(tick.power));
    view! {
        <line class=class x1=LINE_X - reach y1=at x2=LINE_X + reach y2=at/>
        {tick.figure.map(|figure| view! { <text class="ruler-figure" x=LINE_X - 22.0 y=at + 5.0>{figure}</text> })}
    }
}

fn band_view(scale: Scale, low: f64, high: f64) -> impl IntoView {
    let (top, bottom) = (
        down(scale.place_within(high)),
        down(scale.place_within(low)),
    );
    let (half, middle) = (
        f64::max((bottom - top) / 2.0, 14.0),
        f64::midpoint(top, bottom),
    );
    view! { <rect class="ruler-band" x=LINE_X - 14.0 y=middle - half width="28" height=half * 2.0 rx="14"/> }
}

/// Lenses tried, newest power last; where one lens was tried more than once its signs stand side by side.
fn marks_view(scale: Scale, marks: &[Mark]) -> impl IntoView + use<> {
    let beside = |n: usize| marks[..n].iter().filter(|m| same(m, &marks[n])).count();
    let alone = |mark: &Mark| marks.iter().filter(|m| same(m, mark)).count() == 1;
    let drawn = marks.iter().enumerate().filter_map(|(n, mark)| {
        let at = y(scale, mark.power)?;
        let x = MARK_X + 22.0 * beside(n) as f64;
        let word = alone(mark).then(
            || view! { <text class="ruler-word" x=x + 14.0 y=at + 5.0>{mark.motion.word()}</text> },
        );
        Some(view! { {sign(mark.motion, x, at)} {word} })
    });
    drawn.collect::<Vec<_>>()
}

/// With points up the scale, to more plus; against points down it.
fn sign(motion: Motion, x: f64, y: f64) -> AnyView {
    let arrow = |up: f64| {
        let (tip, tail, wing) = (y - 7.0 * up, y + 7.0 * up, y - 2.0 * up);
        let d = format!(
            "M {x} {tail} L {x} {tip} M {} {wing} L {x} {tip} L {} {wing}",
            x - 5.0,
            x + 5.0
        );
        view! { <path class="ruler-sign" d=d/> }.into_any()
    };
    match motion {
        Motion::With => arrow(1.0),
        Motion::Against => arrow(-1.0),
        Motion::Neutral => view! { <circle class="ruler-sign" cx=x cy=y r="6"/> }.into_any(),
        Motion::Unsure => {
            view! { <text class="ruler-word ruler-unsure" x=x y=y + 5.0>"?"</text> }.into_any()
        }
    }
}

fn last_view(scale: Scale, marks: &[Mark], power: f64) -> Option<impl IntoView + use<>> {
    let at = y(scale, power)?;
    // A lens tried at almost the same power has its words here: last time's go below them.
    let crowded = marks
        .iter()
        .filter_map(|mark| y(scale, mark.power))
        .any(|mark| (mark - at).abs() < 15.0);
    let words = if crowded { at + 22.0 } else { at + 5.0 };
    let end = if crowded {
        LINE_X + 24.0
    } else {
        LINE_X + 36.0
    };
    Some(view! {
        <line class="ruler-last" x1=LINE_X + 14.0 y1=at x2=end y2=at/>
        <text class="ruler-last-word" x=LINE_X + 42.0 y=words>"last time"</text>
    })
}

fn spoken(
    label: &str,
    marks: &[Mark],
    band: Option<(f64, f64)>,
    at: Option<f64>,
    last: Option<f64>,
) -> String {
    let mut parts = vec![format!("meridian {label}")];
    parts.extend(at.map(|p| format!("most likely {}", power(p))));
    parts.extend(
        band.map(|(low, high)| format!("still possible from {} to {}", power(low), power(high))),
    );
    parts.extend(
        marks
            .iter()
            .map(|mark| format!("{} {}", power(mark.power), mark.motion.word())),
    );
    parts.extend(last.map(|p| format!("last time {}", power(p))));
    parts.join("; ")
}
