//! What the project has frozen, read where it stands.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// A path in the project.
pub fn project(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../..")
        .join(path)
}

/// The files of a folder by their names; none where there is no such folder.
pub fn files(folder: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let entries = fs::read_dir(folder).into_iter().flatten();
    let paths = entries.map(|entry| entry.expect("a folder of the project can be listed").path());
    let read = |path: PathBuf| {
        let bytes = fs::read(&path).expect("a file of the project can be read");
        (path, bytes)
    };
    paths.filter(|path| path.is_file()).map(read).collect()
}

/// The bytes of every file in these folders that is written in hexadecimal.
pub fn frozen(folders: &[&str]) -> Vec<Vec<u8>> {
    let all: Vec<_> = folders
        .iter()
        .flat_map(|folder| files(&project(folder)))
        .filter(|(path, _)| path.extension().is_some_and(|kind| kind == "hex"))
        .map(|(_, text)| hex(&String::from_utf8_lossy(&text)))
        .collect();
    assert!(!all.is_empty(), "nothing is frozen in {folders:?}");
    all
}

/// The bytes of one such file.
pub fn frozen_file(path: &str) -> Vec<u8> {
    hex(&fs::read_to_string(project(path)).expect("a file of the project can be read"))
}

/// Hexadecimal after a line or lines of words; `81 * 5000` is a run.
fn hex(text: &str) -> Vec<u8> {
    text.lines().filter_map(line).flatten().collect()
}

/// A line of digits; none where it is words.
fn line(text: &str) -> Option<Vec<u8>> {
    let (digits, times) = text.split_once(" * ").unwrap_or((text, "1"));
    let bytes: Option<Vec<u8>> = (0..digits.len())
        .step_by(2)
        .map(|at| u8::from_str_radix(digits.get(at..at + 2)?, 16).ok())
        .collect();
    Some(bytes?.repeat(times.parse().ok()?))
}

/// Texts as bytes.
pub fn texts(texts: &[&str]) -> Vec<Vec<u8>> {
    texts.iter().map(|text| text.as_bytes().to_vec()).collect()
}
