//! What a task can need on the machine.

use crate::compiler::Compiler;

/// Something that a task needs on the machine.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Want {
    /// A Rust compiler that can build for the browser.
    WasmCompiler,
    /// A part of the Rust toolchain: its program, and rustup's name for it.
    Component(&'static str, &'static str),
    /// A program built from the Rust package registry.
    Cargo(CargoTool),
    /// A package of the npm registry.
    Npm(NpmTool),
    /// A program that the system's own packages bring.
    System(SystemProgram),
}

/// A program that `cargo install` builds, at one exact version.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CargoTool {
    /// The crate's name.
    pub package: &'static str,
    /// The program's name.
    pub program: &'static str,
    /// The version wanted.
    pub version: String,
    /// How it is built.
    pub flags: &'static [&'static str],
    /// About how long building it takes on two cores, in minutes.
    pub minutes: u8,
}

/// A package that npm fetches, at one exact version.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NpmTool {
    /// The package's name.
    pub package: &'static str,
    /// The version wanted.
    pub version: &'static str,
    /// The program that it brings and the version which that one says, if it brings one.
    pub program: Option<(&'static str, &'static str)>,
}

/// A program that stands in the system's own folders.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SystemProgram {
    /// The names that it goes by; Debian's first.
    pub programs: &'static [&'static str],
    /// The Debian package that brings it.
    pub package: &'static str,
    /// What it is, for those who must install it by hand.
    pub what: &'static str,
}

/// Whether the linter for the browser's crates comes apart from the compiler that builds them.
pub fn clippy_apart(compiler: Option<Compiler>) -> bool {
    compiler == Some(Compiler::Distribution)
}
