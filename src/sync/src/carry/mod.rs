//! The carry file: frames in a file, for people without a relay.
//!
//! # Layout
//!
//! All numbers are big-endian.
//!
//! | bytes      | what                                                                      |
//! |------------|---------------------------------------------------------------------------|
//! | 0..16      | the text `lightround carry`                                               |
//! | 16         | format: 1                                                                 |
//! | 17..33     | vault id                                                                  |
//! | 33..35     | number of logs, u16, at least 1                                           |
//! | …          | the logs, in the order of their devices' ids                              |
//! | the last 32| `SHA-256("lightround v1 carry sum" || 0 || everything before)`            |
//!
//! A log is the device's public signing key (32 bytes), the number of frames (u32, at least 1), and the frames, each after
//! its length (u32) and each following the one before it.
//!
//! Nothing in a file is believed before all of it is checked: the sum tells damage from the rest, and every frame must be
//! signed by a device that holds a key of the vault. Importing the same file twice does nothing the second time.

mod error;
mod export;
mod import;
mod parse;
mod report;

pub use error::CarryError;
pub use export::{Exported, export};
pub use import::import;
pub use parse::{CarriedLog, CarryFile};
pub use report::{Apart, Report};

/// What a carry file begins with.
const MAGIC: &[u8; 16] = b"lightround carry";
/// The format that this code writes and reads.
const FORMAT: u8 = 1;
/// Bytes before the first log.
const HEADER: usize = 35;
/// Bytes of the sum at the end.
const SUM: usize = 32;
