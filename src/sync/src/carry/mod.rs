//! The carry file: frames in a file, for people without a relay.
//!
//! # Layout
//!
//! All numbers are big-endian.
//!
//! | bytes      | what                                                                      |
//! |------------|---------------------------------------------------------------------------|
//! | 0..16      | the text `lightround carry`                                               |
//! | 16         | format: 1, or 3 where a roll is in it                                     |
//! | 17..33     | vault id                                                                  |
//! | 33..35     | number of logs, u16, at least 1                                           |
//! | …          | the logs, in the order of their devices' ids                              |
//! | …          | in format 3: number of the roll's statements, u16, at least 1, and those, 195 bytes each ([`vault::roll`]) |
//! | the last 32| `SHA-256("lightround v1 carry sum" || 0 || everything before)`            |
//!
//! A log is the device's public signing key (32 bytes), the number of frames (u32, at least 1), and the frames, each after
//! its length (u32) and each following the one before it.
//!
//! There never was a format 2. A vault that is on one device only has no roll, and its files are of format 1.
//!
//! Nothing in a file is believed before all of it is checked: the sum tells damage from the rest, and every frame must be
//! signed by a device that holds a key of the vault. The roll is believed only where it continues the one that is known
//! ([`crate::Ledger::carry_roll_in`]). Importing the same file twice does nothing the second time.
//!
//! [`CarryFile`] has a whole file in memory; [`Walk`] goes through one of any size, and [`read_through`] reads what it says
//! without keeping it, and [`BySubject`] reads it person by person.

mod by_subject;
mod error;
mod export;
mod import;
mod parse;
mod relayed;
mod report;
mod through;
mod walk;

pub use by_subject::BySubject;
pub use error::CarryError;
pub use export::{Exported, export};
pub use import::import;
pub use parse::{CarriedLog, CarryFile, carried_roll};
pub use relayed::relayed;
pub use report::{Apart, Report};
pub use through::{Through, read_through};
pub use walk::{Span, Walk, WalkError};

/// What a carry file begins with.
const MAGIC: &[u8; 16] = b"lightround carry";
/// The format of files without a roll.
const FORMAT: u8 = 1;
/// The format of files with one.
const WITH_ROLL: u8 = 3;
/// Bytes before the first log.
const HEADER: usize = 35;
/// Bytes of the sum at the end.
const SUM: usize = 32;
