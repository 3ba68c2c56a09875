//! Asking a relay for a vault's roll, and believing none that can't be.

use super::{Answer, Failure, Host, Nonsense, Request};
use vault::roll::Change;
use vault::{DeviceId, Keys, Role, Roll, RollError, Statement, VaultId};

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
/// relay lacks of it is told to it. Where two leads stated something at once, the list of whoever came first holds, and the
/// other lead says again what is lacking there ([`restated`]). Give what comes of this to
/// [`Ledger::take_roll`](crate::Ledger::take_roll), if it is another than `known`.
///
/// # Errors
///
/// The relay fails, or shows a roll that is not to be believed.
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
        return believed(vault, own, known, shown).map_err(|refused| match refused {
            RollRefused::Unsound(_) => RollRefused::Other,
            refused => refused,
        });
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
        _ => Err(Failure::from(Nonsense::Other).into()),
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
    // What was known was believed before, so its signatures were checked.
    let (before, since) = shown.split_at(parting(known, &shown));
    let mut roll = Roll::reread(vault, before)?;
    for statement in since {
        roll.add(statement)?;
    }
    if roll.standing(own).is_none() {
        return Err(RollRefused::Stranger);
    }
    if shown.starts_with(known) || goes_on_otherwise(&roll, own, known, &shown) {
        Ok(shown)
    } else {
        Err(RollRefused::Other)
    }
}

/// Whether a list that parts from the one that is known is another lead's, who stated something at the same time: after the
/// parting a lead has signed that is one by the known list. A lead takes it, for it says again what is lacking there;
/// others only once no removal that they know of is lacking, so that nobody brings a removed device back by showing them
/// less. Whoever was removed is shown nothing after that, and takes it as it is.
fn goes_on_otherwise(roll: &Roll, own: DeviceId, known: &[Statement], shown: &[Statement]) -> bool {
    let Ok(before) = Roll::reread(roll.vault(), known) else {
        return false;
    };
    let mut since = shown[parting(known, shown)..].iter();
    let by_a_lead = since.any(|statement| before.role(statement.by.device()) == Some(Role::Lead));
    let mut removed = before
        .devices()
        .filter(|(_, standing)| standing.removed_after.is_some());
    let leads_or_gone = roll.role(own).is_none_or(|role| role == Role::Lead);
    by_a_lead && (leads_or_gone || removed.all(|(device, _)| roll.role(device).is_none()))
}

/// How many statements both begin with.
fn parting(one: &[Statement], other: &[Statement]) -> usize {
    let both = one.iter().zip(other);
    both.take_while(|(one, other)| one == other).count()
}

/// A list with what it lacks of the known one, said again by this device if it is a lead there. What the list has decided
/// otherwise, such as for a device that another lead removed, is left so.
pub fn restated(keys: &Keys, known: &[Statement], list: &[Statement]) -> Vec<Statement> {
    let mut statements = list.to_vec();
    if list.starts_with(known) {
        return statements;
    }
    let Ok(mut roll) = Roll::read(keys.vault(), list) else {
        return statements;
    };
    if roll.role(keys.device()) != Some(Role::Lead) {
        return statements;
    }
    for lacking in &known[parting(known, list)..] {
        let holds = match lacking.change {
            Change::Admit(meant) => roll.role(lacking.about.device()) == Some(meant),
            Change::Remove { .. } => roll.role(lacking.about.device()).is_none(),
        };
        if holds {
            continue;
        }
        if let Ok(again) = keys.state(&roll, lacking.about, lacking.change)
            && roll.add(&again).is_ok()
        {
            statements.push(again);
        }
    }
    statements
}
