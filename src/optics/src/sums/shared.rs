//! Lines that several sums have in common.

use crate::format::{plain, power};
use crate::prism::Prism;
use crate::{Eye, Line, SphereCyl, Step};
use ::words::optics::sums as say;

/// What is worth a second thought.
pub(super) fn mind(what: impl ToString) -> Line {
    Line::new(say::mind(), what)
}

/// An eye, as what is said of it is headed.
pub(super) fn eye_name(eye: Eye) -> &'static str {
    match eye {
        Eye::Right => say::right_eye(),
        Eye::Left => say::left_eye(),
    }
}

/// A lens on the step of the trial case, and what that loses.
pub(super) fn nearest(lens: &SphereCyl) -> [Line; 2] {
    let rounded = lens.rounded(Step::Quarter);
    [
        Line::new(say::nearest_quarter(), rounded.value),
        Line::new(say::lost_by_that(), blur(rounded.lost)),
    ]
}

/// A power with its unit.
pub(super) fn dioptres(value: f64) -> String {
    in_dioptres(&power(value))
}

/// A written number with the unit of powers.
pub(super) fn in_dioptres(written: &str) -> String {
    say::dioptres(&written)
}

/// A size in dioptres with its unit.
pub(super) fn sized(value: f64) -> String {
    in_dioptres(&size(value))
}

/// A size in dioptres that has no sign.
pub(super) fn blur(value: f64) -> String {
    say::blur(&size(value))
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
        Line::new(say::on_the_compass(), prism),
        Line::new(say::nearest_quarter(), prism.rounded().written(eye)),
    ]
}

/// Which way along the horizontal before an eye, and which way up.
pub(super) fn way(right_mm_in: f64, up_mm: f64) -> String {
    let along = if right_mm_in < 0.0 {
        say::way_out
    } else {
        say::way_in
    };
    let up = if up_mm < 0.0 {
        say::way_down
    } else {
        say::way_up
    };
    let size = |mm: f64| plain(mm.abs(), 2);
    say::way(&along(&size(right_mm_in)), &up(&size(up_mm)))
}
