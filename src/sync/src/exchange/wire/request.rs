//! What a client asks.

use super::raw::{RawPlace, raw_run, raw_vector, run, vector};
use super::{LONGEST_REQUEST, WireError, decode, encode};
use crate::exchange::{Run, Vector};
use serde::{Deserialize, Serialize};
use serde_bytes::ByteBuf;

/// A request.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Request {
    /// How far does every log go?
    Heads,
    /// Send what is beyond this.
    Pull {
        /// What is here.
        have: Vector,
    },
    /// Keep these.
    Push(Run),
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
enum Raw {
    Heads {},
    Pull { have: Vec<RawPlace> },
    Push { frames: Vec<ByteBuf> },
}

impl Request {
    /// The bytes to send.
    pub fn to_bytes(&self) -> Vec<u8> {
        encode(match self {
            Self::Heads => Raw::Heads {},
            Self::Pull { have } => Raw::Pull {
                have: raw_vector(have),
            },
            Self::Push(run) => Raw::Push {
                frames: raw_run(run),
            },
        })
    }

    /// Reads a request from bytes of any origin.
    ///
    /// # Errors
    ///
    /// The first thing that is wrong with them.
    pub fn from_bytes(bytes: &[u8]) -> Result<Self, WireError> {
        Ok(match decode(bytes, LONGEST_REQUEST)? {
            Raw::Heads {} => Self::Heads,
            Raw::Pull { have } => Self::Pull {
                have: vector(have)?,
            },
            Raw::Push { frames } => Self::Push(run(frames)?),
        })
    }
}
