//! What opens the vault on this tablet, changed: the passphrase, the recovery sheet.

use super::{Door, Open};
use crate::edge::stretch;
use said::InWords;
use storage::IdbStorage;
use sync::{Storage, kept_key_file};
use vault::{KeyFile, Opener, RecoveryCode, RecoverySheet, SlotKey, StretchParams, recovery_sheet};

impl Door {
    /// Puts another passphrase in place of the old one.
    ///
    /// # Errors
    /// One sentence, such as that the old one is wrong; it opens the vault as before then.
    pub async fn change_passphrase(self, old: &str, new: &str) -> Result<(), String> {
        let open = self.held()?;
        let file = kept(open.ledger.storage()).await?;
        let old = stretch::stretch(old, &file.passphrase_params()).await?;
        // Before the new one is stretched: a wrong one is said soon.
        file.unlock(&old).map_err(|error| error.in_words())?;
        set(open.ledger.storage(), &file, Opener::Passphrase(&old), new).await
    }

    /// Makes a recovery sheet, to be shown at once; the one before opens this tablet no more. Right after the vault was made, no
    /// passphrase is needed. `made_on` is the day as it is to be read.
    ///
    /// # Errors
    /// One sentence, such as that the passphrase is wrong; the sheet until now stays good then.
    pub async fn make_sheet(
        self,
        passphrase: &str,
        made_on: &str,
    ) -> Result<RecoverySheet, String> {
        let open = self.held()?;
        let file = kept(open.ledger.storage()).await?;
        let key = match self.standing.take_key() {
            Some(key) => key,
            None => stretch::stretch(passphrase, &file.passphrase_params()).await?,
        };
        let code = open.ledger.make_recovery(Opener::Passphrase(&key)).await;
        let code = code.map_err(|error| error.in_words())?;
        self.standing.settled();
        self.sheet_is_to_print(&open).await;
        self.tend_keys(&open).await;
        let (vault, name) = (file.vault(), file.device_name());
        Ok(recovery_sheet(&code, vault, name, made_on))
    }

    /// Gives this tablet another name in the vault, after it was put back from a copy, and opens it again. What it wrote that
    /// nobody else has is written anew; nothing is lost.
    ///
    /// # Errors
    /// One sentence, such as that the passphrase is wrong.
    pub async fn set_up_anew(self, passphrase: &str) -> Result<(), String> {
        self.settle().await;
        let open = self.held()?;
        let file = kept(open.ledger.storage()).await?;
        let key = stretch::stretch(passphrase, &file.passphrase_params()).await?;
        let by = Opener::Passphrase(&key);
        file.unlock_by(by).map_err(|error| error.in_words())?;
        let read = open.ledger.read_again().await;
        let read = read.map_err(|error| error.in_words())?;
        let seen = open.seen_of(open.ledger.device());
        let renewed = open.ledger.renew(&file, by, seen, &read.entries).await;
        let renewed = renewed.map_err(|error| error.in_words())?;
        let keys = renewed.unlock(&key).map_err(|error| error.in_words())?;
        let storage = self.storage().await.map_err(|error| error.in_words())?;
        self.open_with(storage, keys).await
    }

    /// Does what is due about the vault's keys, where this tablet is a lead. What fails is due still, and done another time.
    pub(super) async fn tend_keys(self, open: &Open) {
        if matches!(open.ledger.renew_keys().await, Ok(Some(_))) {
            self.go_home();
        }
    }

    /// Whether a code from a recovery sheet opens this tablet.
    ///
    /// # Errors
    /// One sentence on why it doesn't.
    pub async fn try_code(self, code: &str) -> Result<(), String> {
        let code: RecoveryCode = read(code)?;
        let storage = self.storage().await.map_err(|error| error.in_words())?;
        let file = kept(&storage).await?;
        let opened = file.unlock_by(Opener::Recovery(&code));
        opened.map(drop).map_err(|error| error.in_words())
    }

    /// Opens the vault with the code of its recovery sheet, under a new passphrase.
    ///
    /// # Errors
    /// One sentence; nothing is changed then.
    pub async fn open_by_code(self, code: &str, new: &str) -> Result<(), String> {
        self.must_be_writer()?;
        let code: RecoveryCode = read(code)?;
        let storage = self.storage().await.map_err(|error| error.in_words())?;
        let file = kept(&storage).await?;
        set(&storage, &file, Opener::Recovery(&code), new).await?;
        let keys = file.unlock_by(Opener::Recovery(&code));
        let keys = keys.map_err(|error| error.in_words())?;
        self.open_with(storage, keys).await
    }
}

pub(super) async fn kept(storage: &IdbStorage) -> Result<KeyFile, String> {
    let kept = kept_key_file(storage).await;
    kept.map_err(|error| error.in_words())
}

fn read(code: &str) -> Result<RecoveryCode, String> {
    code.parse()
        .map_err(|error: vault::RecoveryCodeError| error.in_words())
}

/// Keeps the key file with another passphrase.
async fn set(
    storage: &IdbStorage,
    file: &KeyFile,
    by: Opener<'_>,
    new: &str,
) -> Result<(), String> {
    let (key, params) = fresh(new).await?;
    let changed = file
        .set_passphrase(by, &key, params)
        .map_err(|error| error.in_words())?;
    storage
        .put_key_file(&changed.to_bytes())
        .await
        .map_err(|error| error.in_words())
}

/// A new passphrase, stretched.
pub(super) async fn fresh(passphrase: &str) -> Result<(SlotKey, StretchParams), String> {
    let params = StretchParams::fresh(passphrase).map_err(|error| error.in_words())?;
    Ok((stretch::stretch(passphrase, &params).await?, params))
}
