//! What a client asks.

use super::raw::{RawPlace, code, raw_run, raw_statement, raw_vector, run, statement, vector};
use super::{LONGEST_REQUEST, WireError, decode, encode};
use crate::exchange::{Run, Vector};
use serde::{Deserialize, Serialize};
use serde_bytes::ByteBuf;
use vault::{DeviceId, Head, Invitation, Statement};

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
    /// Which devices belong to the vault?
    Roll,
    /// Add this to the roll.
    State(Box<Statement>),
    /// Make room for a vault.
    Open {
        /// The invitation that lets one do so.
        code: Invitation,
        /// The first statement of its roll.
        first: Box<Statement>,
    },
    /// Show what was set aside. Only a lead is shown it.
    Aside {
        /// The last one that was shown before, where this goes on from there.
        after: Option<(DeviceId, Head)>,
    },
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
enum Raw {
    Heads {},
    Pull { have: Vec<RawPlace> },
    Push { frames: Vec<ByteBuf> },
    Roll {},
    State { statement: ByteBuf },
    Open { code: ByteBuf, statement: ByteBuf },
    Aside { after: Option<RawPlace> },
}

impl Request {
    /// The last part of its address on a relay.
    pub fn name(&self) -> &'static str {
        match self {
            Self::Heads => "heads",
            Self::Pull { .. } => "pull",
            Self::Push(_) => "push",
            Self::Roll => "roll",
            Self::State(_) => "state",
            Self::Open { .. } => "open",
            Self::Aside { .. } => "aside",
        }
    }

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
            Self::Roll => Raw::Roll {},
            Self::State(statement) => Raw::State {
                statement: raw_statement(statement),
            },
            Self::Open { code, first } => Raw::Open {
                code: ByteBuf::from(code.bytes()),
                statement: raw_statement(first),
            },
            Self::Aside { after } => Raw::Aside {
                after: after.map(RawPlace::from),
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
            Raw::Roll {} => Self::Roll,
            Raw::State { statement: raw } => Self::State(Box::new(statement(&raw)?)),
            Raw::Open {
                code: raw,
                statement: first,
            } => Self::Open {
                code: code(&raw)?,
                first: Box::new(statement(&first)?),
            },
            Raw::Aside { after } => Self::Aside {
                after: after.map(RawPlace::place).transpose()?,
            },
        })
    }
}
