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

/// Brings the roll that is kept here and the relay's together: one only ever grows, so the longer one holds, and what the
/// relay lacks of it is told to it. Keep what this gives, durably, if it is another than `known`.
///
/// # Errors
///
/// The relay fails, or shows a roll that neither continues the one that is known nor is continued by it.
pub async fn settle_roll<H: Host>(
    host: &H,
    vault: VaultId,
    own: DeviceId,
    known: &[Statement],
) -> Result<Vec<Statement>, RollRefused> {
    let shown = shown(host).await?;
    if shown.len() >= known.len() {
        return believed(vault, own, known, shown);
    }
    if !known.starts_with(&shown) {
        return Err(RollRefused::Other);
    }
    for statement in &known[shown.len()..] {
        host.ask(Request::State(Box::new(*statement))).await?;
    }
    Ok(known.to_vec())
}

/// The roll as the relay shows it, not believed yet.
async fn shown<H: Host>(host: &H) -> Result<Vec<Statement>, RollRefused> {
    match host.ask(Request::Roll).await? {
        Answer::Roll(shown) => Ok(shown),
        _ => Err(Failure::Senseless("it answers something else".into()).into()),
    }
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
    let shown = shown(host).await?;
    believed(vault, own, known, shown)
}

fn believed(
    vault: VaultId,
    own: DeviceId,
    known: &[Statement],
    shown: Vec<Statement>,
) -> Result<Vec<Statement>, RollRefused> {
    let roll = Roll::read(vault, &shown)?;
    if roll.standing(own).is_none() {
        return Err(RollRefused::Stranger);
    }
    if !shown.starts_with(known) {
        return Err(RollRefused::Other);
    }
    Ok(shown)
}
