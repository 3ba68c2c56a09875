//! Which Rust compiler builds for the browser.

use crate::place::Place;
use crate::process::Program;
use std::path::{Path, PathBuf};

/// The target that browsers run.
pub const TARGET: &str = "wasm32-unknown-unknown";

/// The name under which rustup knows the distribution's compiler.
pub const DISTRIBUTION: &str = "distro";

/// A compiler that has the browser's standard library.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Compiler {
    /// The one that builds everything else too.
    Usual,
    /// The distribution's, known to rustup as [`DISTRIBUTION`].
    Distribution,
}

impl Compiler {
    /// Looks for one.
    pub fn find(place: &Place) -> Option<Self> {
        if has_standard_library(place, "rustc") {
            return Some(Self::Usual);
        }
        let linked = Program::new(place, "rustup")
            .args(["toolchain", "list"])
            .read();
        let known = linked.is_ok_and(|list| {
            list.lines()
                .any(|line| line.split_whitespace().next() == Some(DISTRIBUTION))
        });
        (known && has_standard_library(place, "/usr/bin/rustc")).then_some(Self::Distribution)
    }

    /// Makes a program, and what it runs in turn, use this compiler.
    pub fn told_to(self, program: Program) -> Program {
        match self {
            Self::Usual => program,
            Self::Distribution => program.env("RUSTUP_TOOLCHAIN", DISTRIBUTION),
        }
    }

    /// Its name and version, as it says them.
    pub fn spoken(self, place: &Place) -> String {
        self.told_to(Program::new(place, "rustc"))
            .args(["--version"])
            .read()
            .unwrap_or_default()
    }
}

/// Where a compiler keeps the browser's standard library, whether or not it is there.
pub fn library_folder(place: &Place, rustc: &str) -> Option<PathBuf> {
    let said = Program::new(place, rustc)
        .args(["--print", "target-libdir", "--target", TARGET])
        .read()
        .ok()?;
    Some(PathBuf::from(said.trim()))
}

fn has_standard_library(place: &Place, rustc: &str) -> bool {
    library_folder(place, rustc).is_some_and(|folder| holds_std(&folder))
}

fn holds_std(folder: &Path) -> bool {
    let names = std::fs::read_dir(folder)
        .into_iter()
        .flatten()
        .flatten()
        .map(|entry| entry.file_name());
    names
        .into_iter()
        .any(|name| name.to_string_lossy().starts_with("libstd-"))
}
