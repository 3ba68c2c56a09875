//! Frames, device logs and where they are kept.

mod damage;
mod ledger;
mod log;
pub mod storage;

pub use damage::{Damage, Fault};
pub use ledger::{
    Drafts, DraftsError, Ledger, LedgerError, Opened, Read, Refusal, WriteError, Writing,
};
pub use log::{Admitted, DeviceLog};
pub use storage::{Append, MemoryStorage, Storage, StorageError, StoredDraft, StoredFrame};
