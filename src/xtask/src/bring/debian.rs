//! Debian's packages.

use crate::machine::Rooted;
use crate::place::Place;
use crate::process::Program;
use crate::step::step;
use anyhow::Result;

/// Installs packages, after a fresh look at what the archive holds.
///
/// # Errors
/// Where the archive can't be reached, or has no such package.
pub fn install(place: &Place, rooted: Rooted, packages: &[&str]) -> Result<()> {
    step(&format!("installing {}", packages.join(", ")), || {
        // An archive that is out of reach may still have left its lists and packages here: let the install itself tell.
        let _ = as_root(place, rooted, "apt-get")
            .args(["update"])
            .logged(&place.log("apt-update"));
        as_root(place, rooted, "apt-get")
            .env("DEBIAN_FRONTEND", "noninteractive")
            .args(["install", "--yes", "--no-install-recommends"])
            .args(packages)
            .logged(&place.log("apt-install"))
    })
}

/// A program that runs as root.
pub fn as_root(place: &Place, rooted: Rooted, name: &str) -> Program {
    match rooted {
        Rooted::Sudo => Program::new(place, "sudo").args([name]),
        Rooted::Yes | Rooted::No => Program::new(place, name),
    }
}
