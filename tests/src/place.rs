//! Where the built app, the relay and the screenshots are.

use anyhow::{Context, Result};
use std::env;
use std::path::PathBuf;

/// Paths that `cargo xtask test` passes on.
#[derive(Clone, Debug)]
pub struct Place {
    /// The sealed build of the app.
    pub dist: PathBuf,
    /// The relay's binary.
    pub relay: PathBuf,
    /// Where screenshots go.
    pub shots: PathBuf,
}

impl Place {
    /// Reads `LIGHTROUND_DIST`, `LIGHTROUND_RELAY` and `LIGHTROUND_SHOTS`.
    ///
    /// # Errors
    /// Says which is missing.
    pub fn from_env() -> Result<Self> {
        let path = |name: &str| {
            env::var_os(name).map(PathBuf::from).with_context(|| {
                format!("{name} is not set: run the journeys with `cargo xtask test`")
            })
        };
        let place = Self {
            dist: path("LIGHTROUND_DIST")?,
            relay: path("LIGHTROUND_RELAY")?,
            shots: path("LIGHTROUND_SHOTS")?,
        };
        std::fs::create_dir_all(&place.shots).context("the screenshots' folder can't be made")?;
        Ok(place)
    }
}
