//! The fields as they are written, before anything is believed of them.

use super::{MOST_DEVICES, MOST_STATEMENTS, Shown, WireError};
use crate::exchange::{Run, Vector, Why};
use serde::{Deserialize, Serialize};
use serde_bytes::ByteBuf;
use vault::frame::PublicKey;
use vault::{DeviceId, Frame, FrameHash, Head, Invitation, Statement};

#[derive(Serialize, Deserialize)]
pub struct RawHead {
    pub sequence: u64,
    pub hash: FrameHash,
}

#[derive(Serialize, Deserialize)]
pub struct RawPlace {
    pub device: DeviceId,
    pub sequence: u64,
    pub hash: FrameHash,
}

#[derive(Serialize, Deserialize)]
pub struct RawShown {
    #[serde(with = "serde_bytes")]
    pub key: [u8; 32],
    pub sequence: u64,
    pub hash: FrameHash,
}

impl From<Head> for RawHead {
    fn from(head: Head) -> Self {
        Self {
            sequence: head.sequence,
            hash: head.hash,
        }
    }
}

impl TryFrom<RawHead> for Head {
    type Error = WireError;

    fn try_from(raw: RawHead) -> Result<Self, WireError> {
        head(raw.sequence, raw.hash)
    }
}

impl From<Shown> for RawShown {
    fn from(shown: Shown) -> Self {
        Self {
            key: shown.key.bytes(),
            sequence: shown.head.sequence,
            hash: shown.head.hash,
        }
    }
}

impl TryFrom<RawShown> for Shown {
    type Error = WireError;

    fn try_from(raw: RawShown) -> Result<Self, WireError> {
        Ok(Self {
            key: PublicKey::from_bytes(&raw.key).ok_or(WireError::Key)?,
            head: head(raw.sequence, raw.hash)?,
        })
    }
}

fn head(sequence: u64, hash: FrameHash) -> Result<Head, WireError> {
    if sequence == 0 {
        return Err(WireError::Zero);
    }
    Ok(Head { sequence, hash })
}

impl From<(DeviceId, Head)> for RawPlace {
    fn from((device, head): (DeviceId, Head)) -> Self {
        Self {
            device,
            sequence: head.sequence,
            hash: head.hash,
        }
    }
}

impl RawPlace {
    pub fn place(self) -> Result<(DeviceId, Head), WireError> {
        Ok((self.device, head(self.sequence, self.hash)?))
    }
}

pub fn raw_vector(vector: &Vector) -> Vec<RawPlace> {
    vector.iter().map(RawPlace::from).collect()
}

pub fn vector(raw: Vec<RawPlace>) -> Result<Vector, WireError> {
    let mut vector = Vector::new();
    few(raw.len())?;
    for place in raw {
        if vector.head(place.device).is_some() {
            return Err(WireError::Twice(place.device));
        }
        let (device, head) = place.place()?;
        vector.set(device, Some(head));
    }
    Ok(vector)
}

pub fn shown(raw: Vec<RawShown>) -> Result<Vec<Shown>, WireError> {
    few(raw.len())?;
    let shown = raw
        .into_iter()
        .map(Shown::try_from)
        .collect::<Result<Vec<_>, _>>()?;
    let mut devices: Vec<DeviceId> = shown.iter().map(|shown| shown.key.device()).collect();
    devices.sort_unstable();
    match devices.windows(2).find(|pair| pair[0] == pair[1]) {
        Some(pair) => Err(WireError::Twice(pair[0])),
        None => Ok(shown),
    }
}

fn few(devices: usize) -> Result<(), WireError> {
    if devices > MOST_DEVICES {
        return Err(WireError::TooManyDevices(devices));
    }
    Ok(())
}

pub fn raw_run(run: &Run) -> Vec<ByteBuf> {
    run.frames()
        .iter()
        .map(|frame| ByteBuf::from(frame.bytes()))
        .collect()
}

pub fn run(raw: Vec<ByteBuf>) -> Result<Run, WireError> {
    let frames = raw.into_iter().enumerate();
    let frames = frames.map(|(at, bytes)| frame(at, bytes));
    Ok(Run::new(frames.collect::<Result<_, _>>()?)?)
}

fn frame(at: usize, bytes: ByteBuf) -> Result<Frame, WireError> {
    Frame::parse(bytes.into_vec()).map_err(|error| WireError::Frame { at: at + 1, error })
}

/// A frame that was set aside.
#[derive(Serialize, Deserialize)]
pub struct RawApart {
    why: RawWhy,
    frame: ByteBuf,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
enum RawWhy {
    Fork,
    Removed,
}

pub fn raw_apart((why, frame): &(Why, Frame)) -> RawApart {
    let why = match why {
        Why::Fork => RawWhy::Fork,
        Why::AfterRemoval => RawWhy::Removed,
    };
    RawApart {
        why,
        frame: ByteBuf::from(frame.bytes()),
    }
}

pub fn apart(raw: Vec<RawApart>) -> Result<Vec<(Why, Frame)>, WireError> {
    let apart = raw.into_iter().enumerate().map(|(at, raw)| {
        let why = match raw.why {
            RawWhy::Fork => Why::Fork,
            RawWhy::Removed => Why::AfterRemoval,
        };
        Ok((why, frame(at, raw.frame)?))
    });
    apart.collect()
}

pub fn raw_statement(statement: &Statement) -> ByteBuf {
    ByteBuf::from(statement.bytes())
}

pub fn statement(raw: &ByteBuf) -> Result<Statement, WireError> {
    Ok(Statement::parse(raw)?)
}

pub fn statements(raw: &[ByteBuf]) -> Result<Vec<Statement>, WireError> {
    if raw.len() > MOST_STATEMENTS {
        return Err(WireError::Roll(raw.len()));
    }
    raw.iter().map(statement).collect()
}

pub fn code(raw: &ByteBuf) -> Result<Invitation, WireError> {
    let bytes = raw.as_slice();
    bytes
        .try_into()
        .map(Invitation::from_bytes)
        .map_err(|_| WireError::Code(bytes.len()))
}
