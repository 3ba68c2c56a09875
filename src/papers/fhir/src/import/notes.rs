//! Notes that [`crate::bundle`] writes, read again; every other note stays as it is.

use crate::prescription::{ADDITION_FOR, AXIS, VERTEX};

/// What a note says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Note {
    /// The distance of the addition in centimetres.
    AdditionFor(f64),
    /// The vertex distance in millimetres.
    Vertex(f64),
    /// The axis in degrees.
    Axis(f64),
}

impl Note {
    pub fn read(text: &str) -> Option<Self> {
        let number = |before: &str, after: &str| {
            let rest = text.strip_prefix(before)?.strip_suffix(after)?;
            rest.trim()
                .parse::<f64>()
                .ok()
                .filter(|number| number.is_finite())
        };
        number(ADDITION_FOR, "cm")
            .map(Self::AdditionFor)
            .or_else(|| number(VERTEX, "mm").map(Self::Vertex))
            .or_else(|| number(AXIS, "").map(Self::Axis))
    }
}
