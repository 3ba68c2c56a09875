//! Where answers go: files that are whole or not there, and the screen.

use crate::ended::{Ended, Failure};
use std::fs::{self, File};
use std::io::{self, BufWriter, Write};
use std::path::Path;

/// Writes a file by way of another beside it, so that nobody finds half of it.
pub fn file(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    beside(path, |file| file.write_all(bytes))
}

/// Into a file, or on the screen.
pub fn out(path: Option<&Path>, bytes: &[u8]) -> Result<(), Failure> {
    piece_by_piece(path, |file| file.write_all(bytes))
}

/// The same for an answer that is made as it is written.
pub fn piece_by_piece(
    path: Option<&Path>,
    write: impl FnOnce(&mut dyn Write) -> io::Result<()>,
) -> Result<(), Failure> {
    let Some(path) = path else {
        let mut screen = BufWriter::new(io::stdout().lock());
        let written = write(&mut screen).and_then(|()| screen.flush());
        return written.map_err(|error| Failure::Written {
            to: "the answer".to_owned(),
            error,
        });
    };
    beside(path, write)
}

fn beside(
    path: &Path,
    write: impl FnOnce(&mut dyn Write) -> io::Result<()>,
) -> Result<(), Failure> {
    let mut beside = path.as_os_str().to_owned();
    beside.push(".part");
    let made = File::create(&beside).and_then(|file| {
        let mut file = BufWriter::new(file);
        write(&mut file)?;
        file.flush()?;
        file.get_ref().sync_all()?;
        fs::rename(&beside, path)
    });
    made.map_err(|error| {
        // Whatever there is of it is no use to anybody; that it may not be there is no second error.
        let _ = fs::remove_file(&beside);
        failed(path, error)
    })
}

pub fn failed(path: &Path, error: io::Error) -> Failure {
    Failure::Written {
        to: path.display().to_string(),
        error,
    }
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
