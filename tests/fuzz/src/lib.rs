//! Every reader of bytes from outside, fed with bytes that nobody meant.
//!
//! A [`Target`] is one function of any bytes. It never panics: whatever comes is read, or refused with a typed error. What it
//! reads, it writes to the same bytes where a format has one way of writing, and to bytes that read the same where it has
//! several. And it takes no more memory than its input is worth, whatever lengths are claimed in it.
//!
//! What is fed begins with what is frozen elsewhere in the project, read where it stands, and with the finds in `corpus`, one
//! folder a target. The tests feed each target for a moment with [`Mutations`] of these; `cargo xtask fuzz` hunts with an engine
//! that follows coverage, and writes what it finds into `corpus`.

mod mutations;
mod seeds;
mod targets;

pub use mutations::Mutations;
pub use targets::TARGETS;

use peak_alloc::PeakAlloc;
use std::path::{Path, PathBuf};
use std::{fs, io};

#[global_allocator]
static MEMORY: PeakAlloc = PeakAlloc;

/// What any input may take: a reader's buffers, and the rooms that lists are given before they are read.
const ROOM: usize = 8 << 20;
/// What each byte of an input may take beyond that: lists of cells and of values are wider than what they were read from.
const ROOM_A_BYTE: usize = 512;

/// A reader of outside bytes, with what holds of whatever it reads.
pub struct Target {
    /// What it is called on the command line, and its folder in the corpus.
    pub name: &'static str,
    /// Reads, and asserts.
    look: fn(&[u8]),
    /// Inputs to begin with.
    seeds: fn() -> Vec<Vec<u8>>,
}

impl Target {
    /// The target of this name.
    pub fn named(name: &str) -> Option<&'static Self> {
        TARGETS.iter().find(|target| target.name == name)
    }

    /// Feeds it.
    ///
    /// # Panics
    ///
    /// On a find: something that must hold does not.
    pub fn feed(&self, bytes: &[u8]) {
        MEMORY.reset_peak_usage();
        let before = MEMORY.current_usage();
        (self.look)(bytes);
        let taken = MEMORY.peak_usage().saturating_sub(before);
        let room = ROOM + ROOM_A_BYTE * bytes.len();
        assert!(taken <= room, "{} bytes took {taken}", bytes.len());
    }

    /// What to begin with: what stands elsewhere in the project, and what was found before.
    ///
    /// # Panics
    ///
    /// Where the project's own files can't be read.
    pub fn inputs(&self) -> Vec<Vec<u8>> {
        let mut inputs = (self.seeds)();
        inputs.extend(seeds::files(&self.corpus()).into_values());
        inputs
    }

    /// Where its finds are kept.
    pub fn corpus(&self) -> PathBuf {
        seeds::project("tests/fuzz/corpus").join(self.name)
    }

    /// Writes what to begin with into a folder, for an engine that reads files.
    ///
    /// # Errors
    ///
    /// Where that can't be written.
    pub fn lay_out(&self, folder: &Path) -> io::Result<()> {
        for (at, input) in self.inputs().iter().enumerate() {
            fs::write(folder.join(format!("input-{at}")), input)?;
        }
        Ok(())
    }
}
