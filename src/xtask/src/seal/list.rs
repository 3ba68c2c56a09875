//! The seal itself: which files, which bytes, which version.

use anyhow::{Context, Result};
use serde_json::json;
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fmt::Write;

/// What stands on both sides of the seal in the service worker.
const MARK: &str = "/*seal*/";

/// Length of a version, in hexadecimal digits: 64 bits tell any two builds of one app apart.
const VERSION_DIGITS: usize = 16;

/// Every file of a build by its address, with its SHA-256 in hexadecimal, and the version that these make.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Seal {
    version: String,
    files: BTreeMap<String, String>,
}

impl Seal {
    /// Seals these files. The service worker's own text counts too: a changed worker is another version.
    pub fn new(files: BTreeMap<String, String>, worker: &str) -> Self {
        let mut hash = Sha256::new();
        for (path, digest) in &files {
            hash.update(format!("{path} {digest}\n"));
        }
        hash.update(around(worker).map_or_else(
            || worker.to_owned(),
            |(before, after)| [before, after].concat(),
        ));
        let mut version = hex(&hash.finalize());
        version.truncate(VERSION_DIGITS);
        Self { version, files }
    }

    /// How many files it names.
    pub fn len(&self) -> usize {
        self.files.len()
    }

    /// The version's name.
    pub fn version(&self) -> &str {
        &self.version
    }

    /// The service worker with this seal in the place of whatever stood there.
    ///
    /// # Errors
    /// Where the worker has no place marked for it.
    pub fn stamp(&self, worker: &str) -> Result<String> {
        let (before, after) = around(worker).with_context(|| {
            format!("the service worker has no place between two {MARK} for the seal")
        })?;
        let seal = json!({ "version": self.version, "files": self.files });
        Ok(format!("{before}{MARK} {seal} {MARK}{after}"))
    }
}

fn around(worker: &str) -> Option<(&str, &str)> {
    let (before, rest) = worker.split_once(MARK)?;
    let (_, after) = rest.split_once(MARK)?;
    Some((before, after))
}

/// Bytes in lower-case hexadecimal.
pub fn hex(bytes: &[u8]) -> String {
    bytes
        .iter()
        .fold(String::with_capacity(bytes.len() * 2), |mut text, byte| {
            // Writing into a string can't fail.
            let _ = write!(text, "{byte:02x}");
            text
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    const WORKER: &str = "const SEAL = /*seal*/ { version: \"unsealed\" } /*seal*/;\nrest();\n";

    fn seal(files: &[(&str, &str)], worker: &str) -> Seal {
        let files = files
            .iter()
            .map(|(path, digest)| ((*path).to_owned(), (*digest).to_owned()))
            .collect();
        Seal::new(files, worker)
    }

    #[test]
    fn the_version_follows_every_file_and_the_worker() {
        let first = seal(&[("/", "aa"), ("/app.js", "bb")], WORKER);
        assert_eq!(first.version().len(), VERSION_DIGITS);
        assert_eq!(seal(&[("/app.js", "bb"), ("/", "aa")], WORKER), first);
        for other in [
            seal(&[("/", "aa"), ("/app.js", "bc")], WORKER),
            seal(&[("/", "aa"), ("/app2.js", "bb")], WORKER),
            seal(&[("/", "aa")], WORKER),
            seal(
                &[("/", "aa"), ("/app.js", "bb")],
                &WORKER.replace("rest", "other"),
            ),
        ] {
            assert_ne!(other.version(), first.version());
        }
    }

    #[test]
    fn the_worker_is_stamped_between_its_marks_again_and_again() {
        let seal = seal(&[("/", "aa")], WORKER);
        let stamped = seal.stamp(WORKER).unwrap();
        let expected = format!(
            "const SEAL = /*seal*/ {{\"files\":{{\"/\":\"aa\"}},\"version\":\"{}\"}} /*seal*/;\nrest();\n",
            seal.version()
        );
        assert_eq!(stamped, expected);
        assert_eq!(seal.stamp(&stamped).unwrap(), stamped);
        assert!(seal.stamp("no place here").is_err());
    }

    #[test]
    fn the_project_s_own_worker_has_its_place() {
        let worker = include_str!("../../../../public/sw.js");
        assert!(
            seal(&[("/", "aa")], worker)
                .stamp(worker)
                .unwrap()
                .contains("\"/\":\"aa\"")
        );
    }
}
