//! What a relay is asked, signed with this device's key; the key itself stays with the ledger.

use super::Ledger;
use vault::request::{Asked, Vouched};
use vault::roll::Change;
use vault::{NoRandomness, Role, Roll, RollError, Statement, VaultId};

impl<S> Ledger<S> {
    /// The vault.
    pub fn vault(&self) -> VaultId {
        self.keys.vault()
    }

    /// Signs a request that is made at `time`, in milliseconds since 1970 by the relay's clock.
    ///
    /// # Errors
    ///
    /// No randomness.
    pub fn vouch(&self, asked: Asked<'_>, time: u64) -> Result<Vouched, NoRandomness> {
        self.keys.vouch(asked, time)
    }

    /// The statement that begins a roll, with which a vault is opened on a relay: this device is its lead.
    ///
    /// # Errors
    ///
    /// Never for an empty roll.
    pub fn first_statement(&self) -> Result<Statement, RollError> {
        let empty = Roll::new(self.keys.vault());
        self.keys
            .state(&empty, self.keys.public(), Change::Admit(Role::Lead))
    }
}
