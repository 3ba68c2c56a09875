//! What a crate measures of itself, in an example that leaves its numbers in a file.

use super::report::{self, Measure};
use crate::place::Place;
use crate::process::Program;
use crate::step::step;
use anyhow::Result;
use std::fs;

struct Example {
    what: &'static str,
    package: &'static str,
    name: &'static str,
}

const EXAMPLES: [Example; 3] = [
    // How much a relay carries, against its database alone, and what one more frame costs.
    Example {
        what: "loading a relay, and filling some",
        package: "lightround-relay",
        name: "load",
    },
    // A new tablet gets everything, against decrypting the same bytes.
    Example {
        what: "bringing a hundred thousand entries to a new tablet",
        package: "lightround",
        name: "first_sync",
    },
    // What handing visits over costs: rows, workbooks, bundles and papers, each against the library that writes it.
    Example {
        what: "writing ten thousand visits",
        package: "lightround",
        name: "exports",
    },
];

/// Runs each on this machine.
///
/// # Errors
/// Where one can't be built or run.
pub fn natively(place: &Place) -> Result<Vec<Measure>> {
    let measured = EXAMPLES.iter().map(|example| example.measured(place));
    Ok(measured.collect::<Result<Vec<_>>>()?.concat())
}

impl Example {
    fn measured(&self, place: &Place) -> Result<Vec<Measure>> {
        let left = place.target.join(format!("bench/{}.json", self.name));
        let _ = fs::remove_file(&left);
        step(self.what, || {
            Program::new(place, "cargo")
                .args(["run", "--profile", "dist", "--package", self.package])
                .args(["--example", self.name, "--"])
                .args([&left])
                .logged(&place.log(self.name))
        })?;
        report::read(&left)
    }
}
