//! Why what the relay is told can't be followed.

use std::path::PathBuf;
use thiserror::Error;

/// Why what the relay is told can't be followed. `at` is how it was said: `--room`, `LIGHTROUND_RELAY_ROOM`, or
/// `room in relay.toml`.
#[derive(Debug, PartialEq, Eq, Error)]
pub enum OptionsError {
    /// `--help` was given.
    #[error("help was asked for")]
    HelpAsked,
    /// An option or a task that the relay doesn't have.
    #[error("The relay has no option {0}.")]
    Unknown(String),
    /// An option that belongs to another task.
    #[error("{0} has nothing to do with {1}.")]
    Elsewhere(String, &'static str),
    /// An option that is said twice.
    #[error("{0} is said twice.")]
    Twice(String),
    /// A variable that begins as the relay's do, and is none of them.
    #[error("The environment has {0}, which is no setting of the relay's.")]
    UnknownVariable(String),
    /// A name in the file that is no setting, or one that must stand on the command line.
    #[error("{} has {name}, which is no setting that can stand there.", .file.display())]
    UnknownInFile {
        /// The file.
        file: PathBuf,
        /// The name.
        name: String,
    },
    /// A value in the file that is neither text nor a whole number.
    #[error("{at} is neither a text in quotes nor a whole number.")]
    NoSuchValue {
        /// Which.
        at: String,
    },
    /// The file can't be read.
    #[error("{} can't be read: {why}.", .file.display())]
    Unreadable {
        /// The file.
        file: PathBuf,
        /// What the system said.
        why: String,
    },
    /// The file is not TOML.
    #[error("Line {line} of {} makes no sense: {why}.", .file.display())]
    Senseless {
        /// The file.
        file: PathBuf,
        /// The line, from 1.
        line: usize,
        /// What is wrong with it.
        why: String,
    },
    /// An option without its value.
    #[error("{0} needs a value after it.")]
    NoValue(String),
    /// The address isn't one.
    #[error("{at} needs an address with its port, as in 127.0.0.1:8017, not {value}.")]
    NotAnAddress {
        /// How it was said.
        at: String,
        /// What was said.
        value: String,
    },
    /// A number isn't one, or is out of range.
    #[error("{at} needs a whole number from 1 to 1000000, not {value}.")]
    NotANumber {
        /// How it was said.
        at: String,
        /// What was said.
        value: String,
    },
    /// A vault's id isn't one.
    #[error("--vault needs the 32 digits (0 to 9, a to f) of a vault, not {0}.")]
    NotAVault(String),
    /// A task about what is kept, and not said where that is.
    #[error("Say with --data where the entries are kept.")]
    NoData,
    /// Counts of what is carried, where nothing is.
    #[error("--metrics tells how much is carried: say with --data where the entries are kept.")]
    NothingToCount,
    /// A task lacks what only the command line can say.
    #[error("{0} must be said.")]
    Needed(String),
    /// A certificate without its key, or a key without its certificate.
    #[error("A certificate and its key go together: say both --certificate and --key, or neither.")]
    HalfACertificate,
}
