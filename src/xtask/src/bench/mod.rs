//! `cargo xtask bench`: every number beside another from the same run, as a table and as `target/bench/report.json`.

mod examples;
mod one_button;
mod report;
mod sizes;
mod speed;

use crate::build;
use crate::command::Depth;
use crate::journeys::surroundings;
use crate::process::Program;
use crate::ready::{Beyond, Ready, ready};
use crate::serve::relay_for_tests;
use crate::step::step;
use anyhow::Result;
use report::Measure;
use std::fs;

/// Measures, prints the table and writes the report.
///
/// # Errors
/// Where something can't be built or measured.
pub fn run(depth: Depth) -> Result<()> {
    let browsers = depth != Depth::NoBrowsers;
    let ready = ready(Beyond {
        lints: false,
        browsers,
    })?;
    build::app(&ready)?;
    let button = one_button::build(&ready)?;
    let mut measures = sizes::compare(&ready.place.dist(), &button)?;
    measures.extend(examples::natively(&ready.place)?);
    if browsers {
        measures.extend(speed::natively(&ready.place)?);
        speed::page(&ready)?;
        measures.extend(in_browser(&ready)?);
    }
    let folder = ready.place.target.join("bench");
    let path = folder.join("report.json");
    fs::write(
        &path,
        report::json(&measures, &ready.compiler.spoken(&ready.place)),
    )?;
    println!(
        "\n{}\nThe same as JSON is in {}.",
        report::table(&measures),
        path.display()
    );
    Ok(())
}

/// What only a browser can measure is measured by the tests' own bench, which leaves its numbers in a file.
fn in_browser(ready: &Ready) -> Result<Vec<Measure>> {
    let place = &ready.place;
    let relay = relay_for_tests(place)?;
    let left = place.target.join("bench/browser.json");
    let _ = fs::remove_file(&left);
    step("measuring in the browser", || {
        let tests = [
            "test",
            "--package",
            "lightround-tests",
            "--test",
            "bench",
            "--",
            "--ignored",
        ];
        surroundings(
            Program::new(place, "cargo").args(tests),
            place,
            &relay.to_string_lossy(),
        )
        .env("LIGHTROUND_BENCH", &left)
        .shown()
    })?;
    report::read(&left)
}
