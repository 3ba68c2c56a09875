//! What can be wrong with bytes that should be a frame.

/// Why bytes are no frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum FrameError {
    /// Shorter than the shortest frame.
    #[error("a frame of {length} bytes is cut short")]
    TooShort {
        /// Bytes that were there.
        length: usize,
    },
    /// Longer than the longest frame.
    #[error("a frame of {length} bytes is longer than any")]
    TooLong {
        /// Bytes that were there.
        length: usize,
    },
    /// A format that this version doesn't know.
    #[error("format {0} in byte 0 of a frame is not known to this version")]
    Format(u8),
    /// Algorithms that this version doesn't know.
    #[error("algorithm {0} in byte 1 of a frame is not known to this version")]
    Algorithm(u8),
    /// Sequence number 0.
    #[error("a frame is numbered 0, and the first is 1")]
    Sequence,
    /// A first frame that names a previous one, or a later frame that names none.
    #[error("frame {sequence} doesn't name a previous frame as it should")]
    Previous {
        /// Its number.
        sequence: u64,
    },
    /// Epoch number 0.
    #[error("a frame is of epoch 0, and the first is 1")]
    Epoch,
    /// Purpose 0.
    #[error("purpose 0 in byte 94 of a frame means nothing")]
    Purpose,
    /// A ciphertext length that is no padding class and tag.
    #[error("a ciphertext of {0} bytes is none of the lengths that a frame may have")]
    CiphertextLength(u32),
    /// More or fewer bytes than the header announces.
    #[error("a frame announces {announced} bytes and has {length}")]
    Length {
        /// What the header says.
        announced: usize,
        /// What there is.
        length: usize,
    },
}
