//! Reading a carry file, from bytes of any origin.

use super::CarryError;
use super::walk::{Walk, WalkError, genuine};
use crate::exchange::Vector;
use std::io::Cursor;
use vault::frame::PublicKey;
use vault::{DeviceId, Frame, Head, Statement, VaultId};

/// A carry file that is whole, and whose frames are chained and signed by the devices that they name. Whether those
/// belong to the vault is looked at on import.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CarryFile {
    /// The vault that it is from.
    pub vault: VaultId,
    /// Its logs, at least one, in the order of their devices' ids.
    pub logs: Vec<CarriedLog>,
    /// The roll's statements, not believed yet; empty where there are none.
    pub roll: Vec<Statement>,
}

/// Consecutive frames of one device.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CarriedLog {
    /// The device's key.
    pub key: PublicKey,
    /// At least one.
    pub frames: Vec<Frame>,
}

impl CarriedLog {
    /// Whose they are.
    pub fn device(&self) -> DeviceId {
        self.key.device()
    }

    /// The first frame's number.
    pub fn first(&self) -> u64 {
        self.frames.first().map_or(0, Frame::sequence)
    }

    /// The head of a log that ends with them.
    pub fn head(&self) -> Option<Head> {
        self.frames.last().map(Frame::head)
    }
}

impl CarryFile {
    /// Reads a carry file.
    ///
    /// # Errors
    ///
    /// The first thing that is wrong with it.
    pub fn parse(bytes: &[u8]) -> Result<Self, CarryError> {
        let mut walk = Walk::begin(Cursor::new(bytes))?;
        let mut logs: Vec<CarriedLog> = Vec::new();
        walk.each(|key, frame| {
            match logs.last_mut().filter(|log| log.key == *key) {
                Some(log) => log.frames.push(frame),
                None => logs.push(CarriedLog {
                    key: *key,
                    frames: vec![frame],
                }),
            }
            Ok::<_, WalkError>(())
        })?;
        let file = Self {
            vault: walk.vault(),
            logs,
            roll: walk.roll().to_vec(),
        };
        file.check().map(|()| file)
    }

    /// How far its logs go: what the one who wrote it has at least.
    pub fn vector(&self) -> Vector {
        let logs = self.logs.iter();
        logs.filter_map(|log| Some((log.device(), log.head()?)))
            .collect()
    }

    fn check(&self) -> Result<(), CarryError> {
        for log in &self.logs {
            let mut before = None;
            for frame in &log.frames {
                genuine(self.vault, &log.key, before, frame)?;
                before = Some(frame.head());
            }
        }
        Ok(())
    }
}

/// The roll's statements alone, of a file of which the rest was looked at already; empty where there are none.
///
/// # Errors
///
/// It is no carry file, or not formed as it should be.
pub fn carried_roll(bytes: &[u8]) -> Result<Vec<Statement>, CarryError> {
    let mut walk = Walk::begin(Cursor::new(bytes))?;
    walk.each(|_, _| Ok::<_, WalkError>(()))?;
    Ok(walk.roll().to_vec())
}
