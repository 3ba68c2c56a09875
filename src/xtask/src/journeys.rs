//! The journeys in three browsers: the built app, the relay and a display, handed to the tests by their environment.

use crate::place::Place;
use crate::process::Program;
use crate::ready::Ready;
use crate::serve::relay_for_tests;
use crate::step::step;
use anyhow::{Context, Result};
use std::env;
use std::io::{BufRead, BufReader};
use std::process::{Child, Stdio};

/// Runs the journeys against the sealed build.
///
/// # Errors
/// Where a journey fails.
pub fn run(ready: &Ready) -> Result<()> {
    let place = &ready.place;
    let relay = relay_for_tests(place)?;
    let display = Display::open(place)?;
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
            &display,
        )
        .shown()
    })
}

/// What every test that drives a browser finds in its environment.
pub fn surroundings(program: Program, place: &Place, relay: &str, display: &Display) -> Program {
    program
        .env("LIGHTROUND_DIST", place.dist())
        .env("LIGHTROUND_RELAY", relay)
        .env("LIGHTROUND_SHOTS", place.target.join("shots"))
        .env("LIGHTROUND_AXE", place.axe())
        .env("DISPLAY", &display.name)
}

/// A display for the engine that has no headless mode; closed when dropped.
#[derive(Debug)]
pub struct Display {
    name: String,
    server: Option<Child>,
}

impl Display {
    /// The display that is there, or one without a screen.
    ///
    /// # Errors
    /// Where neither is to be had.
    pub fn open(place: &Place) -> Result<Self> {
        if let Ok(name) = env::var("DISPLAY") {
            return Ok(Self { name, server: None });
        }
        // It picks a free number itself, and says it once it is ready.
        let mut command = Program::new(place, "Xvfb")
            .args([
                "-displayfd",
                "1",
                "-screen",
                "0",
                "1280x1200x24",
                "-nolisten",
                "tcp",
            ])
            .into_command();
        let mut server = command
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .context("Xvfb can't be started")?;
        let mut number = String::new();
        let out = server.stdout.take().context("Xvfb has no output")?;
        BufReader::new(out).read_line(&mut number)?;
        Ok(Self {
            name: format!(":{}", number.trim()),
            server: Some(server),
        })
    }
}

impl Drop for Display {
    fn drop(&mut self) {
        if let Some(server) = &mut self.server {
            // It may have ended by itself; then there is nothing to end.
            let _ = server.kill();
            let _ = server.wait();
        }
    }
}
