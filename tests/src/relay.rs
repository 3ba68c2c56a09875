//! The relay as a child process.

use crate::Place;
use anyhow::{Context, Result, bail};
use std::io::{BufRead, BufReader};
use std::path::Path;
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
        Self::run(place, Command::new(&place.relay).args(["--listen", listen]))
    }

    /// Starts one that keeps entries in this file.
    ///
    /// # Errors
    /// As [`Relay::start`].
    pub fn keeping(place: &Place, listen: &str, data: &Path) -> Result<Self> {
        let mut command = Command::new(&place.relay);
        command.args(["--listen", listen, "--data"]).arg(data);
        Self::run(place, &mut command)
    }

    /// What a command on such a file prints, the relay running or not.
    ///
    /// # Errors
    /// Where it fails, with what it said.
    pub fn told(place: &Place, command: &str, data: &Path) -> Result<String> {
        Self::asked(place, command, data, &[])
    }

    /// The same of a command that is told more.
    ///
    /// # Errors
    /// As [`Relay::told`].
    pub fn asked(place: &Place, command: &str, data: &Path, more: &[&str]) -> Result<String> {
        let out = Command::new(&place.relay)
            .args([command, "--data"])
            .arg(data)
            .args(more)
            .output()
            .with_context(|| format!("{} can't be run", place.relay.display()))?;
        if !out.status.success() {
            bail!("{command}: {}", String::from_utf8_lossy(&out.stderr));
        }
        Ok(String::from_utf8_lossy(&out.stdout).into_owned())
    }

    fn run(place: &Place, command: &mut Command) -> Result<Self> {
        let mut child = command
            .arg("--app")
            .arg(&place.dist)
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

    /// Asks it to end, and waits until it has.
    ///
    /// # Errors
    /// Where it can't be asked, or ends as if something were amiss.
    pub fn end(mut self) -> Result<()> {
        let asked = Command::new("kill")
            .args(["-TERM", &self.child.id().to_string()])
            .status()?;
        let ended = self.child.wait()?;
        if !asked.success() || !ended.success() {
            bail!("the relay was asked to end, and ended with {ended}");
        }
        Ok(())
    }

    /// Stops it at once, as a lost network does: it is killed outright (`kill -9`).
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
