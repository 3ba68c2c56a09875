//! What was read on a chart, as it is picked.

use optics::acuity::ChartLine;

/// What an eye read, as the chart's own label says it; what that is at the distance used is for `optics` to tell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReadLine {
    /// The smallest line read, and the letters missed of it (less than nought) or gained of the next.
    Line {
        /// The line.
        line: ChartLine,
        /// −2 to +2.
        letters: i8,
    },
    /// Counts fingers, at a distance where it was measured.
    Fingers {
        /// Centimetres.
        at_cm: Option<u16>,
    },
    /// Sees a hand move.
    HandMoves,
    /// Tells light from dark.
    Light,
    /// Does not tell light from dark.
    NoLight,
    /// Could not be tested.
    Unable,
}

impl ReadLine {
    /// The letters missed or gained, where a line was read.
    pub fn letters(self) -> Option<i8> {
        match self {
            Self::Line { letters, .. } => Some(letters),
            _ => None,
        }
    }

    /// The same reading with other letters; what is no line stays as it is.
    #[must_use]
    pub fn with_letters(self, letters: i8) -> Self {
        match self {
            Self::Line { line, .. } => Self::Line { line, letters },
            other => other,
        }
    }

    /// Whether both are in one square of the picker.
    pub(crate) fn same_square(self, other: Self) -> bool {
        match (self, other) {
            (Self::Line { line: a, .. }, Self::Line { line: b, .. }) => a == b,
            _ => std::mem::discriminant(&self) == std::mem::discriminant(&other),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::ReadLine;
    use optics::acuity::ChartLine;

    fn line(denominator: u8) -> ReadLine {
        ReadLine::Line {
            line: ChartLine::new(denominator).unwrap(),
            letters: 0,
        }
    }

    #[test]
    fn letters_belong_to_a_line_only() {
        let line = line(36);
        assert_eq!(line.with_letters(-2).letters(), Some(-2));
        assert_eq!(ReadLine::Light.with_letters(-2), ReadLine::Light);
    }

    #[test]
    fn a_square_is_the_line_whatever_the_letters() {
        assert!(line(36).same_square(line(36).with_letters(1)));
        assert!(!line(36).same_square(line(24)));
        assert!(
            ReadLine::Fingers { at_cm: None }.same_square(ReadLine::Fingers { at_cm: Some(50) })
        );
        assert!(!ReadLine::Light.same_square(ReadLine::NoLight));
    }
}
