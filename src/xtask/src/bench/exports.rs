//! What handing visits over costs: rows, workbooks, bundles and papers, each against the library that writes it.

use super::report::{self, Measure};
use crate::place::Place;
use crate::process::Program;
use crate::step::step;
use anyhow::Result;
use std::fs;

/// Runs the command's own measurement on this machine.
///
/// # Errors
/// Where it can't be built or run.
pub fn natively(place: &Place) -> Result<Vec<Measure>> {
    let left = place.target.join("bench/exports.json");
    let _ = fs::remove_file(&left);
    step("writing ten thousand visits", || {
        Program::new(place, "cargo")
            .args(["run", "--profile", "dist", "--package", "lightround"])
            .args(["--example", "exports", "--"])
            .args([&left])
            .logged(&place.log("exports"))
    })?;
    report::read(&left)
}
