//! Exams that don't go as most do.

/// What is odd about somebody's newest exam.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Odd {
    /// It was changed after it was signed.
    Amended,
    /// Two tablets wrote a section without knowing of each other, and nobody has settled which holds.
    TwoVersions,
}

impl Odd {
    /// One of each among all people, both in the first home.
    pub const fn of(place: usize) -> Option<Self> {
        match place {
            6 => Some(Self::Amended),
            10 => Some(Self::TwoVersions),
            _ => None,
        }
    }
}
