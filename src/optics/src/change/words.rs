//! A change in words. Powers to two decimals, degrees to one; what rounds to nothing is not said.

use super::{Change, CylinderChange};
use crate::format::{plain, power};

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
            "no change".to_owned()
        } else {
            said.join("; ")
        }
    }

    /// The whole difference in words: "0.79 D of blur in all".
    pub fn blur_sentence(&self) -> String {
        format!("{:.2} D of blur in all", self.blur())
    }

    fn sphere_words(&self) -> Option<String> {
        let by = self.sphere();
        if by.abs() < WRITTEN {
            return None;
        }
        let (from, to) = (self.from().sphere, self.to().sphere);
        let size = by.abs();
        let from_to = || format!("from {} to {}", power(from), power(to));
        Some(match (by > 0.0, from + to > 0.0) {
            _ if from * to < 0.0 && by > 0.0 => format!("{size:.2} D toward plus, {}", from_to()),
            _ if from * to < 0.0 => format!("{size:.2} D toward minus, {}", from_to()),
            (true, true) => format!("{size:.2} D more plus"),
            (false, true) => format!("{size:.2} D less plus"),
            (true, false) => format!("{size:.2} D less minus"),
            (false, false) => format!("{size:.2} D more minus"),
        })
    }

    fn cylinder_words(&self) -> Option<String> {
        let named = |cylinder: crate::Cylinder| {
            let axis = plain(cylinder.axis().degrees(), 1);
            format!("{} × {axis}", power(cylinder.power()))
        };
        match self.cylinder() {
            CylinderChange::None => None,
            CylinderChange::New(cylinder) => Some(format!("new cylinder {}", named(cylinder))),
            CylinderChange::Removed(cylinder) => {
                Some(format!("cylinder {} taken out", named(cylinder)))
            }
            CylinderChange::Both { .. } => {
                let by = self.cylinder_stronger();
                let way = if by > 0.0 { "stronger" } else { "weaker" };
                (by.abs() >= WRITTEN).then(|| format!("cylinder {:.2} D {way}", by.abs()))
            }
        }
    }

    fn axis_words(&self) -> Option<String> {
        let turned = self.axis_turned().abs();
        let degrees = plain(turned, 1);
        let unit = if degrees == "1" { "degree" } else { "degrees" };
        (turned >= WRITTEN_DEGREES).then(|| {
            format!(
                "axis {degrees} {unit} round, which is {:.2} D at this cylinder",
                self.axis_blur()
            )
        })
    }
}
