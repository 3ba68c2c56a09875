//! `cargo xtask test`: everything that must hold before a change is kept.

use crate::build;
use crate::command::Depth;
use crate::compiler::TARGET;
use crate::journeys;
use crate::process::Program;
use crate::ready::{Beyond, Ready, ready};
use crate::step::{spelled, step};
use anyhow::Result;
use std::time::Instant;

/// One thing that cargo checks.
#[derive(Clone, Copy, Debug)]
struct Check {
    what: &'static str,
    arguments: &'static [&'static str],
    on: Side,
}

/// Which compiler looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Side {
    Machine,
    Browser,
}

/// The journeys' own package is built here and run apart: it needs a built app and browsers.
const CHECKS: [Check; 5] = [
    Check {
        what: "formatting",
        arguments: &["fmt", "--all", "--check"],
        on: Side::Machine,
    },
    Check {
        what: "lints, every crate and every target",
        arguments: &[
            "clippy",
            "--workspace",
            "--all-targets",
            "--",
            "-D",
            "warnings",
        ],
        on: Side::Machine,
    },
    Check {
        what: "lints, what runs in the browser",
        arguments: &[
            "clippy", "-p", "app", "-p", "storage", "-p", "widgets", "-p", "workers", "-p",
            "inside", "--target", TARGET, "--", "-D", "warnings",
        ],
        on: Side::Browser,
    },
    Check {
        what: "tests and examples in the documentation",
        arguments: &["test", "--workspace", "--exclude", "lightround-tests"],
        on: Side::Machine,
    },
    Check {
        what: "documentation, every link of it",
        arguments: &[
            "doc",
            "--no-deps",
            "-p",
            "optics",
            "-p",
            "record",
            "-p",
            "vault",
            "-p",
            "sync",
            "-p",
            "papers",
            "-p",
            "pdf",
            "-p",
            "sheets",
            "-p",
            "fhir",
            "-p",
            "demo",
            "-p",
            "words",
        ],
        on: Side::Machine,
    },
];

/// How cargo-deny says that it has no database to look in.
const OUT_OF_REACH: &str = "failed to fetch advisory database";

/// Runs all checks of this depth, and stops at the first that fails.
///
/// # Errors
/// Names the check that failed.
pub fn run(depth: Depth) -> Result<()> {
    let began = Instant::now();
    let (lints, browsers) = (depth != Depth::BrowsersOnly, depth != Depth::NoBrowsers);
    let ready = ready(Beyond { lints, browsers })?;
    if lints {
        CHECKS.iter().try_for_each(|check| check.run(&ready))?;
        licences(&ready)?;
        advisories(&ready)?;
    }
    build::app(&ready)?;
    if browsers {
        journeys::run(&ready)?;
    }
    println!("All holds, in {}.", spelled(began.elapsed()));
    Ok(())
}

impl Check {
    fn run(&self, ready: &Ready) -> Result<()> {
        let Ready { place, compiler } = ready;
        let cargo = Program::new(place, "cargo").args(self.arguments);
        let cargo = match self.on {
            Side::Machine => cargo,
            Side::Browser => compiler
                .told_to(cargo)
                .env("CARGO_TARGET_DIR", place.web_target()),
        };
        step(self.what, || cargo.shown())
    }
}

fn licences(ready: &Ready) -> Result<()> {
    step("licences, sources and bans of every dependency", || {
        Program::new(&ready.place, "cargo-deny")
            .args(["check", "licenses", "bans", "sources"])
            .logged(&ready.place.log("deny"))
    })
}

/// The database of advisories is fetched each time; without a way to it, the rest still tells whether this change is sound.
fn advisories(ready: &Ready) -> Result<()> {
    step("known faults of dependencies", || {
        let looked = Program::new(&ready.place, "cargo-deny")
            .args(["check", "advisories"])
            .read();
        match looked {
            Err(error) if error.to_string().contains(OUT_OF_REACH) => {
                println!("  not looked at: the database of advisories can't be reached");
                Ok(())
            }
            looked => looked.map(drop),
        }
    })
}
