//! Other programs: run in sight, run into a log with a sign of life, or asked for a line.

use crate::place::Place;
use crate::step::spelled;
use anyhow::{Context, Result, bail, ensure};
use std::ffi::OsStr;
use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::process::{Command, ExitStatus, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

/// How often a long silent step shows what it is at.
const SIGN_OF_LIFE: Duration = Duration::from_secs(15);
const LOOK_EVERY: Duration = Duration::from_millis(100);
const TAIL_LINES: usize = 40;

/// What cargo and rustup set for the program that they run, and what must not reach the ones that it runs in turn.
const NOT_INHERITED: [&str; 6] = [
    "CARGO",
    "RUSTC",
    "RUSTDOC",
    "RUSTUP_TOOLCHAIN",
    "LD_LIBRARY_PATH",
    "NO_COLOR",
];

/// A program about to run.
#[derive(Debug)]
pub struct Program {
    name: String,
    command: Command,
}

impl Program {
    /// A program from this project's `PATH`, started in the project's folder.
    pub fn new(place: &Place, name: &str) -> Self {
        let found = place.program(name).unwrap_or_else(|| PathBuf::from(name));
        let mut command = Command::new(found);
        command
            .current_dir(&place.root)
            .env("PATH", place.path())
            .stdin(Stdio::null());
        for variable in NOT_INHERITED {
            command.env_remove(variable);
        }
        Self {
            name: name.to_owned(),
            command,
        }
    }

    /// Adds arguments.
    pub fn args<S: AsRef<OsStr>>(mut self, arguments: impl IntoIterator<Item = S>) -> Self {
        self.command.args(arguments);
        self
    }

    /// Adds an argument.
    pub fn arg(mut self, argument: impl AsRef<OsStr>) -> Self {
        self.command.arg(argument);
        self
    }

    /// Sets a variable for it.
    pub fn env(mut self, name: &str, value: impl AsRef<OsStr>) -> Self {
        self.command.env(name, value);
        self
    }

    /// Unsets a variable for it.
    pub fn without(mut self, name: &str) -> Self {
        self.command.env_remove(name);
        self
    }

    /// Starts it in another folder.
    pub fn within(mut self, folder: &Path) -> Self {
        self.command.current_dir(folder);
        self
    }

    /// Runs it with its output in sight.
    ///
    /// # Errors
    /// Where it can't be started, or fails.
    pub fn shown(mut self) -> Result<()> {
        let status = self.command.status().with_context(|| self.cannot_start())?;
        ensure!(status.success(), "{} failed ({status}).", self.name);
        Ok(())
    }

    /// Runs it with its output in a log, showing the last line from time to time, and the log's end on failure.
    ///
    /// # Errors
    /// Where it can't be started, or fails.
    pub fn logged(mut self, log: &Path) -> Result<()> {
        if let Some(folder) = log.parent() {
            fs::create_dir_all(folder)?;
        }
        let file =
            File::create(log).with_context(|| format!("{} can't be written", log.display()))?;
        self.command.stdout(file.try_clone()?).stderr(file);
        // What stopped another's tool is in its own words; its innards only push them out of sight.
        self.command.env_remove("RUST_BACKTRACE");
        let status = self.wait_with_signs(log)?;
        if !status.success() {
            println!("{}", tail(log, TAIL_LINES));
            bail!(
                "{} failed ({status}); its whole output is in {}.",
                self.name,
                log.display()
            );
        }
        Ok(())
    }

    fn wait_with_signs(&mut self, log: &Path) -> Result<ExitStatus> {
        let mut child = self.command.spawn().with_context(|| self.cannot_start())?;
        let began = Instant::now();
        let mut next_sign = SIGN_OF_LIFE;
        loop {
            if let Some(status) = child.try_wait()? {
                return Ok(status);
            }
            if began.elapsed() > next_sign {
                next_sign += SIGN_OF_LIFE;
                println!("  … {}: {}", spelled(began.elapsed()), tail(log, 1));
            }
            sleep(LOOK_EVERY);
        }
    }

    /// Runs it and gives what it wrote to its standard output.
    ///
    /// # Errors
    /// Where it can't be started, or fails; with what it wrote to its standard error.
    pub fn read(mut self) -> Result<String> {
        let output = self.command.output().with_context(|| self.cannot_start())?;
        let said = String::from_utf8_lossy(&output.stderr);
        ensure!(
            output.status.success(),
            "{} failed ({}): {}",
            self.name,
            output.status,
            said.trim()
        );
        Ok(String::from_utf8_lossy(&output.stdout).into_owned())
    }

    fn cannot_start(&self) -> String {
        format!("{} can't be started", self.name)
    }
}

fn tail(log: &Path, lines: usize) -> String {
    let text = fs::read(log)
        .map(|bytes| String::from_utf8_lossy(&bytes).into_owned())
        .unwrap_or_default();
    let all: Vec<&str> = text
        .lines()
        .filter(|line| !line.trim().is_empty())
        .collect();
    all[all.len().saturating_sub(lines)..]
        .join("\n")
        .trim()
        .to_owned()
}
