//! What a relay answers.

use super::raw::{
    RawApart, RawHead, RawPlace, RawShown, apart, raw_apart, raw_run, raw_statement, raw_vector,
    run, shown, statements, vector,
};
use super::{LONGEST_ANSWER, WireError, decode, encode};
use crate::exchange::{MOST_BYTES, Run, Vector, Why};
use serde::{Deserialize, Serialize};
use serde_bytes::ByteBuf;
use vault::frame::PublicKey;
use vault::{Frame, Head, Statement};

/// An answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    /// How far every log goes.
    Heads(Vec<Shown>),
    /// Some of what was lacking.
    Page(Page),
    /// What became of a run.
    Pushed(Pushed),
    /// A vault's whole roll.
    Roll(Vec<Statement>),
    /// Some of what was set aside.
    Aside(Asides),
}

/// Some of what was set aside, by device, number and hash.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Asides {
    /// The frames, each with the reason.
    pub frames: Vec<(Why, Frame)>,
    /// Whether there is more to ask for, after the last of these.
    pub more: bool,
}

/// How far a log goes on the relay, and the key that its frames are signed with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shown {
    /// The device's key, of which its id is made.
    pub key: PublicKey,
    /// Its newest frame there.
    pub head: Head,
}

/// Some of what was lacking.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Page {
    /// How far every log goes.
    pub heads: Vec<Shown>,
    /// Frames, each run continuing what the asker said that it has.
    pub runs: Vec<Run>,
    /// Logs of which the asker has a frame that differs from the relay's, with the relay's frame of that number.
    pub forks: Vector,
    /// Whether there is more to ask for.
    pub more: bool,
}

/// What became of a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pushed {
    /// It is kept, or was already.
    Kept {
        /// The log's newest frame now.
        head: Head,
    },
    /// It doesn't follow what is there; nothing was kept.
    Gap {
        /// The log's newest frame.
        head: Option<Head>,
    },
    /// Another frame has this number already; nothing was kept but the evidence.
    Fork {
        /// The number.
        sequence: u64,
    },
    /// Its device was removed before it was written, as far as the relay knows: set aside for a lead to look at.
    Aside {
        /// The log's newest frame.
        head: Option<Head>,
    },
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
enum Raw {
    Heads {
        heads: Vec<RawShown>,
    },
    Page {
        heads: Vec<RawShown>,
        runs: Vec<Vec<ByteBuf>>,
        forks: Vec<RawPlace>,
        more: bool,
    },
    Pushed(RawPushed),
    Roll {
        statements: Vec<ByteBuf>,
    },
    Aside {
        frames: Vec<RawApart>,
        more: bool,
    },
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
enum RawPushed {
    Kept { head: RawHead },
    Gap { head: Option<RawHead> },
    Fork { sequence: u64 },
    Aside { head: Option<RawHead> },
}

impl Answer {
    /// The bytes to send.
    pub fn to_bytes(&self) -> Vec<u8> {
        let all = |heads: &[Shown]| heads.iter().map(|shown| RawShown::from(*shown)).collect();
        encode(match self {
            Self::Heads(heads) => Raw::Heads { heads: all(heads) },
            Self::Page(page) => Raw::Page {
                heads: all(&page.heads),
                runs: page.runs.iter().map(raw_run).collect(),
                forks: raw_vector(&page.forks),
                more: page.more,
            },
            Self::Pushed(pushed) => Raw::Pushed(RawPushed::from(*pushed)),
            Self::Roll(roll) => Raw::Roll {
                statements: roll.iter().map(raw_statement).collect(),
            },
            Self::Aside(asides) => Raw::Aside {
                frames: asides.frames.iter().map(raw_apart).collect(),
                more: asides.more,
            },
        })
    }

    /// Reads an answer from bytes of any origin.
    ///
    /// # Errors
    ///
    /// The first thing that is wrong with them.
    pub fn from_bytes(bytes: &[u8]) -> Result<Self, WireError> {
        Ok(match decode(bytes, LONGEST_ANSWER)? {
            Raw::Heads { heads } => Self::Heads(shown(heads)?),
            Raw::Page {
                heads,
                runs,
                forks,
                more,
            } => Self::Page(Page {
                heads: shown(heads)?,
                runs: page_runs(runs)?,
                forks: vector(forks)?,
                more,
            }),
            Raw::Pushed(raw) => Self::Pushed(raw.try_into()?),
            Raw::Roll { statements: raw } => Self::Roll(statements(&raw)?),
            Raw::Aside { frames, more } => Self::Aside(Asides {
                frames: apart(frames)?,
                more,
            }),
        })
    }
}

fn page_runs(raw: Vec<Vec<ByteBuf>>) -> Result<Vec<Run>, WireError> {
    let runs = raw.into_iter().map(run).collect::<Result<Vec<_>, _>>()?;
    let bytes = runs.iter().map(Run::bytes).sum();
    if bytes > MOST_BYTES {
        return Err(WireError::Page(bytes));
    }
    Ok(runs)
}

impl From<Pushed> for RawPushed {
    fn from(pushed: Pushed) -> Self {
        match pushed {
            Pushed::Kept { head } => Self::Kept { head: head.into() },
            Pushed::Gap { head } => Self::Gap {
                head: head.map(RawHead::from),
            },
            Pushed::Fork { sequence } => Self::Fork { sequence },
            Pushed::Aside { head } => Self::Aside {
                head: head.map(RawHead::from),
            },
        }
    }
}

impl TryFrom<RawPushed> for Pushed {
    type Error = WireError;

    fn try_from(raw: RawPushed) -> Result<Self, WireError> {
        let optional = |head: Option<RawHead>| head.map(Head::try_from).transpose();
        Ok(match raw {
            RawPushed::Kept { head } => Self::Kept {
                head: head.try_into()?,
            },
            RawPushed::Gap { head } => Self::Gap {
                head: optional(head)?,
            },
            RawPushed::Fork { sequence: 0 } => return Err(WireError::Zero),
            RawPushed::Fork { sequence } => Self::Fork { sequence },
            RawPushed::Aside { head } => Self::Aside {
                head: optional(head)?,
            },
        })
    }
}
