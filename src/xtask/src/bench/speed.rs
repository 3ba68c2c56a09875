//! How long the arithmetic takes, per operation: as a program of this machine, and as a page for the browser to run.

use super::report::{self, Measure};
use crate::build::bundle;
use crate::place::Place;
use crate::process::Program;
use crate::ready::Ready;
use crate::seal::squeeze_all;
use crate::step::step;
use anyhow::Result;
use std::fs;

/// The program and the page are one package.
const SOURCES: &str = "tests/speed";

/// Runs it on this machine.
///
/// # Errors
/// Where it can't be built or run.
pub fn natively(place: &Place) -> Result<Vec<Measure>> {
    let left = place.target.join("bench/native.json");
    let _ = fs::remove_file(&left);
    step("timing the arithmetic on this machine", || {
        Program::new(place, "cargo")
            .args(["run", "--release", "--package", "speed", "--"])
            .args([&left])
            .logged(&place.log("speed"))
    })?;
    report::read(&left)
}

/// Builds the page, which the browser's bench opens.
///
/// # Errors
/// Where it can't be built.
pub fn page(ready: &Ready) -> Result<()> {
    let dist = ready.place.target.join("bench/speed/dist");
    step("building the page that times the arithmetic", || {
        bundle(ready, &ready.place.root.join(SOURCES), &dist)?;
        squeeze_all(&dist)
    })
}
