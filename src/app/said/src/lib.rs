//! What the vault, the storage and the exchange report, in the words of whoever reads them.
//!
//! Those crates keep typed errors whose own sentences are English, for logs and for the command line. What is shown to
//! somebody is said here, once for each variant and without a default, so an error that is new doesn't compile before it
//! has its words.
//!
//! ```
//! use said::InWords;
//! use vault::UnlockError;
//! use words::{Language, in_language};
//!
//! let wrong = UnlockError::WrongPassphrase;
//! assert_eq!(wrong.in_words(), wrong.to_string());
//! let said = in_language(Language::German, || wrong.in_words());
//! assert_eq!(said, "das ist nicht die Passphrase dieses Tresors");
//! ```

mod carry;
mod kept;
mod keys;
mod relay;
mod tablets;

pub use carry::carried_roll;
pub use kept::held_back;

use vault::DeviceId;

/// Something that is told to whoever reads the screen, in one plain sentence of their language.
pub trait InWords {
    /// The sentence, without its point.
    fn in_words(&self) -> String;
}

/// A device's id as people compare it: its first eight signs.
fn short(device: &DeviceId) -> String {
    device.to_string().chars().take(8).collect()
}

/// So many, as the forms of a sentence go by it.
fn many(count: u64) -> usize {
    usize::try_from(count).unwrap_or(usize::MAX)
}
