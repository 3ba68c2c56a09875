//! Frozen bytes: `golden/*.hex`, made by the second implementation beside them (`golden/second.py` and
//! `golden/second_keys.py`).
//!
//! What the good ones hold must be read for ever, and sealing the same with the same "random" bytes must give the same.
//! Each bad one has one thing wrong, and its first word is what must be said of it. They never change; formats get a new
//! number instead.

mod checkpoints;
mod drafts;
mod enrolments;
mod epochs;
mod frames;
mod key_files;
mod slots;

use crate::keyfile::KeyFile;
use crate::keys::Keys;
use crate::random::{NoRandomness, Source};
use crate::{SlotKey, StretchParams, stretch};
use std::fs;
use std::path::{Path, PathBuf};

/// The first draw is filled with 1, the second with 2, and so on.
struct Ordinals(u8);

impl Source for Ordinals {
    fn fill(&mut self, bytes: &mut [u8]) -> Result<(), NoRandomness> {
        self.0 += 1;
        bytes.fill(self.0);
        Ok(())
    }
}

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("golden")
}

/// A golden file's bytes and its note.
fn golden(name: &str) -> (Vec<u8>, String) {
    let text = fs::read_to_string(folder().join(format!("{name}.hex"))).unwrap();
    let (note, hex) = text.split_once('\n').unwrap();
    let digits: Vec<u8> = hex
        .bytes()
        .filter(|byte| !byte.is_ascii_whitespace())
        .collect();
    let bytes = digits
        .chunks(2)
        .map(|pair| u8::from_str_radix(std::str::from_utf8(pair).unwrap(), 16).unwrap());
    (bytes.collect(), note.trim_start_matches("# ").to_owned())
}

/// The names of the bad files in a folder.
fn bad(kind: &str) -> Vec<String> {
    let names = fs::read_dir(folder().join(kind))
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let names: Vec<String> = names
        .filter_map(|name| Some(format!("{kind}/{}", name.strip_suffix(".hex")?)))
        .collect();
    let good = names.iter().filter(|name| name.contains("/good")).count();
    let bad: Vec<String> = names
        .into_iter()
        .filter(|name| name.contains("/bad"))
        .collect();
    assert!(
        bad.len() > 2 * good,
        "the malformed ones outnumber the good ones"
    );
    bad
}

fn params() -> StretchParams {
    StretchParams {
        salt: std::array::from_fn(|at| at as u8),
        memory_kib: 8192,
        passes: 1,
        lanes: 1,
    }
}

fn slot_key() -> SlotKey {
    stretch("harbour lantern thimble orchard", &params()).unwrap()
}

/// The golden vault's keys and, after them, the source at the place where the frames begin.
fn founded() -> (KeyFile, Keys, Ordinals) {
    let mut source = Ordinals(0);
    let (file, keys) =
        crate::found::found_from(&slot_key(), params(), "bedside tablet", &mut source).unwrap();
    (file, keys, source)
}
