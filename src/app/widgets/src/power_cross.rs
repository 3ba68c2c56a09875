//! The power cross: the two principal meridians at their angles, each with its power.

use crate::arc::{Point, point_at};
use crate::mark::marked;
use ::words::app::widgets as say;
use leptos::prelude::*;
use optics::format::{plain, power};
use optics::{MeridianPower, SphereCyl, Step};

const WIDTH: f64 = 280.0;
const HEIGHT: f64 = 210.0;
const MIDDLE: Point = (WIDTH / 2.0, HEIGHT / 2.0);
/// Half of an arm.
const ARM: f64 = 62.0;

/// Both meridians of a lens, the most plus first; of a sphere those at 180 and 90.
pub fn arms(lens: &SphereCyl) -> [MeridianPower; 2] {
    lens.principal()
}

/// Where an arm's figures stand: beyond the end at this angle, farther out sideways than upwards because words are wider
/// than high.
pub fn label_at(degrees: f64) -> Point {
    let (x, y) = point_at((0.0, 0.0), 1.0, degrees);
    (
        MIDDLE.0 + x * (ARM + 38.0),
        MIDDLE.1 + y * (ARM + 18.0) + 5.0,
    )
}

/// "along 180 +3.25, along 90 +1.75".
pub fn said(lens: &SphereCyl) -> String {
    arms(lens)
        .map(|arm| say::along(&plain(arm.meridian.degrees(), 1), &power(arm.power)))
        .join(", ")
}

/// A lens as its two meridians, on the quarter step.
#[component]
pub fn PowerCross(
    /// The picture's id.
    #[prop(into)]
    id: String,
    /// Whose lens it is, for a screen reader.
    #[prop(into)]
    label: String,
    /// The lens.
    #[prop(into)]
    lens: Signal<SphereCyl>,
) -> impl IntoView {
    let shown = move || lens.get().rounded(Step::Quarter).value;
    view! {
        <svg class="cross" id=id data-part="power-cross" role="img" aria-label=move || marked(format!("{label}: {}", said(&shown()))) viewBox=format!("0 0 {WIDTH} {HEIGHT}")>
            <circle class="cross-rim" cx=MIDDLE.0 cy=MIDDLE.1 r=ARM - 8.0/>
            {move || arms(&shown()).map(arm).into_iter().collect_view()}
        </svg>
    }
    .into_any()
}

/// The line of a meridian, its power beyond the upper or right end, its angle beyond the other.
fn arm(arm: MeridianPower) -> impl IntoView {
    let degrees = arm.meridian.degrees();
    // The horizontal has its power to the right, where nought is.
    let end = if degrees > 135.0 {
        degrees - 180.0
    } else {
        degrees
    };
    let (one, other) = (point_at(MIDDLE, ARM, end), point_at(MIDDLE, -ARM, end));
    let (figure, angle) = (label_at(end), label_at(end + 180.0));
    view! {
        <line class="cross-arm" x1=one.0 y1=one.1 x2=other.0 y2=other.1/>
        <text class="cross-power" x=figure.0 y=figure.1>{marked(power(arm.power))}</text>
        <text class="cross-angle" x=angle.0 y=angle.1>{plain(degrees, 1)}</text>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // A cylinder has no power along its axis and all of it across (the definition of a cylinder): +3.00/−1.50×90 is +3.00
    // along 90 and +1.50 along 180.
    #[test]
    fn the_most_plus_lies_along_the_axis_of_a_minus_cylinder() {
        let lens = SphereCyl::new(3.0, -1.5, 90.0).unwrap();
        assert_eq!(said(&lens), "along 90 +3.00, along 180 +1.50");
    }

    #[test]
    fn a_sphere_is_the_same_along_both() {
        let [one, other] = arms(&SphereCyl::sphere(-2.0));
        assert_eq!((one.power, other.power), (-2.0, -2.0));
        assert_eq!(one.meridian.apart(other.meridian), 90.0);
    }

    #[test]
    fn figures_stay_on_the_drawing() {
        for degrees in (-45..315).map(f64::from) {
            let (x, y) = label_at(degrees);
            assert!((36.0..=WIDTH - 36.0).contains(&x), "{degrees}: {x}");
            assert!((16.0..=HEIGHT - 6.0).contains(&y), "{degrees}: {y}");
        }
    }
}
