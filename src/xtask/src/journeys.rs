//! The journeys in three browsers: the built app and the relay, handed to the tests by their environment.

use crate::place::Place;
use crate::process::Program;
use crate::ready::Ready;
use crate::serve::relay_for_tests;
use crate::step::step;
use anyhow::Result;

/// Runs the journeys against the sealed build.
///
/// # Errors
/// Where a journey fails.
pub fn run(ready: &Ready) -> Result<()> {
    let place = &ready.place;
    let relay = relay_for_tests(place)?;
    let tests = [
        "test",
        "--package",
        "lightround-tests",
        "--test",
        "journeys",
    ];
    step("journeys in Chromium, Firefox and WebKit", || {
        surroundings(
            Program::new(place, "cargo").args(tests),
            place,
            &relay.to_string_lossy(),
        )
        .shown()
    })
}

/// What every test that drives a browser finds in its environment.
pub fn surroundings(program: Program, place: &Place, relay: &str) -> Program {
    program
        .env("LIGHTROUND_DIST", place.dist())
        .env("LIGHTROUND_RELAY", relay)
        .env("LIGHTROUND_SHOTS", place.target.join("shots"))
        .env("LIGHTROUND_AXE", place.axe())
}
