//! A display without a screen, for the engine that has no headless mode.

use anyhow::{Context, Result};
use std::process::Stdio;
use tokio::io::{AsyncBufReadExt, BufReader};
use tokio::process::{Child, Command};

/// One display; ended when dropped. Each browser has its own: on a shared one, whichever window comes last takes the
/// focus from a finger that is still down in the other.
#[derive(Debug)]
pub struct Display {
    name: String,
    _server: Child,
}

impl Display {
    /// Opens one, under a number that nobody uses yet.
    ///
    /// # Errors
    /// Where the server can't be started.
    pub async fn open() -> Result<Self> {
        // It picks a free number itself, and says it once it is ready.
        let mut server = Command::new("Xvfb")
            .args(["-displayfd", "1", "-screen", "0", "1600x1400x24"])
            .args(["-nolisten", "tcp"])
            .kill_on_drop(true)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .context("Xvfb can't be started: run `cargo xtask test`, which brings it")?;
        let out = server.stdout.take().context("Xvfb has no output")?;
        let mut number = String::new();
        BufReader::new(out).read_line(&mut number).await?;
        Ok(Self {
            name: format!(":{}", number.trim()),
            _server: server,
        })
    }

    /// Its name, as `DISPLAY` takes it.
    pub fn name(&self) -> &str {
        &self.name
    }
}
