//! What opens the records, typed unseen or handed over by another program.

use crate::ended::Failure;
use std::fs::File;
use std::io::{BufRead, BufReader, Read};
use zeroize::Zeroizing;

/// No passphrase is longer.
const LONGEST_BYTES: u64 = 64 * 1024;

/// Asks for a secret, or reads the first line of an open descriptor.
///
/// # Errors
/// [`Failure::Silence`] where none comes.
pub fn ask(what: &'static str, descriptor: Option<u32>) -> Result<Zeroizing<String>, Failure> {
    let said = match descriptor {
        None => rpassword::prompt_password(format!("{what}: ")).map(Zeroizing::new),
        Some(number) => first_line(number),
    };
    match said {
        Ok(said) if !said.is_empty() => Ok(said),
        _ => Err(Failure::Silence { what, descriptor }),
    }
}

fn first_line(descriptor: u32) -> std::io::Result<Zeroizing<String>> {
    let file = File::open(format!("/dev/fd/{descriptor}"))?;
    let mut line = Zeroizing::new(String::new());
    BufReader::new(file.take(LONGEST_BYTES)).read_line(&mut line)?;
    let bare = line.trim_end_matches(['\r', '\n']);
    Ok(Zeroizing::new(bare.to_owned()))
}
