//! The roll that a vault had before it was brought back from its recovery sheet. Nobody is left who could go on with it, so a
//! new one begins with the tablet that was made then, and says again what the former one said of everybody.

use super::{DraftsError, Ledger};
use crate::storage::Storage;
use vault::frame::PublicKey;
use vault::roll::{Change, Standing};
use vault::{Role, Roll, Statement};

/// Under which name it is kept, sealed as a draft is.
const FORMER: &[u8] = b"former roll";

impl<S: Storage> Ledger<S> {
    /// Unless one is kept that says as much already: an older file, taken in later, must not let somebody in again.
    pub(super) async fn keep_former(&self, statements: &[Statement]) -> Result<(), DraftsError> {
        let kept = self.former().await.map_or(0, |former| former.length());
        if statements.len() as u64 <= kept {
            return Ok(());
        }
        let bytes: Vec<u8> = statements.iter().flat_map(Statement::bytes).collect();
        self.put_draft(FORMER, &bytes).await
    }

    /// None where there was none, or what is kept of it makes no sense.
    pub(super) async fn former(&self) -> Option<Roll> {
        let bytes = self.draft(FORMER).await.ok()??;
        let statements = bytes.chunks(Statement::LENGTH).map(Statement::parse);
        let statements: Vec<Statement> = statements.collect::<Result<_, _>>().ok()?;
        Roll::read(self.vault(), &statements).ok()
    }
}

/// Everybody's last role, and after all of these who was removed: what is said late of a removal asks for new keys.
pub(super) fn said_again(former: &Roll) -> Vec<(PublicKey, Change)> {
    let standings: Vec<Standing> = former.devices().map(|(_, standing)| standing).collect();
    let admitted = standings.iter().flat_map(|standing| {
        // What somebody wrote as a lead stays true.
        let led = standing.led && standing.role != Role::Lead;
        let roles = led.then_some(Role::Lead).into_iter().chain([standing.role]);
        roles.map(|role| (standing.key, Change::Admit(role)))
    });
    let removed = standings.iter().filter_map(|standing| {
        let last = standing.removed_after?;
        Some((standing.key, Change::Remove { last }))
    });
    admitted.chain(removed).collect()
}
