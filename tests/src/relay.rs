//! The relay as a child process.

use crate::Place;
use anyhow::{Context, Result, bail};
use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};

/// A running relay; killed when dropped.
#[derive(Debug)]
pub struct Relay {
    child: Child,
    address: String,
}

impl Relay {
    /// Starts the relay on a free loopback port and waits until it says its address.
    ///
    /// # Errors
    /// Where it can't be started, or ends before it says one.
    pub fn start(place: &Place) -> Result<Self> {
        Self::listen(place, "127.0.0.1:0")
    }

    /// Starts it again at an address that it had before.
    ///
    /// # Errors
    /// As [`Relay::start`].
    pub fn listen(place: &Place, listen: &str) -> Result<Self> {
        let mut child = Command::new(&place.relay)
            .arg("--app")
            .arg(&place.dist)
            .args(["--listen", listen])
            .stdout(Stdio::piped())
            .spawn()
            .with_context(|| format!("{} can't be started", place.relay.display()))?;
        let out = child.stdout.take().context("the relay has no output")?;
        for line in BufReader::new(out).lines() {
            let line = line?;
            if let Some(at) = line.find("http://") {
                let address = line[at..]
                    .split_whitespace()
                    .next()
                    .unwrap_or_default()
                    .trim_end_matches(['/', '.'])
                    .to_owned();
                return Ok(Self { child, address });
            }
        }
        bail!("the relay ended before it said its address")
    }

    /// `http://127.0.0.1:port`, without a slash at the end.
    pub fn address(&self) -> &str {
        &self.address
    }

    /// `127.0.0.1:port`.
    pub fn host(&self) -> &str {
        self.address.trim_start_matches("http://")
    }

    /// Stops it at once, as a lost network does.
    ///
    /// # Errors
    /// Where it can't be killed.
    pub fn stop(mut self) -> Result<()> {
        self.child.kill()?;
        self.child.wait()?;
        Ok(())
    }
}

impl Drop for Relay {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
