//! Records opened: a carry file is checked and deciphered, and nothing of it is written anywhere.

use super::options::{Opens, Records};
use super::secret;
use crate::ended::Failure;
use record::Entry;
use std::fs::{self, File};
use std::path::Path;
use sync::carry::{Through, Walk, WalkError};
use vault::{Frame, KeyFile, Keys, Purpose, RecoveryCode, recover, stretch};

/// The file and the keys that the options name.
pub fn open(records: &Records) -> Result<(Walk<File>, Keys), Failure> {
    let mut walk = walk(&records.carry)?;
    let keys = keys(&records.opens, &records.carry, &mut walk)?;
    Ok((walk, keys))
}

/// A carry file whose sum is right.
pub fn walk(path: &Path) -> Result<Walk<File>, Failure> {
    let file = File::open(path).map_err(|error| Failure::File {
        path: path.to_owned(),
        error,
    })?;
    Walk::begin(file).map_err(|error| carry(path, error))
}

/// The keys, by whatever opens them.
pub fn keys(opens: &Opens, path: &Path, walk: &mut Walk<File>) -> Result<Keys, Failure> {
    match &opens.keys {
        Some(file) => by_passphrase(file, opens.passphrase_fd),
        None => by_code(opens.recovery_fd, path, walk),
    }
}

fn by_passphrase(path: &Path, descriptor: Option<u32>) -> Result<Keys, Failure> {
    let bytes = fs::read(path).map_err(|error| Failure::File {
        path: path.to_owned(),
        error,
    })?;
    let file = KeyFile::from_bytes(&bytes).map_err(|error| Failure::KeyFile {
        path: path.to_owned(),
        error,
    })?;
    let passphrase = secret::ask("passphrase", descriptor)?;
    Ok(file.unlock(&stretch(&passphrase, &file.passphrase_params())?)?)
}

fn by_code(descriptor: Option<u32>, path: &Path, walk: &mut Walk<File>) -> Result<Keys, Failure> {
    let code: RecoveryCode = secret::ask("recovery code", descriptor)?.parse()?;
    walk.check().map_err(|error| carry(path, error))?;
    let mut frames: Vec<Frame> = Vec::new();
    let found = walk.each(|_, frame| {
        if frame.sequence() == 1 || frame.header().purpose == Purpose::Epoch {
            frames.push(frame);
        }
        Ok::<_, WalkError>(())
    });
    found.map_err(|error| carry(path, error))?;
    Ok(recover(&code, walk.vault(), &frames)?.into_keys())
}

/// An entry as it was written; or a sentence that says why it can't be read.
pub fn entry(read: &sync::Read) -> Result<Entry, String> {
    Entry::from_cbor(&read.payload).map_err(|error| cannot_be_read(read, &error.to_string()))
}

/// The sentence about an entry that can't be read.
pub fn cannot_be_read(read: &sync::Read, why: &str) -> String {
    let device = &read.device.to_string()[..8];
    let number = read.sequence;
    format!("entry {number} from tablet {device} can’t be read: {why}")
}

/// What is amiss with a carry file, one sentence each.
pub fn amiss(through: &Through) -> Vec<String> {
    let apart = through.apart.iter().map(ToString::to_string);
    let damage = through.damage.iter().map(ToString::to_string);
    apart.chain(damage).collect()
}

pub fn carry(path: &Path, error: WalkError) -> Failure {
    Failure::Carry {
        path: path.to_owned(),
        error,
    }
}
