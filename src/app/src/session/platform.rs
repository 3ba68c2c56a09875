//! The tablet's own unlocking as one more way into the vault. It is never the only one: the passphrase stays.

use super::Door;
use super::opening::kept;
use crate::edge::platform::{self, Ask};
use crate::edge::stretch;
use said::InWords;
use sync::Storage;
use vault::{KeyFile, Opener, Platform, platform_salt};

fn asks(file: &KeyFile) -> Vec<Ask> {
    let known = file.platforms();
    let each = known.map(|Platform { id, salt }| Ask {
        id: id.to_vec(),
        salt: *salt,
    });
    each.collect()
}

impl Door {
    /// Whether the tablet's own unlocking opens the vault that is kept here.
    pub async fn opens_by_tablet(self) -> bool {
        let Ok(storage) = self.storage().await else {
            return false;
        };
        let file = kept(&storage).await;
        file.is_ok_and(|file| file.platforms().next().is_some())
    }

    /// Opens the vault by it.
    ///
    /// # Errors
    /// One sentence; the passphrase opens it still.
    pub async fn unlock_by_tablet(self) -> Result<(), String> {
        self.must_be_writer()?;
        let storage = self.storage().await.map_err(|error| error.in_words())?;
        let file = kept(&storage).await?;
        let secret = platform::ask(&asks(&file)).await?;
        let keys = file.unlock_by(Opener::Platform(&secret));
        let keys = keys.map_err(|error| error.in_words())?;
        self.open_with(storage, keys).await
    }

    /// Lets it open the vault from now on.
    ///
    /// # Errors
    /// One sentence, such as that the passphrase is wrong; nothing is changed then.
    pub async fn add_tablet_unlock(self, passphrase: &str) -> Result<(), String> {
        let open = self.held()?;
        let storage = open.ledger.storage();
        let file = kept(storage).await?;
        let key = stretch::stretch(passphrase, &file.passphrase_params()).await?;
        let by = Opener::Passphrase(&key);
        // Before the tablet is asked: a wrong passphrase leaves no credential behind.
        file.unlock_by(by).map_err(|error| error.in_words())?;
        let salt = platform_salt().map_err(|error| error.in_words())?;
        let (id, secret) = platform::make(&salt).await?;
        // One tablet has one: an older one would open it still, and nobody would know.
        let known: Vec<Vec<u8>> = file.platforms().map(|known| known.id.to_vec()).collect();
        let bare = known
            .iter()
            .fold(file, |file, id| file.without_platform(id));
        let platform = Platform {
            id: &id,
            salt: &salt,
        };
        let changed = bare.add_platform(by, platform, &secret);
        let changed = changed.map_err(|error| error.in_words())?;
        let put = storage.put_key_file(&changed.to_bytes()).await;
        put.map_err(|error| error.in_words())
    }

    /// Lets it open the vault no more.
    ///
    /// # Errors
    /// One sentence; it opens it still then.
    pub async fn remove_tablet_unlock(self) -> Result<(), String> {
        let open = self.held()?;
        let storage = open.ledger.storage();
        let file = kept(storage).await?;
        let known: Vec<Vec<u8>> = file.platforms().map(|known| known.id.to_vec()).collect();
        let bare = known
            .iter()
            .fold(file, |file, id| file.without_platform(id));
        let put = storage.put_key_file(&bare.to_bytes()).await;
        put.map_err(|error| error.in_words())
    }
}
