//! Going through a carry file frame by frame, so that one of any size needs the memory of one frame.

use super::{CarryError, FORMAT, HEADER, MAGIC, SUM, WITH_ROLL};
use crate::storage::StorageError;
use std::io::{self, BufReader, Read, Seek, SeekFrom};
use std::ops::Range;
use vault::frame::PublicKey;
use vault::{CarrySum, DeviceId, Frame, Head, Statement, VaultId};

/// Bytes summed at a time.
const PIECE: u64 = 64 * 1024;

/// Why a carry file could not be gone through.
#[derive(Debug, thiserror::Error)]
pub enum WalkError {
    /// It is not taken.
    #[error(transparent)]
    Carry(#[from] CarryError),
    /// Its bytes can't be had from where they are.
    #[error("this carry file can't be read: {0}")]
    Read(#[from] io::Error),
}

impl From<WalkError> for CarryError {
    fn from(error: WalkError) -> Self {
        match error {
            WalkError::Carry(error) => error,
            WalkError::Read(error) => StorageError::Other(error.to_string()).into(),
        }
    }
}

/// A carry file whose sum is right, wherever it is kept.
///
/// ```no_run
/// use sync::carry::Walk;
///
/// let mut walk = Walk::begin(std::fs::File::open("week.carry")?)?;
/// for log in walk.check()? {
///     println!("{}: entries {} to {}", log.key.device(), log.first, log.head.sequence);
/// }
/// # Ok::<(), sync::carry::WalkError>(())
/// ```
pub struct Walk<R> {
    input: BufReader<R>,
    vault: VaultId,
    format: u8,
    roll: Vec<Statement>,
    /// Where the sum begins.
    end: u64,
    at: u64,
}

/// A device's part of a carry file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Span {
    /// The device's key.
    pub key: PublicKey,
    /// The first frame's number.
    pub first: u64,
    /// The last frame.
    pub head: Head,
}

impl<R: Read + Seek> Walk<R> {
    /// Sums a file up.
    ///
    /// # Errors
    ///
    /// It is no carry file, of a later format, or its sum is wrong; it can't be read.
    pub fn begin(input: R) -> Result<Self, WalkError> {
        let mut input = BufReader::new(input);
        let end = summed(&mut input)?;
        input.seek(SeekFrom::Start(MAGIC.len() as u64))?;
        let (mut format, mut vault) = ([0; 1], [0; 16]);
        input.read_exact(&mut format)?;
        input.read_exact(&mut vault)?;
        Ok(Self {
            input,
            vault: VaultId::from_bytes(vault),
            format: format[0],
            roll: Vec::new(),
            end,
            at: 0,
        })
    }

    /// The vault that it is from.
    pub fn vault(&self) -> VaultId {
        self.vault
    }

    /// The statements of the roll that is in it, once it was gone through; empty where there is none. Nothing of them is checked
    /// but their form.
    pub fn roll(&self) -> &[Statement] {
        &self.roll
    }

    /// Whether every frame follows the one before it and is signed by the device that it names; gives what there is of each
    /// device, in the order of their ids. Whether those belong to the vault is not asked.
    ///
    /// # Errors
    ///
    /// The first thing that is wrong; the file can't be read.
    pub fn check(&mut self) -> Result<Vec<Span>, WalkError> {
        let vault = self.vault;
        let mut logs: Vec<Span> = Vec::new();
        self.each(|key, frame| {
            let log = logs.last_mut().filter(|log| log.key == *key);
            let before = log.as_ref().map(|log| log.head);
            genuine(vault, key, before, &frame)?;
            match log {
                Some(log) => log.head = frame.head(),
                None => logs.push(Span {
                    key: *key,
                    first: frame.sequence(),
                    head: frame.head(),
                }),
            }
            Ok::<_, WalkError>(())
        })?;
        Ok(logs)
    }

    /// Goes through all frames in their order, each with the key of the device in whose log it is. Nothing of them is
    /// checked but their form; [`Walk::check`] does.
    ///
    /// # Errors
    ///
    /// The file is not formed as it should be, or can't be read; whatever `look` says.
    pub fn each<E: From<WalkError>>(
        &mut self,
        mut look: impl FnMut(&PublicKey, Frame) -> Result<(), E>,
    ) -> Result<(), E> {
        self.each_at(|key, _, frame| look(key, frame))
    }

    /// The same with where in the file each frame stands.
    pub(super) fn each_at<E: From<WalkError>>(
        &mut self,
        mut look: impl FnMut(&PublicKey, Range<u64>, Frame) -> Result<(), E>,
    ) -> Result<(), E> {
        let mut logs = self.logs()?;
        let mut before: Option<DeviceId> = None;
        while logs > 0 {
            let (key, mut frames) = self.log(before)?;
            before = Some(key.device());
            while frames > 0 {
                let at = self.at;
                let frame = self.frame()?;
                look(&key, at..self.at, frame)?;
                frames -= 1;
            }
            logs -= 1;
        }
        self.roll = self.statements()?;
        if self.at == self.end {
            Ok(())
        } else {
            Err(senseless(self.at).into())
        }
    }

    /// Gives frames that stand one after the other, from where [`Walk::each_at`] has met the first.
    pub(super) fn some(
        &mut self,
        at: u64,
        count: u32,
        mut look: impl FnMut(Frame),
    ) -> Result<(), WalkError> {
        self.at = at;
        self.input.seek(SeekFrom::Start(at))?;
        for _ in 0..count {
            look(self.frame()?);
        }
        Ok(())
    }

    /// What stands after the logs.
    fn statements(&mut self) -> Result<Vec<Statement>, WalkError> {
        if self.format != WITH_ROLL {
            return Ok(Vec::new());
        }
        let at = self.at;
        let count = u16::from_be_bytes(self.fixed()?);
        if count == 0 {
            return Err(senseless(at));
        }
        let mut statements = Vec::new();
        for _ in 0..count {
            let at = self.at;
            let bytes: [u8; Statement::LENGTH] = self.fixed()?;
            statements.push(Statement::parse(&bytes).map_err(|_| senseless(at))?);
        }
        Ok(statements)
    }

    /// Goes to the logs; how many there are.
    fn logs(&mut self) -> Result<u16, WalkError> {
        self.at = HEADER as u64 - 2;
        self.input.seek(SeekFrom::Start(self.at))?;
        let at = self.at;
        match u16::from_be_bytes(self.fixed()?) {
            0 => Err(senseless(at)),
            count => Ok(count),
        }
    }

    /// A log's key, and how many frames it has.
    fn log(&mut self, before: Option<DeviceId>) -> Result<(PublicKey, u32), WalkError> {
        let at = self.at;
        let key = PublicKey::from_bytes(&self.fixed()?);
        let key = key.filter(|key| before.is_none_or(|before| before < key.device()));
        let key = key.ok_or_else(|| senseless(at))?;
        let at = self.at;
        match u32::from_be_bytes(self.fixed()?) {
            0 => Err(senseless(at)),
            count => Ok((key, count)),
        }
    }

    fn frame(&mut self) -> Result<Frame, WalkError> {
        let at = self.at;
        let length = u32::from_be_bytes(self.fixed()?);
        if u64::from(length) > self.end - self.at {
            return Err(senseless(self.at));
        }
        // A length that lies reserves no room.
        let mut bytes = Vec::new();
        let mut part = (&mut self.input).take(length.into());
        self.at += part.read_to_end(&mut bytes)? as u64;
        Frame::parse(bytes).map_err(|_| senseless(at))
    }

    fn fixed<const N: usize>(&mut self) -> Result<[u8; N], WalkError> {
        if N as u64 > self.end - self.at {
            return Err(senseless(self.at));
        }
        let mut fixed = [0; N];
        self.input.read_exact(&mut fixed)?;
        self.at += N as u64;
        Ok(fixed)
    }
}

fn senseless(at: u64) -> WalkError {
    let at = usize::try_from(at).unwrap_or(usize::MAX);
    CarryError::Senseless { at }.into()
}

/// Whether a frame is its device's own and the next after `before`.
pub(super) fn genuine(
    vault: VaultId,
    key: &PublicKey,
    before: Option<Head>,
    frame: &Frame,
) -> Result<(), CarryError> {
    let next = before.is_none_or(|before| {
        frame.sequence() == before.sequence.saturating_add(1)
            && frame.header().previous == before.hash
    });
    if next && frame.header().vault == vault && frame.verify(key).is_ok() {
        return Ok(());
    }
    Err(CarryError::Forged {
        device: key.device(),
        sequence: frame.sequence(),
    })
}

/// Where the sum begins, if it is right.
fn summed<R: Read + Seek>(input: &mut BufReader<R>) -> Result<u64, WalkError> {
    let length = input.seek(SeekFrom::End(0))?;
    input.rewind()?;
    let mut first = Vec::new();
    input
        .by_ref()
        .take(MAGIC.len() as u64 + 1)
        .read_to_end(&mut first)?;
    begins(&first)?;
    let end = length
        .checked_sub(SUM as u64)
        .filter(|end| *end >= HEADER as u64)
        .ok_or(CarryError::Damaged)?;
    input.rewind()?;
    let mut sum = CarrySum::begin();
    let mut piece = Vec::new();
    let mut at = 0;
    while at < end {
        piece.clear();
        let taken = input
            .by_ref()
            .take(PIECE.min(end - at))
            .read_to_end(&mut piece)?;
        if taken == 0 {
            return Err(CarryError::Damaged.into());
        }
        sum.add(&piece);
        at += taken as u64;
    }
    let mut said = [0; SUM];
    input.read_exact(&mut said)?;
    if sum.end() == said {
        Ok(end)
    } else {
        Err(CarryError::Damaged.into())
    }
}

/// Whether a file's first bytes are those of a carry file.
fn begins(bytes: &[u8]) -> Result<(), CarryError> {
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
        None => Err(CarryError::Damaged),
        Some(&(FORMAT | WITH_ROLL)) => Ok(()),
        Some(later) => Err(CarryError::Format(*later)),
    }
}
