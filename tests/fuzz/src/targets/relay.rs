//! What a relay is told, and the backup that it reads.

use crate::seeds::texts;
use lightround_relay::{Task, store, verify};
use std::fs;
use std::io;
use std::path::PathBuf;

pub fn written() -> Vec<Vec<u8>> {
    texts(&[
        "data = \"entries.db\"\nlisten = \"127.0.0.1:0\"\nroom = 512\n",
        "certificate = \"a.pem\"\nkey = \"b.pem\"\nburst = 7\neach-second = 2\npatience = 9\n",
    ])
}

/// A file of settings is followed, or refused with where it is wrong.
pub fn settings(bytes: &[u8]) {
    let told = ["--config", "relay.toml"].map(str::to_owned);
    let read = || {
        String::from_utf8(bytes.to_vec()).map_err(|_| io::Error::from(io::ErrorKind::InvalidData))
    };
    if let Err(error) = Task::read(told.into_iter(), std::iter::empty(), |_| read()) {
        assert!(!error.to_string().is_empty());
    }
}

pub fn spoken() -> Vec<Vec<u8>> {
    texts(&[
        "serve\n--app\ndist\n--listen\n[::1]:0",
        "invite\n--data\nentries.db\n--days\n3",
        "erase\n--data\nentries.db\n--vault\n0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a",
    ])
}

/// The same of a command line, a line for each word, and of the environment.
pub fn command(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    let words = text.lines().map(str::to_owned);
    let around = text
        .lines()
        .map(|line| ("LIGHTROUND_RELAY_LISTEN".to_owned(), line.to_owned()));
    let nothing = |_: &std::path::Path| Ok(String::new());
    let _ = Task::read(words, around.take(1), nothing);
}

/// A folder of this process's own.
fn folder() -> PathBuf {
    std::env::temp_dir().join(format!("lightround-fuzz-{}", std::process::id()))
}

fn file() -> String {
    let folder = folder();
    fs::create_dir_all(&folder).expect("there is a temporary folder");
    folder.join("backup.db").to_string_lossy().into_owned()
}

pub fn backups() -> Vec<Vec<u8>> {
    let file = file();
    drop(store::open(&file).expect("a new backup is made"));
    let bytes = fs::read(&file).expect("it is there");
    clear();
    vec![bytes]
}

/// A backup that is none, or was altered, is told as such.
pub fn backup(bytes: &[u8]) {
    let file = file();
    fs::write(&file, bytes).expect("there is room");
    if let Ok(backup) = store::open_there(&file) {
        let _ = verify(&*backup);
    }
    clear();
}

/// With what the database leaves beside the file.
fn clear() {
    fs::remove_dir_all(folder()).expect("the folder is this process's own");
}
