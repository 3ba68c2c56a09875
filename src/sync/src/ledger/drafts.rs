//! What is half written.

use super::{DraftsError, Ledger};
use crate::storage::Storage;
use vault::DraftName;

/// All drafts that are kept.
#[derive(Default)]
pub struct Drafts {
    /// Those that open.
    pub plain: Vec<Vec<u8>>,
    /// How many don't.
    pub unopened: usize,
}

impl<S: Storage> Ledger<S> {
    /// The name under which the draft of `what` is kept; for [`Ledger::write`] to drop it.
    pub fn draft_name(&self, what: &[u8]) -> DraftName {
        self.keys.draft_name(what)
    }

    /// Keeps the draft of `what` in place of an earlier one.
    ///
    /// # Errors
    ///
    /// It is too long; no randomness; the storage fails.
    pub async fn put_draft(&self, what: &[u8], plain: &[u8]) -> Result<(), DraftsError> {
        let name = self.draft_name(what);
        let sealed = self.keys.seal_draft(name, plain)?;
        Ok(self.storage.put_draft(name, &sealed).await?)
    }

    /// The draft of `what`, if one is kept.
    ///
    /// # Errors
    ///
    /// It doesn't open; the storage fails.
    pub async fn draft(&self, what: &[u8]) -> Result<Option<Vec<u8>>, DraftsError> {
        let name = self.draft_name(what);
        let Some(sealed) = self.storage.draft(name).await? else {
            return Ok(None);
        };
        Ok(Some(self.keys.open_draft(name, &sealed)?.to_vec()))
    }

    /// All drafts, for taking up what was interrupted.
    ///
    /// # Errors
    ///
    /// The storage fails. A draft that doesn't open is counted, no more.
    pub async fn drafts(&self) -> Result<Drafts, DraftsError> {
        let mut drafts = Drafts::default();
        for kept in self.storage.drafts().await? {
            match self.keys.open_draft(kept.name, &kept.sealed) {
                Ok(plain) => drafts.plain.push(plain.to_vec()),
                Err(_) => drafts.unopened += 1,
            }
        }
        Ok(drafts)
    }

    /// Forgets the draft of `what`.
    ///
    /// # Errors
    ///
    /// The storage fails.
    pub async fn remove_draft(&self, what: &[u8]) -> Result<(), DraftsError> {
        Ok(self.storage.remove_draft(self.draft_name(what)).await?)
    }
}
