//! The dial as a picture: an axis on a half-circle, as the examiner faces the person.

use crate::arc::{Point, point_at};
use crate::mark::marked;
use crate::number::Rules;
use ::words::app::widgets as say;
use leptos::prelude::*;

pub(crate) const CENTRE: Point = (160.0, 152.0);
/// The radius of the rim, in the drawing's own units.
pub(crate) const RIM: f64 = 106.0;
/// The drawing's width and height.
pub(crate) const SIZE: (f64, f64) = (320.0, 182.0);

/// The half-circle with its ticks: each 10 degrees a tick, each 30 a figure.
pub(crate) fn face() -> impl IntoView {
    let ticks = (0..=18).map(|n| f64::from(n) * 10.0).map(|degrees| {
        let long = degrees % 30.0 == 0.0;
        let (a, b) = (
            point_at(CENTRE, RIM, degrees),
            point_at(CENTRE, RIM - if long { 13.0 } else { 7.0 }, degrees),
        );
        let class = if long {
            "dial-tick dial-tick-long"
        } else {
            "dial-tick"
        };
        view! { <line class=class x1=a.0 y1=a.1 x2=b.0 y2=b.1/> }
    });
    let figures = (0..=6).map(|n| f64::from(n) * 30.0).map(|degrees| {
        // At the ends the figure stands clear of the knob.
        let away = if degrees % 180.0 == 0.0 { 33.0 } else { 26.0 };
        let at = point_at(CENTRE, RIM + away, degrees);
        view! { <text class="dial-figure" x=at.0 y=at.1 + 5.0>{format!("{degrees:.0}")}</text> }
    });
    let ((left, base), (right, _)) = (point_at(CENTRE, RIM, 180.0), point_at(CENTRE, RIM, 0.0));
    view! {
        <path class="dial-rim" d=format!("M {left} {base} A {RIM} {RIM} 0 0 1 {right} {base}")/>
        <line class="dial-base" x1=left y1=base x2=right y2=base/>
        {ticks.collect_view()}
        {figures.collect_view()}
    }
}

/// The line of the axis through the centre, a stub beyond it, and a knob where a finger holds it.
pub(crate) fn axis_line(degrees: f64) -> impl IntoView {
    let (end, stub) = (
        point_at(CENTRE, RIM, degrees),
        point_at(CENTRE, -24.0, degrees),
    );
    // 180 is one line with two ends on the half-circle, so it has a knob at both.
    let other = (degrees >= 180.0).then(|| point_at(CENTRE, RIM, 0.0));
    let tail = other.unwrap_or(stub);
    view! {
        <line class="dial-axis" x1=end.0 y1=end.1 x2=tail.0 y2=tail.1/>
        {[Some(end), other].into_iter().flatten().map(|at| view! { <circle class="dial-knob" cx=at.0 cy=at.1 r="11.5"/> }).collect_view()}
    }
}

/// The notch of last time: across the rim and beyond the knob, so that today's line never hides it.
pub(crate) fn last_notch(degrees: f64) -> impl IntoView {
    let (a, b) = (
        point_at(CENTRE, RIM - 40.0, degrees),
        point_at(CENTRE, RIM + 15.0, degrees),
    );
    view! { <line class="dial-last" x1=a.0 y1=a.1 x2=b.0 y2=b.1/> }
}

/// A dial that only shows.
#[component]
pub fn Dial(
    /// The picture's id.
    #[prop(into)]
    id: String,
    /// Whose axis it is, for a screen reader.
    #[prop(into)]
    label: String,
    /// The axis, degrees.
    #[prop(into)]
    axis: Signal<Option<f64>>,
    /// Last time's axis.
    #[prop(optional, into)]
    last: Signal<Option<f64>>,
) -> impl IntoView {
    let rules = Rules::axis(1.0);
    let said = move || match (axis.get(), last.get()) {
        (Some(axis), Some(last)) => say::dial_last_time(&label, &rules.say(axis), &rules.say(last)),
        (Some(axis), None) => format!("{label}: {}", rules.say(axis)),
        (None, _) => say::dial_no_axis(&label),
    };
    view! {
        <svg class="dial" id=id data-part="dial" role="img" aria-label=move || marked(said()) viewBox=format!("0 0 {} {}", SIZE.0, SIZE.1)>
            {face()}
            {move || last.get().map(last_notch)}
            {move || axis.get().map(axis_line)}
        </svg>
    }
}
