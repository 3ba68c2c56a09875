//! The smallest app that the same framework makes, built in the same run with the same settings: the floor to compare with.

use crate::build::bundle;
use crate::place::Place;
use crate::ready::Ready;
use crate::seal::squeeze_all;
use crate::step::step;
use anyhow::{Context, Result};
use std::fs;
use std::path::{Path, PathBuf};

/// Its sources; a package outside this workspace, so that nothing here leans on it.
const SOURCES: &str = "src/xtask/one-button";
const FILES: [&str; 4] = ["Cargo.toml", "Trunk.toml", "index.html", "src/main.rs"];

/// Builds it and gives the folder of its build.
///
/// # Errors
/// Where it can't be built.
pub fn build(ready: &Ready) -> Result<PathBuf> {
    let folder = ready.place.target.join("bench/one-button");
    let dist = folder.join("dist");
    step("building an app of one button, to compare with", || {
        lay(&ready.place, &folder)?;
        bundle(ready, &folder, &dist)?;
        squeeze_all(&dist)
    })?;
    Ok(dist)
}

/// A copy beside the workspace's lock file, so that both apps are built from the same versions of everything.
fn lay(place: &Place, folder: &Path) -> Result<()> {
    fs::create_dir_all(folder.join("src"))?;
    let copy = |from: PathBuf, to: PathBuf| {
        fs::copy(&from, to).with_context(|| format!("{} can't be copied", from.display()))
    };
    for file in FILES {
        copy(place.root.join(SOURCES).join(file), folder.join(file))?;
    }
    copy(place.root.join("Cargo.lock"), folder.join("Cargo.lock"))?;
    Ok(())
}

#[cfg(test)]
mod tests {
    /// The comparison is only fair if both are built alike.
    #[test]
    fn it_is_built_with_the_app_s_own_profile() {
        let profile = |manifest: &'static str| {
            let after = manifest.split_once("[profile.release]\n").unwrap().1;
            after.split("\n\n").next().unwrap().trim()
        };
        let app = profile(include_str!("../../../../Cargo.toml"));
        let button = profile(include_str!("../../one-button/Cargo.toml"));
        assert_eq!(button, app);
        assert!(app.contains("opt-level = \"z\""), "{app}");
    }
}
