//! Builds the app for the browser and seals it.

use crate::fresh::Fingerprint;
use crate::place::Place;
use crate::process::Program;
use crate::ready::{Beyond, Ready, ready};
use crate::seal::seal;
use crate::step::step;
use anyhow::Result;
use std::path::Path;

/// What a build is made from.
const SOURCES: [&str; 15] = [
    "Cargo.toml",
    "Cargo.lock",
    "Trunk.toml",
    ".cargo/config.toml",
    "public",
    "style",
    "src/app",
    "src/demo",
    "src/optics",
    "src/papers",
    "src/record",
    "src/sync",
    "src/vault",
    "src/words",
    "src/xtask/src/seal",
];

/// `cargo xtask build`
///
/// # Errors
/// One sentence for what stopped it.
pub fn run() -> Result<()> {
    let ready = ready(Beyond::default())?;
    app(&ready)?;
    println!("The app is in {}.", ready.place.dist().display());
    Ok(())
}

/// Builds and seals the app into `dist/`, unless it stands there already.
///
/// # Errors
/// Where it can't be built; the whole output is then in a log.
pub fn app(ready: &Ready) -> Result<()> {
    let Ready { place, compiler } = ready;
    let fingerprint = Fingerprint::of(&place.root, &SOURCES, &[compiler.spoken(place)]);
    let mark = place.web_target().join("sealed");
    if fingerprint.is_marked(&mark) && place.dist().join("index.html").exists() {
        println!("- the app stands built and sealed from these very sources");
        return Ok(());
    }
    let _ = std::fs::remove_file(&mark);
    fetch(place)?;
    step(
        "building the app for the browser (from nothing about 5 minutes)",
        || bundle(ready, &place.root, &place.dist()),
    )?;
    step("sealing it: SHA-256 of every file, brotli beside", || {
        let seal = seal(&place.dist())?;
        println!("  version {}, {} files", seal.version(), seal.len());
        Ok(())
    })?;
    fingerprint.mark(&mark)?;
    Ok(())
}

/// The bundler then works offline, and so fetches no program of its own.
fn fetch(place: &Place) -> Result<()> {
    step("fetching crates", || {
        Program::new(place, "cargo")
            .args(["fetch"])
            .logged(&place.log("fetch"))
    })
}

/// Bundles the page in a folder that holds a `Trunk.toml`.
///
/// # Errors
/// Where it can't be built.
pub fn bundle(ready: &Ready, folder: &Path, dist: &Path) -> Result<()> {
    let Ready { place, compiler } = ready;
    compiler
        .told_to(Program::new(place, "trunk"))
        .within(folder)
        .args(["build", "--release", "--offline", "--dist"])
        .args([dist])
        .env("CARGO_TARGET_DIR", place.web_target())
        .env("TRUNK_SKIP_VERSION_CHECK", "true")
        .logged(&place.log("trunk"))
}

#[cfg(test)]
mod tests {
    use crate::place::Place;
    use std::fs;

    #[test]
    fn the_page_links_every_style_sheet() {
        let root = Place::find().unwrap().root;
        let page = fs::read_to_string(root.join("public/index.html")).unwrap();
        for sheet in fs::read_dir(root.join("style")).unwrap().flatten() {
            let name = sheet.file_name().to_string_lossy().into_owned();
            if sheet
                .path()
                .extension()
                .is_some_and(|ending| ending == "css")
            {
                assert!(
                    page.contains(&format!("href=\"../style/{name}\"")),
                    "{name} is not linked from public/index.html"
                );
            }
        }
    }
}
