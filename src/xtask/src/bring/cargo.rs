//! Programs built from the Rust package registry, into this project's own folder.

use crate::place::Place;
use crate::process::Program;
use crate::step::step;
use crate::want::CargoTool;
use anyhow::Result;

/// Builds and installs a program. Less optimised than its makers would: that halves the build, and it runs for seconds.
///
/// # Errors
/// Where it can't be fetched or built.
pub fn install(place: &Place, tool: &CargoTool) -> Result<()> {
    let CargoTool {
        package,
        version,
        flags,
        minutes,
        ..
    } = tool;
    step(
        &format!("building {package} {version} (about {minutes} minutes)"),
        || {
            Program::new(place, "cargo")
                .args([
                    "install",
                    package,
                    "--version",
                    version,
                    "--force",
                    "--root",
                ])
                .args([place.tools()])
                .args(*flags)
                .env("CARGO_PROFILE_RELEASE_LTO", "off")
                .env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "1")
                .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16")
                .without("CARGO_TARGET_DIR")
                .logged(&place.log(package))
        },
    )
}
