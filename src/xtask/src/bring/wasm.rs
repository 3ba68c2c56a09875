//! A compiler for the browser, by whichever way works here.

use super::debian;
use crate::compiler::{Compiler, DISTRIBUTION, TARGET, library_folder};
use crate::machine::Rooted;
use crate::place::Place;
use crate::plan::WasmWay;
use crate::process::Program;
use crate::step::step;
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::{Path, PathBuf};

/// The distribution's compiler, its sources, what it takes from LLVM, and its linter.
const PACKAGES: [&str; 5] = [
    "rustc-web",
    "cargo-web",
    "rust-web-src",
    "rust-web-llvm",
    "rust-web-clippy",
];

/// What the distribution's compiler links with for the browser.
const LINKER: &str = "/usr/bin/rust-lld";

/// The crate that is built only for the standard library beneath it.
const SEED: &str = "std-seed";

/// Tries the ways in order until one gave a compiler.
///
/// # Errors
/// Where none did.
pub fn install(place: &Place, rooted: Rooted, ways: &[WasmWay]) -> Result<()> {
    for way in ways {
        let tried = match way {
            WasmWay::Rustup => by_rustup(place),
            WasmWay::Debian => by_debian(place, rooted),
        };
        match tried {
            Ok(()) if Compiler::find(place).is_some() => return Ok(()),
            Ok(()) => {}
            Err(error) => println!("  that did not work: {error:#}"),
        }
    }
    bail!(
        "No way led to a Rust compiler for {TARGET}: with rustup, run `rustup target add {TARGET}` where its server can be reached."
    )
}

fn by_rustup(place: &Place) -> Result<()> {
    step(&format!("adding {TARGET} to the Rust toolchain"), || {
        Program::new(place, "rustup")
            .args(["target", "add", TARGET])
            .env("RUSTUP_MAX_RETRIES", "1")
            .logged(&place.log("rustup"))
    })
}

fn by_debian(place: &Place, rooted: Rooted) -> Result<()> {
    debian::install(place, rooted, &PACKAGES)?;
    bring_linker(place, rooted)?;
    step(
        "building the browser's standard library for the distribution's compiler (about 2 minutes)",
        || {
            let folder = lay_seed(place)?;
            build_seed(place, &folder)?;
            keep_library(place, rooted, &folder)?;
            link_nothing(place, &folder)
        },
    )?;
    if place.program("rustup").is_some() {
        Program::new(place, "rustup")
            .args(["toolchain", "link", DISTRIBUTION, "/usr"])
            .read()?;
    }
    Ok(())
}

/// The compiler's linker is a link to a program of another package, such as `lld-22`, and no package asks for that one.
/// The program is named as its package is.
fn bring_linker(place: &Place, rooted: Rooted) -> Result<()> {
    let linker = Path::new(LINKER);
    if linker.exists() {
        return Ok(());
    }
    let leads_to = fs::read_link(linker).unwrap_or_default();
    let package = leads_to.file_name().and_then(|name| name.to_str());
    let package = package.with_context(|| {
        format!("the distribution's compiler has no linker for {TARGET}: {LINKER} is not there")
    })?;
    debian::install(place, rooted, &[package])
}

/// Links an empty library on top of the standard one, so that a linker that can't is found out here.
fn link_nothing(place: &Place, folder: &Path) -> Result<()> {
    fs::write(folder.join("nothing.rs"), "")?;
    let linked = Program::new(place, "/usr/bin/rustc")
        .within(folder)
        .args(["--crate-type", "cdylib", "--target", TARGET, "nothing.rs"])
        .read();
    linked.map(drop).with_context(|| {
        format!("the distribution's compiler can't link for {TARGET}: install the package that {LINKER} leads to")
    })
}

fn lay_seed(place: &Place) -> Result<PathBuf> {
    let folder = place.tools().join(SEED);
    fs::create_dir_all(folder.join("src"))?;
    // A workspace of its own, so that cargo doesn't look for one around it.
    let manifest = format!(
        "[package]\nname = \"{SEED}\"\nversion = \"0.0.0\"\nedition = \"2024\"\n\n[workspace]\n"
    );
    fs::write(folder.join("Cargo.toml"), manifest)?;
    fs::write(folder.join("src/lib.rs"), "#![no_std]\n")?;
    Ok(folder)
}

/// With bitcode embedded, or a later build with link-time optimisation finds none in the library.
fn build_seed(place: &Place, folder: &Path) -> Result<()> {
    Program::new(place, "/usr/bin/cargo")
        .within(folder)
        .args([
            "build",
            "--release",
            "--target",
            TARGET,
            "-Zbuild-std=std,panic_abort",
        ])
        .env("RUSTC", "/usr/bin/rustc")
        .env("RUSTC_BOOTSTRAP", "1")
        .env(
            "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS",
            "-Cembed-bitcode=yes",
        )
        .env("CARGO_TARGET_DIR", folder.join("target"))
        .logged(&place.log(SEED))
}

fn keep_library(place: &Place, rooted: Rooted, folder: &Path) -> Result<()> {
    let kept = library_folder(place, "/usr/bin/rustc")
        .context("the distribution's compiler does not say where its libraries are")?;
    let built = folder.join("target").join(TARGET).join("release/deps");
    let libraries = fs::read_dir(&built)?
        .flatten()
        .map(|entry| entry.path())
        .filter(|path| is_library(path));
    debian::as_root(place, rooted, "mkdir")
        .args(["-p"])
        .args([&kept])
        .read()?;
    debian::as_root(place, rooted, "cp")
        .args(libraries)
        .args([&kept])
        .read()?;
    Ok(())
}

/// All but the seed's own.
fn is_library(path: &Path) -> bool {
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    path.extension().is_some_and(|ending| ending == "rlib") && !name.starts_with("libstd_seed")
}
