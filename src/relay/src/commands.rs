//! What is asked of a relay's store on the command line.

use crate::carry::now;
use crate::store::{Desk, Summary};
use sync::exchange::StoreError;
use vault::{Invitation, NoRandomness};

/// Milliseconds of a day.
const DAY: u64 = 24 * 60 * 60 * 1_000;

/// Why there is no invitation.
#[derive(Debug, thiserror::Error)]
pub enum InviteError {
    /// No random code.
    #[error(transparent)]
    NoRandomness(#[from] NoRandomness),
    /// It could not be kept.
    #[error(transparent)]
    Store(#[from] StoreError),
}

/// Makes a code that is good for so many days, once. The store keeps only its hash.
///
/// # Errors
///
/// No randomness; the store fails.
pub fn invite(store: &dyn Desk, days: u64) -> Result<Invitation, InviteError> {
    let code = Invitation::make()?;
    store.invite(code.hash(), now() + days * DAY)?;
    Ok(code)
}

/// The vaults as a table with a heading.
///
/// # Errors
///
/// The store fails.
pub fn vaults(store: &dyn Desk) -> Result<String, StoreError> {
    let heading = format!(
        "{:32}  {:>7}  {:>9}  {:>13}  {:>5}  opened (s since 1970)",
        "vault", "tablets", "entries", "bytes", "aside"
    );
    let lines = store.vaults()?.into_iter().map(|summary| line(&summary));
    Ok(std::iter::once(heading)
        .chain(lines)
        .collect::<Vec<_>>()
        .join("\n"))
}

fn line(summary: &Summary) -> String {
    format!(
        "{}  {:>7}  {:>9}  {:>13}  {:>5}  {}",
        summary.vault,
        summary.devices,
        summary.frames,
        summary.bytes,
        summary.aside,
        summary.opened / 1_000
    )
}
