//! Packages of the npm registry, into this project's own folder.

use crate::place::Place;
use crate::process::Program;
use crate::step::step;
use crate::want::NpmTool;
use anyhow::Result;

/// Fetches packages; none of their install scripts runs.
///
/// # Errors
/// Where they can't be fetched.
pub fn install(place: &Place, tools: &[NpmTool]) -> Result<()> {
    let packages: Vec<String> = tools
        .iter()
        .map(|tool| format!("{}@{}", tool.package, tool.version))
        .collect();
    step(&format!("fetching {}", packages.join(", ")), || {
        std::fs::create_dir_all(place.tools())?;
        Program::new(place, "npm")
            .args([
                "install",
                "--no-audit",
                "--no-fund",
                "--ignore-scripts",
                "--prefix",
            ])
            .args([place.tools()])
            .args(packages)
            .logged(&place.log("npm"))
    })
}
