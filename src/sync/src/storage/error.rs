//! What a storage can answer instead of doing what it was asked.

use vault::{DeviceId, Head};

/// Why a storage did not do what it was asked.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum StorageError {
    /// The log has gone on without the caller; nothing was written.
    #[error(
        "something else has written to this tablet's log in the meantime: open the vault again"
    )]
    Moved {
        /// The head as it is.
        head: Option<Head>,
    },
    /// No room; nothing was written.
    #[error("there is no room left on this device: free some and save again")]
    Full,
    /// Founding where something is kept already; nothing was written.
    #[error("there is a vault on this device already: it was left as it is")]
    NotEmpty,
    /// The connection to the storage is dead, as after a long time in the background. Reopen and read again.
    #[error("the browser has closed its storage: open the vault again")]
    Gone,
    /// What is kept can't be made sense of at this place.
    #[error("what is kept on this device is damaged at entry {sequence}")]
    Damaged {
        /// In whose log.
        device: DeviceId,
        /// At which number.
        sequence: u64,
    },
    /// Anything else, in a sentence.
    #[error("this device's storage failed: {0}")]
    Other(String),
}
