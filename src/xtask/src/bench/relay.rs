//! How much a relay carries, against its database alone.

use super::report::{self, Measure};
use crate::place::Place;
use crate::process::Program;
use crate::step::step;
use anyhow::Result;
use std::fs;

/// Runs the relay's own load on this machine.
///
/// # Errors
/// Where it can't be built or run.
pub fn load(place: &Place) -> Result<Vec<Measure>> {
    let left = place.target.join("bench/relay.json");
    let _ = fs::remove_file(&left);
    step("loading a relay", || {
        Program::new(place, "cargo")
            .args(["run", "--profile", "dist", "--package", "lightround-relay"])
            .args(["--example", "load", "--"])
            .args([&left])
            .logged(&place.log("load"))
    })?;
    report::read(&left)
}
