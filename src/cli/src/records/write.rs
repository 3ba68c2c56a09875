//! Where answers go: files that are whole or not there, and the screen.

use crate::ended::{Ended, Failure};
use sheets::SheetError;
use std::fs::{self, File};
use std::io::{self, BufWriter, Write};
use std::path::Path;

/// Why an answer that is made as it is written goes no further.
pub enum Cut {
    /// It can't be written.
    Written(io::Error),
    /// It can't be made.
    Made(Failure),
}

impl From<io::Error> for Cut {
    fn from(error: io::Error) -> Self {
        Self::Written(error)
    }
}

impl From<Failure> for Cut {
    fn from(failure: Failure) -> Self {
        Self::Made(failure)
    }
}

impl From<SheetError> for Cut {
    fn from(error: SheetError) -> Self {
        match error {
            SheetError::Written(error) => Self::Written(error),
            refused @ SheetError::Refused(_) => Self::Made(refused.into()),
        }
    }
}

impl Cut {
    fn to(self, to: &str) -> Failure {
        match self {
            Self::Made(failure) => failure,
            Self::Written(error) => Failure::Written {
                to: to.to_owned(),
                error,
            },
        }
    }
}

/// Writes a file by way of another beside it, so that nobody finds half of it.
pub fn file(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    beside(path, |file| Ok(file.write_all(bytes)?))
}

/// Into a file, or on the screen.
pub fn out(path: Option<&Path>, bytes: &[u8]) -> Result<(), Failure> {
    piece_by_piece(path, |file| Ok(file.write_all(bytes)?))
}

/// The same for an answer that is made as it is written.
pub fn piece_by_piece(
    path: Option<&Path>,
    write: impl FnOnce(&mut (dyn Write + Send)) -> Result<(), Cut>,
) -> Result<(), Failure> {
    let Some(path) = path else {
        let mut screen = BufWriter::new(io::stdout());
        let written = write(&mut screen).and_then(|()| Ok(screen.flush()?));
        return written.map_err(|cut| cut.to("the answer"));
    };
    beside(path, write)
}

fn beside(
    path: &Path,
    write: impl FnOnce(&mut (dyn Write + Send)) -> Result<(), Cut>,
) -> Result<(), Failure> {
    let mut beside = path.as_os_str().to_owned();
    beside.push(".part");
    let made = File::create(&beside).map_err(Cut::from).and_then(|file| {
        let mut file = BufWriter::new(file);
        write(&mut file)?;
        file.flush()?;
        file.get_ref().sync_all()?;
        Ok(fs::rename(&beside, path)?)
    });
    made.map_err(|cut| {
        // Whatever there is of it is no use to anybody; that it may not be there is no second error.
        let _ = fs::remove_file(&beside);
        cut.to(&path.display().to_string())
    })
}

pub fn failed(path: &Path, error: io::Error) -> Failure {
    Cut::from(error).to(&path.display().to_string())
}

/// Says what is damaged, on the error stream; where that can't be written, the code says it still.
pub fn tell(damage: &[String]) -> Ended {
    let mut errors = io::stderr();
    for sentence in damage {
        let _ = writeln!(errors, "lightround: {sentence}");
    }
    if damage.is_empty() {
        Ended::Well
    } else {
        Ended::WithDamage
    }
}
