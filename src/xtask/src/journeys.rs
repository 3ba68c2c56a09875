//! The journeys in three browsers: the built app and the relay, handed to the tests by their environment.

use crate::build::bundle;
use crate::place::Place;
use crate::process::Program;
use crate::ready::Ready;
use crate::serve::relay_for_tests;
use crate::step::step;
use anyhow::Result;

/// A page whose tests must run inside a browser. It has the app's own profile, and no part in the app.
const INSIDE: &str = "tests/inside";

/// Runs the journeys against the sealed build.
///
/// # Errors
/// Where a journey fails.
pub fn run(ready: &Ready) -> Result<()> {
    let place = &ready.place;
    let relay = relay_for_tests(place)?;
    step(
        "building the page of what is tested inside a browser",
        || bundle(ready, &place.root.join(INSIDE), &place.inside()),
    )?;
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
        .env("LIGHTROUND_INSIDE", place.inside())
        .env("LIGHTROUND_RELAY", relay)
        .env("LIGHTROUND_SHOTS", place.target.join("shots"))
        .env("LIGHTROUND_AXE", place.axe())
}
