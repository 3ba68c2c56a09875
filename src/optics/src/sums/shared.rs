//! Lines that several sums have in common.

use crate::format::{plain, power};
use crate::prism::Prism;
use crate::{Eye, Line, SphereCyl, Step};

/// A lens on the step of the trial case, and what that loses.
pub(super) fn nearest(lens: &SphereCyl) -> [Line; 2] {
    let rounded = lens.rounded(Step::Quarter);
    [
        Line::new("to the nearest quarter", rounded.value),
        Line::new("lost by that", blur(rounded.lost)),
    ]
}

/// A power with its unit.
pub(super) fn dioptres(value: f64) -> String {
    format!("{} D", power(value))
}

/// A size in dioptres that has no sign.
pub(super) fn blur(value: f64) -> String {
    format!("{} D of blur", size(value))
}

/// Two places without a sign.
pub(super) fn size(value: f64) -> String {
    let signed = crate::format::signed(value.abs(), 2);
    signed.trim_start_matches('+').to_owned()
}

/// An acuity on its scale, to two places; only what is better than 0 has a sign.
pub(super) fn logmar(value: f64) -> String {
    if value < 0.0 {
        crate::format::signed(value, 2)
    } else {
        size(value)
    }
}

/// A length with its unit, to one place.
pub(super) fn length(value: f64, unit: &str) -> String {
    format!("{} {unit}", plain(value, 1))
}

/// A prism by its names before an eye, on the compass, and on the step of the trial case.
pub(super) fn prism_lines(label: &str, prism: Prism, eye: Eye) -> Vec<Line> {
    vec![
        Line::new(label, prism.written(eye)),
        Line::new("on the compass", prism),
        Line::new("to the nearest quarter", prism.rounded().written(eye)),
    ]
}

/// Which way along the horizontal before an eye, and which way up.
pub(super) fn way(right_mm_in: f64, up_mm: f64) -> String {
    let part = |mm: f64, positive: &str, negative: &str| {
        let way = if mm < 0.0 { negative } else { positive };
        format!("{} mm {way}", plain(mm.abs(), 2))
    };
    format!(
        "{}, {}",
        part(right_mm_in, "in", "out"),
        part(up_mm, "up", "down")
    )
}
