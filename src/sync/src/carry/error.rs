//! Why a carry file is not taken, in one sentence each. Nothing is changed then.

use crate::storage::StorageError;
use vault::DeviceId;

/// Why a carry file was not written or not read.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum CarryError {
    /// Something else altogether.
    #[error("this is not a carry file")]
    NotCarry,
    /// Written by a later version.
    #[error("this carry file is of format {0}, which this version doesn't know: update this one")]
    Format(u8),
    /// The sum doesn't fit.
    #[error("this carry file is damaged or cut short: have it made or copied again")]
    Damaged,
    /// The sum fits, but what it is the sum of makes no sense.
    #[error(
        "this carry file was made wrongly, at byte {at}: have it made again with the current version"
    )]
    Senseless {
        /// Where.
        at: usize,
    },
    /// From another vault.
    #[error("this carry file is from another vault, which this device has no key to")]
    OtherVault,
    /// A frame that isn't its device's.
    #[error("entry {sequence} from tablet {} in this carry file isn't genuine: nothing was taken from it", &device.to_string()[..8])]
    Forged {
        /// Whose it should be.
        device: DeviceId,
        /// Its number.
        sequence: u64,
    },
    /// A device that holds no key of the vault.
    #[error("tablet {} in this carry file doesn't belong to this vault: nothing was taken from it", &.0.to_string()[..8])]
    Stranger(DeviceId),
    /// There is nothing to write.
    #[error("there is nothing here that the other side lacks")]
    Nothing,
    /// This device's storage.
    #[error(transparent)]
    Storage(#[from] StorageError),
}
