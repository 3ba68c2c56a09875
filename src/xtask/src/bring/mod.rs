//! Carries out what [`crate::plan`] decided: one file for each place that things come from.

mod cargo;
mod debian;
mod npm;
mod wasm;

use crate::machine::Rooted;
use crate::place::Place;
use crate::plan::Action;
use crate::process::Program;
use crate::step::step;
use anyhow::Result;

/// Brings one thing.
///
/// # Errors
/// Says what could not be brought, and where the whole output is.
pub fn bring(place: &Place, rooted: Rooted, action: &Action) -> Result<()> {
    match action {
        Action::Debian(packages) => debian::install(place, rooted, packages),
        Action::WasmCompiler(ways) => wasm::install(place, rooted, ways),
        Action::Component(component) => {
            step(&format!("adding {component} to the Rust toolchain"), || {
                Program::new(place, "rustup")
                    .args(["component", "add", component])
                    .logged(&place.log("rustup"))
            })
        }
        Action::Cargo(tool) => cargo::install(place, tool),
        Action::Npm(tools) => npm::install(place, tools),
    }
}
