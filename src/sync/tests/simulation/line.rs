//! The line between tablets and relay.

/// A message under way.
#[derive(Clone)]
pub struct Message {
    /// Which tablet it comes from or goes to.
    pub device: usize,
    /// Which question it is, or answers.
    pub number: u64,
    pub bytes: Vec<u8>,
    pub kind: Kind,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    Question,
    Answer,
    /// The relay says that it won't.
    Refusal,
    /// The relay says that what was sent is not its tablet's to write.
    Forbidden,
}

/// What becomes of a message.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Passage {
    Arrives,
    Lost,
    /// Arrives, and once more later.
    Repeated,
    /// Arrives with one bit changed.
    Altered,
}
