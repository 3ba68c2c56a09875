//! A change in words. Powers to two decimals, degrees to one; what rounds to nothing is not said.

use super::{Change, CylinderChange};
use crate::Cylinder;
use crate::format::{plain, power};
use ::words::optics::change as say;

/// Less than this many dioptres would be written 0.00.
const WRITTEN: f64 = 0.005;

/// Less than this many degrees would be written 0.
const WRITTEN_DEGREES: f64 = 0.05;

impl Change {
    /// The change in one line: "0.75 D more plus; cylinder 0.25 D stronger; axis 10 degrees round, which is 0.26 D at this
    /// cylinder". "no change" where nothing is left to say.
    pub fn sentence(&self) -> String {
        let parts = [
            self.sphere_words(),
            self.cylinder_words(),
            self.axis_words(),
        ];
        let said: Vec<String> = parts.into_iter().flatten().collect();
        if said.is_empty() {
            say::no_change().to_owned()
        } else {
            said.join("; ")
        }
    }

    /// The whole difference in words: "0.79 D of blur in all".
    pub fn blur_sentence(&self) -> String {
        say::blur_in_all(&format_args!("{:.2}", self.blur()))
    }

    fn sphere_words(&self) -> Option<String> {
        let by = self.sphere();
        if by.abs() < WRITTEN {
            return None;
        }
        let (from, to) = (self.from().sphere, self.to().sphere);
        let size = by.abs();
        if from.abs().min(to.abs()) >= WRITTEN && (from > 0.0) != (to > 0.0) {
            let way = if by > 0.0 {
                say::toward_plus()
            } else {
                say::toward_minus()
            };
            let (from, to) = (power(from), power(to));
            return Some(say::sphere_toward(
                &format_args!("{size:.2}"),
                &way,
                &from,
                &to,
            ));
        }
        let way = match (by > 0.0, from + to > 0.0) {
            (true, true) => say::more_plus(),
            (false, true) => say::less_plus(),
            (true, false) => say::less_minus(),
            (false, false) => say::more_minus(),
        };
        Some(say::sphere_by(&format_args!("{size:.2}"), &way))
    }

    fn cylinder_words(&self) -> Option<String> {
        let named = |cylinder: Cylinder| {
            let axis = plain(cylinder.axis().degrees(), 1);
            format!("{} × {axis}", power(cylinder.power()))
        };
        match self.cylinder() {
            CylinderChange::None => None,
            CylinderChange::New(cylinder) => {
                is_written(cylinder).then(|| say::cylinder_new(&named(cylinder)))
            }
            CylinderChange::Removed(cylinder) => {
                is_written(cylinder).then(|| say::cylinder_out(&named(cylinder)))
            }
            CylinderChange::Both { .. } => {
                let by = self.cylinder_stronger();
                let way = if by > 0.0 {
                    say::stronger()
                } else {
                    say::weaker()
                };
                (by.abs() >= WRITTEN)
                    .then(|| say::cylinder_by(&format_args!("{:.2}", by.abs()), &way))
            }
        }
    }

    fn axis_words(&self) -> Option<String> {
        let CylinderChange::Both { from, to } = self.cylinder() else {
            return None;
        };
        let turned = self.axis_turned().abs();
        if turned < WRITTEN_DEGREES || !is_written(from) || !is_written(to) {
            return None;
        }
        let degrees = plain(turned, 1);
        let unit = if degrees == "1" {
            say::degree()
        } else {
            say::degrees()
        };
        let blur = self.axis_blur();
        Some(say::axis_round(&degrees, &unit, &format_args!("{blur:.2}")))
    }
}

/// Whether a cylinder has a figure to be written.
fn is_written(cylinder: Cylinder) -> bool {
    cylinder.power().abs() >= WRITTEN
}
