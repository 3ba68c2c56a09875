//! Copying what one store has and another lacks: backups, restoring, and moving from one database to the other.
//!
//! Frames are signed and their logs only ever grow, so a copy is made as a tablet's push is: whatever continues a log is
//! kept, whatever doesn't is set aside, and nothing is overwritten. Both stores may serve meanwhile.

use crate::store::{Desk, Opening, Summary};
use std::fmt;
use sync::exchange::{MOST_BYTES, MOST_FRAMES, Pushed, Quota, Run, StoreError, keep_run};
use vault::{DeviceId, Frame, Head, Invitation, Roll, Statement, VaultId};

/// Frames that were set aside are copied so many at a time: each may be large.
const ASIDE: usize = 16;

/// What was copied.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Copied {
    /// Vaults that were looked at.
    pub vaults: u64,
    /// Frames that were lacking and are there now.
    pub frames: u64,
    /// What could not be copied and why, a sentence each.
    pub wrong: Vec<String>,
}

/// Copies all that `to` lacks.
///
/// # Errors
///
/// The list of vaults can't be read, or something can't be written. What can't be read further down is part of the answer.
pub fn copy(from: &dyn Desk, to: &dyn Desk) -> Result<Copied, StoreError> {
    let mut copied = Copied::default();
    for line in from.vaults()? {
        copied.vaults += 1;
        if let Err(wrong) = vault(from, to, &line, &mut copied) {
            copied.wrong.push(format!("vault {}: {wrong}", line.vault));
        }
    }
    Ok(copied)
}

fn vault(
    from: &dyn Desk,
    to: &dyn Desk,
    line: &Summary,
    copied: &mut Copied,
) -> Result<(), String> {
    // The logs' ends before the roll: a tablet that joins meanwhile is then on the roll before its first entry is copied.
    let heads = from.vector(line.vault).map_err(said)?;
    let roll = roll(from, to, line)?;
    for (device, head) in heads.iter() {
        if let Err(wrong) = log(from, to, &roll, device, head, &mut copied.frames) {
            let log = format!("vault {}, log {device}: {wrong}", line.vault);
            copied.wrong.push(log);
        }
    }
    aside(from, to, line.vault)
}

/// Brings the roll up to date and returns it.
fn roll(from: &dyn Desk, to: &dyn Desk, line: &Summary) -> Result<Roll, String> {
    let theirs = from.roll(line.vault).map_err(said)?;
    // Whoever altered a backup may have altered this: every signature counts.
    let roll = Roll::read(line.vault, &theirs).map_err(|error| format!("its roll: {error}"))?;
    let mut ours = to.roll(line.vault).map_err(said)?;
    if let (true, Some(first)) = (ours.is_empty(), theirs.first()) {
        open(to, line, first)?;
        ours = vec![*first];
    }
    if ours.iter().zip(&theirs).any(|(our, their)| our != their) {
        return Err("its roll is another one there".into());
    }
    for statement in theirs.iter().skip(ours.len()) {
        if !to.extend_roll(statement).map_err(said)? {
            return Err("its roll was changed meanwhile: do it again".into());
        }
    }
    if ours.len() > theirs.len() {
        return Roll::read(line.vault, &ours).map_err(|error| format!("its roll there: {error}"));
    }
    Ok(roll)
}

/// Opens the vault as an invitation would, at the time when it was opened first.
fn open(to: &dyn Desk, line: &Summary, first: &Statement) -> Result<(), String> {
    let code = Invitation::make()
        .map_err(|error| error.to_string())?
        .hash();
    to.invite(code, line.opened.saturating_add(1))
        .map_err(said)?;
    match to.open_vault(code, line.opened, first).map_err(said)? {
        Opening::Opened => Ok(()),
        Opening::Taken | Opening::NoInvitation => {
            Err("it was opened there meanwhile: do it again".into())
        }
    }
}

fn log(
    from: &dyn Desk,
    to: &dyn Desk,
    roll: &Roll,
    device: DeviceId,
    head: Head,
    count: &mut u64,
) -> Result<(), String> {
    let there = to.head(roll.vault(), device).map_err(said)?;
    let mut next = there.map_or(1, |there| there.sequence.saturating_add(1));
    if next > head.sequence {
        let same = to.hashes(roll.vault(), device, head.sequence, 1);
        return match same.map_err(said)?.first() {
            Some(hash) if *hash == head.hash => Ok(()),
            _ => Err(fork(head.sequence)),
        };
    }
    while next <= head.sequence {
        let run = read(from, roll.vault(), device, next)?;
        let last = run.head().sequence;
        match keep_run(to, roll, Quota { bytes: u64::MAX }, &run)
            .map_err(|error| error.to_string())?
        {
            Pushed::Kept { .. } | Pushed::Aside { .. } => {}
            Pushed::Fork { sequence } => return Err(fork(sequence)),
            Pushed::Gap { .. } => return Err("it was changed meanwhile: do it again".into()),
        }
        *count += last + 1 - next;
        next = last + 1;
    }
    Ok(())
}

fn fork(sequence: u64) -> String {
    format!("another entry {sequence} is there, and was left as it is")
}

fn read(from: &dyn Desk, vault: VaultId, device: DeviceId, next: u64) -> Result<Run, String> {
    let range = from
        .range(vault, device, next, MOST_FRAMES, MOST_BYTES)
        .map_err(said)?;
    let frames = range
        .into_iter()
        .map(Frame::parse)
        .collect::<Result<Vec<_>, _>>()
        .map_err(|error| format!("after entry {}: {error}", next - 1))?;
    let run = Run::beginning(frames).filter(|run| run.first().sequence() == next);
    run.ok_or_else(|| format!("entry {next} is missing"))
}

fn aside(from: &dyn Desk, to: &dyn Desk, vault: VaultId) -> Result<(), String> {
    let mut after = None;
    loop {
        let some = from.aside(vault, after, ASIDE).map_err(said)?;
        if some.is_empty() {
            return Ok(());
        }
        for (why, bytes) in some {
            let frame = Frame::parse(bytes).map_err(|error| format!("what is aside: {error}"))?;
            to.set_aside(&frame, why).map_err(said)?;
            after = Some((frame.device(), frame.head()));
        }
    }
}

fn said(error: StoreError) -> String {
    error.to_string()
}

impl fmt::Display for Copied {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        for wrong in &self.wrong {
            writeln!(out, "{wrong}")?;
        }
        write!(
            out,
            "{} vaults, {} entries copied, {} things wrong",
            self.vaults,
            self.frames,
            self.wrong.len()
        )
    }
}
