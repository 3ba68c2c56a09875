//! Whether a build made earlier is still the one that these sources give.

use sha2::{Digest, Sha256};
use std::fs;
use std::path::{Path, PathBuf};

/// A fingerprint of everything that goes into a build.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fingerprint(String);

impl Fingerprint {
    /// Of these files, everything under these folders, and the tools' own words about their versions.
    ///
    /// A file that can't be read counts as an empty one: the build itself will say so.
    pub fn of(root: &Path, sources: &[&str], tools: &[String]) -> Self {
        let mut all = Vec::new();
        for source in sources {
            files_under(&root.join(source), &mut all);
        }
        all.sort();
        let mut hash = Sha256::new();
        for path in all {
            let name = path
                .strip_prefix(root)
                .unwrap_or(&path)
                .to_string_lossy()
                .into_owned();
            absorb(&mut hash, name.as_bytes());
            absorb(&mut hash, &fs::read(&path).unwrap_or_default());
        }
        for said in tools {
            absorb(&mut hash, said.as_bytes());
        }
        Self(crate::seal::hex(&hash.finalize()))
    }

    /// Whether this is what the mark says.
    pub fn is_marked(&self, mark: &Path) -> bool {
        fs::read_to_string(mark).is_ok_and(|text| text == self.0)
    }

    /// Leaves the mark.
    ///
    /// # Errors
    /// Where it can't be written.
    pub fn mark(&self, mark: &Path) -> std::io::Result<()> {
        fs::write(mark, &self.0)
    }
}

/// With its length before it, so that no two different lists give the same bytes.
fn absorb(hash: &mut Sha256, bytes: &[u8]) {
    hash.update((bytes.len() as u64).to_be_bytes());
    hash.update(bytes);
}

fn files_under(path: &Path, found: &mut Vec<PathBuf>) {
    if path.is_dir() {
        let entries = fs::read_dir(path).into_iter().flatten().flatten();
        entries.for_each(|entry| files_under(&entry.path(), found));
    } else if path.is_file() {
        found.push(path.to_owned());
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_changed_byte_name_or_tool_is_noticed() {
        let root =
            std::env::temp_dir().join(format!("lightround-xtask-fresh-{}", std::process::id()));
        fs::create_dir_all(root.join("src/deep")).unwrap();
        fs::write(root.join("src/deep/one.rs"), "one").unwrap();
        let of = |tool: &str| Fingerprint::of(&root, &["src", "Cargo.lock"], &[tool.to_owned()]);
        let first = of("rustc 1");
        assert_eq!(of("rustc 1"), first);
        assert_ne!(of("rustc 2"), first);

        fs::write(root.join("src/deep/one.rs"), "two").unwrap();
        let changed = of("rustc 1");
        assert_ne!(changed, first);
        fs::rename(root.join("src/deep/one.rs"), root.join("src/deep/two.rs")).unwrap();
        assert_ne!(of("rustc 1"), changed);

        let mark = root.join("mark");
        assert!(!changed.is_marked(&mark));
        changed.mark(&mark).unwrap();
        assert!(changed.is_marked(&mark) && !first.is_marked(&mark));
        fs::remove_dir_all(root).unwrap();
    }
}
