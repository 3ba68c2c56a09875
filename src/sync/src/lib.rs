//! Device logs: verified when they are read, durable when they are written, kept anywhere.
//!
//! [`Ledger`] is the one door. It reads every device's log frame by frame (is it the next one, is it signed, does it
//! open?), reports what is damaged without losing anything else, and writes so that what it has acknowledged is kept.
//! Below it, [`Storage`] says what a place to keep things must do, [`MemoryStorage`] is the plainest such place, and
//! [`contract`] checks any other, and a relay's as well. What one place has gets to another by the [`exchange`] with a relay, or in a
//! [`carry`] file.
//!
//! ```
//! use sync::{Ledger, MemoryStorage, Storage};
//! use vault::{KeyFile, SlotKey, StretchParams, Subject, found_vault};
//!
//! # futures::executor::block_on(async {
//! # let params = StretchParams { salt: [0; 16], memory_kib: 8192, passes: 1, lanes: 1 };
//! # let slot_key = SlotKey::from_bytes([1; 32]);
//! let storage = MemoryStorage::new();
//! let (file, keys) = found_vault(&slot_key, params, "bedside tablet")?;
//! let ledger = Ledger::found(storage.clone(), &file, keys).await?;
//!
//! // While it is typed it is a draft; written, it is an entry, and the draft goes in the same step.
//! let person = Subject::from_bytes([7; 16]);
//! ledger.put_draft(b"exam 1, acuity", b"right eye, 6/").await?;
//! let draft = ledger.draft_name(b"exam 1, acuity");
//! ledger.write(b"right eye, 6/9", Some(person), &[draft]).await?;
//!
//! // Later: unlock and read everything.
//! let file = KeyFile::from_bytes(&storage.key_file().await?.ok_or("no vault here")?)?;
//! let opened = Ledger::open(storage, file.unlock(&slot_key)?).await?;
//! assert_eq!(opened.entries[0].payload, b"right eye, 6/9");
//! assert_eq!(opened.entries[0].subject, Some(person));
//! assert!(opened.damage.is_empty() && opened.refusal.is_none());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! # }).unwrap();
//! ```

pub mod carry;
pub mod checkpoint;
pub mod contract;
mod damage;
pub mod exchange;
mod ledger;
mod log;
pub mod storage;

pub use damage::{Damage, Fault};
pub use ledger::{
    CarriedRoll, CheckpointFailed, Drafts, DraftsError, Erased, Found, Held, HeldFor, KeysDue,
    LeadError, Ledger, LedgerError, Opened, Place, Read, Refusal, RenewError, RewrapError, Tablet,
    WriteError, Writing, held_back, held_by, kept_key_file,
};
pub use log::{Admitted, DeviceLog};
pub use storage::{
    Append, MemoryStorage, Renewal, Storage, StorageError, StoredDraft, StoredFrame,
};
