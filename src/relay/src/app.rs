//! The built app, read once into memory.

use crate::inline::script_hashes;
use crate::policy::{Policy, policy};
use axum::body::Bytes;
use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use sha2::{Digest, Sha256};
use std::collections::HashMap;
use std::fs;
use std::io::{self, Read};
use std::path::{Path, PathBuf};
use thiserror::Error;

/// The page that every address of the app opens.
pub const PAGE: &str = "/index.html";

/// One file of the built app.
#[derive(Debug)]
pub struct File {
    /// Its bytes.
    pub plain: Bytes,
    /// The same compressed with brotli, where the build found that smaller.
    pub brotli: Option<Bytes>,
    /// The entity tag: a validator for its content, whichever way it travels.
    pub tag: String,
}

/// The built app: its files by path (`/app-….js`), and the headers that fit its page.
#[derive(Debug)]
pub struct App {
    files: HashMap<String, File>,
    policy: Policy,
}

/// Why the folder can't be served.
#[derive(Debug, Error)]
pub enum LoadError {
    /// The folder isn't there.
    #[error("There is no built app at {}: build it first with `cargo xtask build`.", .0.display())]
    Missing(PathBuf),
    /// The folder has no page.
    #[error("{} has no index.html, so it is not a built app.", .0.display())]
    NoPage(PathBuf),
    /// A compressed copy that is not of its file: a build left half done.
    #[error("{0}.br is not a copy of {0}: build the app again with `cargo xtask build`.")]
    Stale(String),
    /// A file or folder that can't be read.
    #[error("{} can't be read: {why}.", .path.display())]
    Unreadable {
        /// Which.
        path: PathBuf,
        /// What the system said.
        why: io::Error,
    },
}

impl App {
    /// Reads a folder with everything under it.
    ///
    /// # Errors
    /// One sentence for a folder that is missing, holds no page, can't be read, or holds a stale compressed copy.
    pub fn load(folder: &Path) -> Result<Self, LoadError> {
        if !folder.is_dir() {
            return Err(LoadError::Missing(folder.to_owned()));
        }
        let mut bytes = HashMap::new();
        read_all(folder, "", &mut bytes)?;
        let files = pair(bytes)?;
        let page = files
            .get(PAGE)
            .ok_or_else(|| LoadError::NoPage(folder.to_owned()))?;
        let hashes = script_hashes(&String::from_utf8_lossy(&page.plain));
        let policy = policy(&hashes)
            .map_err(|why| unreadable(&folder.join("index.html"), io::Error::other(why)))?;
        Ok(Self { files, policy })
    }

    /// The file at a path that starts with `/`; `/` itself is the page.
    pub fn file(&self, path: &str) -> Option<(&str, &File)> {
        let path = if path == "/" { PAGE } else { path };
        self.files
            .get_key_value(path)
            .map(|(path, file)| (path.as_str(), file))
    }

    /// The headers of every answer.
    pub fn policy(&self) -> &Policy {
        &self.policy
    }
}

fn read_all(
    folder: &Path,
    prefix: &str,
    found: &mut HashMap<String, Vec<u8>>,
) -> Result<(), LoadError> {
    for entry in fs::read_dir(folder).map_err(|why| unreadable(folder, why))? {
        let entry = entry.map_err(|why| unreadable(folder, why))?;
        let path = entry.path();
        let name = format!("{prefix}/{}", entry.file_name().to_string_lossy());
        // A link could lead outside the folder: only what is really in it is served.
        let kind = entry.file_type().map_err(|why| unreadable(&path, why))?;
        if kind.is_dir() {
            read_all(&path, &name, found)?;
        } else if kind.is_file() {
            found.insert(name, fs::read(&path).map_err(|why| unreadable(&path, why))?);
        }
    }
    Ok(())
}

fn unreadable(path: &Path, why: io::Error) -> LoadError {
    LoadError::Unreadable {
        path: path.to_owned(),
        why,
    }
}

fn pair(bytes: HashMap<String, Vec<u8>>) -> Result<HashMap<String, File>, LoadError> {
    let (mut originals, mut copies) = (HashMap::new(), HashMap::new());
    for (path, bytes) in bytes {
        match path.strip_suffix(".br") {
            Some(original) => copies.insert(original.to_owned(), bytes),
            None => originals.insert(path, bytes),
        };
    }
    originals
        .into_iter()
        .map(|(path, plain)| {
            let brotli = copies.remove(&path);
            if brotli.as_deref().is_some_and(|copy| !holds(copy, &plain)) {
                return Err(LoadError::Stale(path));
            }
            let file = File {
                tag: tag(&plain),
                brotli: brotli.map(Bytes::from),
                plain: plain.into(),
            };
            Ok((path, file))
        })
        .collect()
}

fn holds(copy: &[u8], plain: &[u8]) -> bool {
    let mut opened = Vec::with_capacity(plain.len());
    // One byte more than expected is enough to tell that a copy is another file's.
    let limit = plain.len() as u64 + 1;
    brotli::Decompressor::new(copy, 4096)
        .take(limit)
        .read_to_end(&mut opened)
        .is_ok()
        && opened == plain
}

/// Weak, because the same content may travel compressed (RFC 9110, section 8.8.1).
fn tag(plain: &[u8]) -> String {
    format!("W/\"{}\"", URL_SAFE_NO_PAD.encode(Sha256::digest(plain)))
}
