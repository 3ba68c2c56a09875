//! What becomes of a person's eyes over the years.

/// What becomes of a person's eyes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Course {
    /// Next to nothing, as with most.
    Ordinary,
    /// The lens clouds, acuity falls and the eye grows myopic.
    Clouding,
    /// Both lenses were replaced long ago.
    Implants,
    /// The maculae are lost, and print has to be magnified.
    LowVision,
    /// Pupils of two millimetres and less.
    SmallPupils,
}

impl Course {
    /// Of sixty: twelve cloud, six have implants, three see little, six have small pupils, the rest are ordinary. The
    /// shares are this project's own choice.
    pub const fn of(place: usize) -> Self {
        match place % 20 {
            3 | 8 | 13 | 18 => Self::Clouding,
            5 | 15 => Self::Implants,
            19 => Self::LowVision,
            1 | 11 => Self::SmallPupils,
            _ => Self::Ordinary,
        }
    }
}
