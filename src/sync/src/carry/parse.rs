//! Reading a carry file, from bytes of any origin.

use super::{CarryError, FORMAT, HEADER, MAGIC, SUM};
use crate::exchange::Vector;
use vault::frame::PublicKey;
use vault::{DeviceId, Frame, Head, VaultId, carry_sum};

/// A carry file that is whole, and whose frames are chained and signed by the devices that they name. Whether those
/// belong to the vault is looked at on import.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CarryFile {
    /// The vault that it is from.
    pub vault: VaultId,
    /// Its logs, at least one, in the order of their devices' ids.
    pub logs: Vec<CarriedLog>,
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
        let body = whole(bytes)?;
        let mut reader = Reader {
            body,
            at: HEADER - 2,
        };
        let file = Self {
            vault: VaultId::from_bytes(fixed(&body[17..33])),
            logs: reader.logs()?,
        };
        if reader.at != body.len() {
            return Err(CarryError::Senseless { at: reader.at });
        }
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
            let device = log.device();
            for (at, frame) in log.frames.iter().enumerate() {
                let follows = at == 0 || log.frames[at - 1].hash() == frame.header().previous;
                let placed = frame.sequence() == log.first().saturating_add(at as u64);
                let ours = frame.header().vault == self.vault;
                if !(follows && placed && ours && frame.verify(&log.key).is_ok()) {
                    let sequence = frame.sequence();
                    return Err(CarryError::Forged { device, sequence });
                }
            }
        }
        Ok(())
    }
}

/// Everything before the sum, if the sum is right.
fn whole(bytes: &[u8]) -> Result<&[u8], CarryError> {
    if !bytes.starts_with(MAGIC) {
        // What is left of a file that was cut within its first word is still one that was cut.
        let cut = !bytes.is_empty() && MAGIC.starts_with(bytes);
        return Err(if cut {
            CarryError::Damaged
        } else {
            CarryError::NotCarry
        });
    }
    match bytes.get(MAGIC.len()) {
        None => return Err(CarryError::Damaged),
        Some(&FORMAT) => {}
        Some(later) => return Err(CarryError::Format(*later)),
    }
    let (body, sum) = bytes
        .split_last_chunk::<SUM>()
        .filter(|(body, _)| body.len() >= HEADER)
        .ok_or(CarryError::Damaged)?;
    if carry_sum(body) == *sum {
        Ok(body)
    } else {
        Err(CarryError::Damaged)
    }
}

struct Reader<'a> {
    body: &'a [u8],
    at: usize,
}

impl Reader<'_> {
    fn logs(&mut self) -> Result<Vec<CarriedLog>, CarryError> {
        let count = u16::from_be_bytes(fixed(self.take(2)?));
        if count == 0 {
            return Err(CarryError::Senseless { at: HEADER - 2 });
        }
        let mut logs: Vec<CarriedLog> = Vec::new();
        for _ in 0..count {
            let at = self.at;
            let log = self.log()?;
            if logs
                .last()
                .is_some_and(|last| last.device() >= log.device())
            {
                return Err(CarryError::Senseless { at });
            }
            logs.push(log);
        }
        Ok(logs)
    }

    fn log(&mut self) -> Result<CarriedLog, CarryError> {
        let at = self.at;
        let key = PublicKey::from_bytes(&fixed(self.take(32)?));
        let key = key.ok_or(CarryError::Senseless { at })?;
        let at = self.at;
        let count = self.number()?;
        if count == 0 {
            return Err(CarryError::Senseless { at });
        }
        // One after the other: a count that lies reserves no room.
        let mut frames = Vec::new();
        for _ in 0..count {
            frames.push(self.frame()?);
        }
        Ok(CarriedLog { key, frames })
    }

    fn frame(&mut self) -> Result<Frame, CarryError> {
        let at = self.at;
        let length = self.number()?;
        let bytes = self.take(usize::try_from(length).unwrap_or(usize::MAX))?;
        Frame::parse(bytes.to_vec()).map_err(|_| CarryError::Senseless { at })
    }

    fn number(&mut self) -> Result<u32, CarryError> {
        Ok(u32::from_be_bytes(fixed(self.take(4)?)))
    }

    fn take(&mut self, length: usize) -> Result<&[u8], CarryError> {
        let end = self.at.checked_add(length);
        let taken = end.and_then(|end| self.body.get(self.at..end));
        let taken = taken.ok_or(CarryError::Senseless { at: self.at })?;
        self.at += length;
        Ok(taken)
    }
}

/// Callers pass exactly `N` bytes.
fn fixed<const N: usize>(bytes: &[u8]) -> [u8; N] {
    let mut fixed = [0; N];
    fixed.copy_from_slice(bytes);
    fixed
}
