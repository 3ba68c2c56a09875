//! Asking a relay for a vault's roll, and believing none that can't be.

use super::{Answer, Failure, Host, Request};
use vault::{DeviceId, Roll, RollError, Statement, VaultId};

/// Why a roll was not believed, or not had.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum RollRefused {
    /// The relay can't be asked, or doesn't answer.
    #[error(transparent)]
    Failed(#[from] Failure),
    /// It is not one that a vault's leads made.
    #[error("the relay's list of tablets doesn't hold together: {0}")]
    Unsound(#[from] RollError),
    /// This device is not on it and never was.
    #[error("the relay's list of tablets doesn't have this one")]
    Stranger,
    /// It lacks or contradicts what was known.
    #[error(
        "the relay's list of tablets is not the one that it showed before: it may have been put back"
    )]
    Other,
}

/// Asks for a roll. `known` is what was believed before: a roll only ever grows. Keep what this gives, durably.
///
/// # Errors
///
/// The relay fails, or what it shows is not to be believed.
pub async fn ask_roll<H: Host>(
    host: &H,
    vault: VaultId,
    own: DeviceId,
    known: &[Statement],
) -> Result<Vec<Statement>, RollRefused> {
    let Answer::Roll(shown) = host.ask(Request::Roll).await? else {
        return Err(Failure::Senseless("it answers something else".into()).into());
    };
    let roll = Roll::read(vault, &shown)?;
    if roll.standing(own).is_none() {
        return Err(RollRefused::Stranger);
    }
    if !shown.starts_with(known) {
        return Err(RollRefused::Other);
    }
    Ok(shown)
}
