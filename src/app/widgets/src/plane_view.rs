//! The plane as a picture: a dot with its ellipse for each finding, and every finding in words below.

use crate::mark::marked;
use crate::plane::{Dot, From, SIDE, place, reach, rings, scaled, told};
use ::words::app::widgets as say;
use leptos::prelude::*;

const MIDDLE: f64 = SIDE / 2.0;

/// Findings on the plane of crossed cylinders. The first is what the others are compared with.
#[component]
pub fn Plane(
    /// The picture's id; the words stand in `{id}-words`.
    #[prop(into)]
    id: String,
    /// Whose findings they are, for a screen reader.
    #[prop(into)]
    label: String,
    /// The findings.
    #[prop(into)]
    dots: Signal<Vec<Dot>>,
) -> impl IntoView {
    let words_id = format!("{id}-words");
    let far = move || dots.with(|dots| reach(dots));
    view! {
        <figure class="plane" data-part="plane">
            <svg id=id role="img" aria-label=label aria-describedby=words_id.clone() viewBox=format!("0 0 {SIDE} {SIDE}")>
                {move || face(far())}
                {move || dots.get().iter().map(|dot| ellipse(dot, far())).collect_view()}
                {move || dots.get().iter().rev().map(|dot| { let (x, y) = place(dot, far()); shape(dot.from, x, y) }).collect_view()}
            </svg>
            <figcaption>
                <ul class="plane-words" id=words_id>
                    {move || dots.with(|dots| dots.iter().map(|dot| line(dot, dots.first())).collect_view())}
                </ul>
            </figcaption>
        </figure>
    }
    .into_any()
}

/// The rings with their dioptres, and the two directions with what a minus cylinder has its axis at there.
fn face(reach: f64) -> impl IntoView {
    let out = scaled(reach, reach);
    let circles = rings(reach).map(|ring| {
        let half = (ring * 2.0).fract() == 0.0;
        let class = if half {
            "plane-ring plane-ring-half"
        } else {
            "plane-ring"
        };
        view! { <circle class=class cx=MIDDLE cy=MIDDLE r=scaled(ring, reach)/> }
    });
    let ends = [
        (MIDDLE + out - 4.0, MIDDLE - 6.0, "end", "180"),
        (MIDDLE - out + 4.0, MIDDLE - 6.0, "start", "90"),
        (MIDDLE + 6.0, MIDDLE - out + 14.0, "start", "45"),
        (MIDDLE + 6.0, MIDDLE + out - 6.0, "start", "135"),
    ];
    let words = ends.map(|(x, y, anchor, axis)| {
        view! { <text class="plane-figure" x=x y=y text-anchor=anchor>{format!("\u{d7} {axis}")}</text> }
    });
    view! {
        <line class="plane-line" x1=MIDDLE - out y1=MIDDLE x2=MIDDLE + out y2=MIDDLE/>
        <line class="plane-line" x1=MIDDLE y1=MIDDLE - out x2=MIDDLE y2=MIDDLE + out/>
        {circles.collect_view()}
        {words.into_iter().collect_view()}
        <text class="plane-figure" x=SIDE - 4.0 y=SIDE - 6.0 text-anchor="end">{marked(say::outer_ring(&format_args!("{reach:.2}")))}</text>
    }
}

fn ellipse(dot: &Dot, reach: f64) -> Option<impl IntoView + use<>> {
    let ellipse = dot.ellipse?;
    let (x, y) = place(dot, reach);
    let turned = format!("rotate({:.1} {x:.2} {y:.2})", -ellipse.angle_degrees);
    Some(view! {
        <ellipse class="plane-ellipse" cx=x cy=y rx=scaled(ellipse.major, reach) ry=scaled(ellipse.minor, reach) transform=turned/>
    })
}

/// Each source has its own shape, so that colour says nothing alone.
fn shape(from: From, x: f64, y: f64) -> AnyView {
    let path = |d: String, class: &'static str| view! { <path class=class d=d/> }.into_any();
    match from {
        From::Retinoscopy => view! { <circle class="plane-full" cx=x cy=y r="6"/> }.into_any(),
        From::LastTime => path(
            format!("M {} {} h 11 v 11 h -11 Z", x - 5.5, y - 5.5),
            "plane-open",
        ),
        From::Machine => path(format!("M {x} {} l 7 12 h -14 Z", y - 7.5), "plane-open"),
        From::Worn => path(
            format!("M {x} {} l 7.5 7.5 l -7.5 7.5 l -7.5 -7.5 Z", y - 7.5),
            "plane-open",
        ),
        // The longer ago, the smaller.
        From::Ago(exams) => {
            let r = 6.0 - f64::from(exams.min(4));
            view! { <circle class="plane-open" cx=x cy=y r=r/> }.into_any()
        }
        From::Final => path(
            format!("M {} {} l 13 13 m 0 -13 l -13 13", x - 6.5, y - 6.5),
            "plane-cross",
        ),
    }
}

fn line(dot: &Dot, first: Option<&Dot>) -> impl IntoView + use<> {
    view! {
        <li>
            <svg class="plane-key" viewBox="0 0 20 20" aria-hidden="true">{shape(dot.from, 10.0, 10.0)}</svg>
            <span><span class="soft">{dot.from.words()}</span>" "<b>{marked(told(dot, first))}</b></span>
        </li>
    }
}
