//! What can be wrong with a statement of the roll.

/// Why bytes are no statement.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum StatementError {
    /// Not as long as a statement is.
    #[error("a statement about a device has {0} bytes, and should have 195")]
    Length(usize),
    /// A format that this version doesn't know.
    #[error("format {0} of a statement about a device is not known to this version")]
    Format(u8),
    /// Neither admission nor removal, or with fields that don't belong to it.
    #[error("a statement about a device says nothing that this version knows")]
    Change,
    /// A key that is none.
    #[error("a statement about a device holds a key that is none")]
    Key,
}

/// Why a statement doesn't belong on the roll.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum RollError {
    /// It is about another vault.
    #[error("this is about a device of another vault")]
    OtherVault,
    /// It is not the next one.
    #[error("the list of devices has changed in the meantime: this should be change {expected}")]
    OutOfPlace {
        /// The number that comes next.
        expected: u64,
    },
    /// Its signer may not make it.
    #[error("only a lead device may add or remove devices")]
    NotALead,
    /// Its signature is not its signer's.
    #[error("a change to the list of devices isn't signed by the device that it names")]
    Unsigned,
    /// The device was removed before.
    #[error("this device was removed, and can only come back as a new one")]
    WasRemoved,
    /// The device might write, and is to be a viewer.
    #[error("a device that has written can't become a viewer: remove it and enrol it anew")]
    BecomesViewer,
    /// The device is not there to be removed.
    #[error("there is no such device to remove")]
    NotHere,
    /// Nobody would be left to add or remove devices.
    #[error("this is the last lead device: make another one a lead first")]
    LastLead,
}
