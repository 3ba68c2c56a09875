//! How a command ends: done, done as far as it went, or one sentence that says why not.

use std::path::PathBuf;
use std::process::ExitCode;
use sync::carry::WalkError;
use vault::{KeyFileError, RecoverError, RecoveryCodeError, StretchError, UnlockError};

/// What each code means, for the help and the manual page.
pub const CODES: &str = "\
Ends with
  0  everything was done
  1  it was done, and something in the records is damaged, missing or newer than this program
  2  what was asked can’t be understood
  3  the records can’t be opened: a file is not there or not whole, or the passphrase is wrong
  4  the answer can’t be made or written

The error stream says why, in one sentence each.";

/// What a command ends with that gave an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ended {
    /// Everything was done.
    Well,
    /// It was done, and something in the records is damaged or missing.
    WithDamage,
}

impl From<Ended> for ExitCode {
    fn from(ended: Ended) -> Self {
        match ended {
            Ended::Well => Self::SUCCESS,
            Ended::WithDamage => Self::from(1),
        }
    }
}

/// Why there is no answer.
#[derive(Debug, thiserror::Error)]
pub enum Failure {
    /// What was typed.
    #[error("{0}")]
    Words(String),
    /// A file that can't be opened.
    #[error("{} can’t be read: {error}", .path.display())]
    File {
        /// Which.
        path: PathBuf,
        /// Why.
        error: std::io::Error,
    },
    /// A carry file that is not taken.
    #[error("{}: {error}", .path.display())]
    Carry {
        /// Which.
        path: PathBuf,
        /// Why.
        error: WalkError,
    },
    /// A key file that is none.
    #[error("{}: {error}", .path.display())]
    KeyFile {
        /// Which.
        path: PathBuf,
        /// Why.
        error: KeyFileError,
    },
    /// No passphrase or code came.
    #[error("no {what} came from {}", from(*.descriptor))]
    Silence {
        /// What was asked for.
        what: &'static str,
        /// From where; none for the keyboard.
        descriptor: Option<u32>,
    },
    /// The passphrase could not be stretched.
    #[error(transparent)]
    Stretch(#[from] StretchError),
    /// The key file stays shut.
    #[error(transparent)]
    Unlock(#[from] UnlockError),
    /// What was typed is no code.
    #[error(transparent)]
    Code(#[from] RecoveryCodeError),
    /// The code opens nothing.
    #[error(transparent)]
    Recover(#[from] RecoverError),
    /// The workbook.
    #[error(transparent)]
    Sheet(#[from] sheets::SheetError),
    /// A paper.
    #[error(transparent)]
    Pdf(#[from] pdf::PdfError),
    /// Where the answer should go.
    #[error("{to} can’t be written: {error}")]
    Written {
        /// Where to.
        to: String,
        /// Why not.
        error: std::io::Error,
    },
}

impl Failure {
    /// The code that the command ends with.
    pub const fn code(&self) -> u8 {
        match self {
            Self::Words(_) => 2,
            Self::Sheet(_) | Self::Pdf(_) | Self::Written { .. } => 4,
            _ => 3,
        }
    }
}

fn from(descriptor: Option<u32>) -> String {
    descriptor.map_or_else(
        || "the keyboard".to_owned(),
        |number| format!("descriptor {number}"),
    )
}
