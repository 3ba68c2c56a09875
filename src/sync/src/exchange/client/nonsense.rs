//! Answers that make no sense.

use crate::exchange::WireError;

/// What a relay answered that it never should.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Nonsense {
    /// What can't be read.
    #[error(transparent)]
    Wire(#[from] WireError),
    /// An answer to another question.
    #[error("it answers something else")]
    Other,
    /// What it has said before, where it should go on.
    #[error("it goes round in circles")]
    Circle,
    /// There is more, and none of it.
    #[error("it says that there is more and sends nothing")]
    More,
    /// Entries of a tablet that it doesn't name.
    #[error("it sends entries of an unknown tablet")]
    Nobody,
    /// Entries of another vault.
    #[error("it sends entries of another vault")]
    OtherVault,
    /// Entries after a gap.
    #[error("it sends entries that don't follow those that are here")]
    Gap,
    /// Entries that are not genuine.
    #[error("it sends entries that their tablet didn't sign")]
    Unsigned,
    /// Less is kept than was sent.
    #[error("it says that it keeps less than it was sent")]
    Less,
}
