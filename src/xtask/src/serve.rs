//! `cargo xtask run`: the built app, served on this machine.

use crate::build;
use crate::place::Place;
use crate::process::Program;
use crate::ready::{Beyond, ready};
use crate::step::step;
use anyhow::Result;
use std::path::PathBuf;

/// Builds, seals, and serves until interrupted.
///
/// # Errors
/// One sentence for what stopped it.
pub fn run(listen: &str) -> Result<()> {
    let ready = ready(Beyond::default())?;
    build::app(&ready)?;
    let place = &ready.place;
    step("building the relay", || {
        Program::new(place, "cargo")
            .args([
                "build",
                "--package",
                "lightround-relay",
                "--profile",
                "dist",
            ])
            .logged(&place.log("relay"))
    })?;
    println!("- serving (interrupt with Ctrl-C)");
    let relay = place.target.join("dist/lightround-relay");
    Program::new(place, &relay.to_string_lossy())
        .args(["--listen", listen, "--app"])
        .args([place.dist()])
        .shown()
}

/// Builds the relay as the tests use it.
///
/// # Errors
/// Where it can't be built.
pub fn relay_for_tests(place: &Place) -> Result<PathBuf> {
    step("building the relay", || {
        Program::new(place, "cargo")
            .args(["build", "--package", "lightround-relay"])
            .logged(&place.log("relay"))
    })?;
    Ok(place.target.join("debug/lightround-relay"))
}
