//! What opens the vault on this device, changed while it is open: only the key file changes, no frame is touched.

use super::Ledger;
use crate::storage::{Storage, StorageError};
use vault::{ChangeError, KeyFile, KeyFileError, Opener, RecoveryCode};

/// Why the key file is as it was.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum RewrapError {
    /// There is none any more.
    #[error("there is no vault on this tablet any more: the browser has cleared it")]
    None,
    /// It can't be read.
    #[error(transparent)]
    File(#[from] KeyFileError),
    /// It doesn't open.
    #[error(transparent)]
    Change(#[from] ChangeError),
    /// The storage fails.
    #[error(transparent)]
    Storage(#[from] StorageError),
}

/// The key file that a storage keeps.
///
/// # Errors
///
/// There is none, it can't be read, or the storage fails.
pub async fn kept_key_file<S: Storage>(storage: &S) -> Result<KeyFile, RewrapError> {
    let bytes = storage.key_file().await?.ok_or(RewrapError::None)?;
    Ok(KeyFile::from_bytes(&bytes)?)
}

impl<S: Storage> Ledger<S> {
    /// Makes a new recovery code; an older sheet opens this device no more. Show the code before anything else is done, and
    /// call [`Ledger::renew_keys`] then: a copy of the entries opens with the code only after that.
    ///
    /// # Errors
    ///
    /// `by` doesn't open the key file; no randomness; the storage fails.
    pub async fn make_recovery(&self, by: Opener<'_>) -> Result<RecoveryCode, RewrapError> {
        let file = kept_key_file(&self.storage).await?;
        let (changed, code) = file.add_recovery(by)?;
        self.storage.put_key_file(&changed.to_bytes()).await?;
        self.keys.recover_by(&code);
        Ok(code)
    }
}
