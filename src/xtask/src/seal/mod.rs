//! Seals a build: every file's SHA-256 goes into the service worker, and a brotli copy stands beside every file that it
//! makes smaller.

mod list;
mod squeeze;

pub use list::{Seal, hex};
pub use squeeze::wire_size;

use anyhow::{Context, Result};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// The service worker's file in the build, which carries the seal and so can't be part of it.
const WORKER: &str = "sw.js";

/// Seals the build in a folder.
///
/// # Errors
/// Where a file can't be read or written, or the service worker has no place for the seal.
pub fn seal(dist: &Path) -> Result<Seal> {
    let files = built_files(dist)?;
    let worker_path = dist.join(WORKER);
    let worker = fs::read_to_string(&worker_path)
        .with_context(|| format!("{} can't be read", worker_path.display()))?;
    let seal = Seal::new(hashes(dist, &files)?, &worker);
    fs::write(&worker_path, seal.stamp(&worker)?)?;
    squeeze::beside_all(dist, &files)?;
    squeeze::beside(&worker_path)?;
    Ok(seal)
}

/// Makes the brotli copies of a build that is compared, not served.
///
/// # Errors
/// Where a file can't be read or its copy written.
pub fn squeeze_all(dist: &Path) -> Result<()> {
    squeeze::beside_all(dist, &built_files(dist)?)
}

/// Every built file's path below the folder, but for the service worker. Copies of an earlier seal are removed.
fn built_files(dist: &Path) -> Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    walk(dist, &mut |path| {
        if path.extension().is_some_and(|ending| ending == "br") {
            fs::remove_file(path)?;
        } else if path != dist.join(WORKER) {
            found.push(path.strip_prefix(dist)?.to_owned());
        }
        Ok(())
    })?;
    found.sort();
    Ok(found)
}

/// Visits every file under a folder.
///
/// # Errors
/// Where a folder can't be read, or the visit fails.
pub fn walk(folder: &Path, visit: &mut impl FnMut(&Path) -> Result<()>) -> Result<()> {
    for entry in
        fs::read_dir(folder).with_context(|| format!("{} can't be read", folder.display()))?
    {
        let path = entry?.path();
        if path.is_dir() {
            walk(&path, visit)?;
        } else {
            visit(&path)?;
        }
    }
    Ok(())
}

fn hashes(dist: &Path, files: &[PathBuf]) -> Result<BTreeMap<String, String>> {
    let hash = |file: &PathBuf| {
        let bytes = fs::read(dist.join(file))
            .with_context(|| format!("{} can't be read", file.display()))?;
        Ok((address(file), hex(&Sha256::digest(bytes))))
    };
    files.iter().map(hash).collect()
}

/// The address under which the relay serves a file; the page is at the root.
fn address(file: &Path) -> String {
    let parts: Vec<_> = file.iter().map(|part| part.to_string_lossy()).collect();
    match parts.join("/").as_str() {
        "index.html" => "/".to_owned(),
        path => format!("/{path}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_page_is_at_the_root_and_everything_else_at_its_path() {
        assert_eq!(address(Path::new("index.html")), "/");
        assert_eq!(address(Path::new("fonts/text.woff2")), "/fonts/text.woff2");
    }

    #[test]
    fn a_sealed_folder_names_each_file_once_and_sealing_again_changes_nothing() {
        let dist =
            std::env::temp_dir().join(format!("lightround-xtask-seal-{}", std::process::id()));
        fs::create_dir_all(dist.join("fonts")).unwrap();
        let page = "<!doctype html>".repeat(40);
        fs::write(dist.join("index.html"), &page).unwrap();
        fs::write(dist.join("fonts/text.woff2"), "abc").unwrap();
        fs::write(dist.join("gone.js.br"), "of an earlier build").unwrap();
        fs::write(dist.join(WORKER), "const SEAL = /*seal*/ {} /*seal*/;").unwrap();

        let first = seal(&dist).unwrap();
        // FIPS 180-2, appendix B.1: the SHA-256 of "abc".
        let abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        let worker = fs::read_to_string(dist.join(WORKER)).unwrap();
        assert!(
            worker.contains(&format!("\"/fonts/text.woff2\":\"{abc}\"")),
            "{worker}"
        );
        assert!(
            worker.contains("\"/\":") && !worker.contains(WORKER) && !worker.contains(".br"),
            "{worker}"
        );
        assert!(dist.join("index.html.br").exists() && !dist.join("gone.js.br").exists());
        assert!(
            !dist.join("fonts/text.woff2.br").exists(),
            "three bytes don't get smaller"
        );

        assert_eq!(seal(&dist).unwrap(), first);
        assert_eq!(fs::read_to_string(dist.join(WORKER)).unwrap(), worker);
        fs::remove_dir_all(dist).unwrap();
    }
}
