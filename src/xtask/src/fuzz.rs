//! `cargo xtask fuzz`: an engine that follows coverage makes up bytes for every reader of outside bytes.
//!
//! The engine is LLVM's libFuzzer, which stable Rust can be instrumented for. Readers are built with overflow and debug checks
//! on, and optimised, because a hunt is worth what it tries a second.

use crate::command::Hunt;
use crate::place::Place;
use crate::process::Program;
use crate::ready::{bring_all, system};
use crate::step::step;
use anyhow::{Context, Result, ensure};
use std::collections::BTreeSet;
use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};

/// What has the compiler count edges and show comparisons to the engine.
const INSTRUMENTED: &str = "-Cpasses=sancov-module -Ccodegen-units=1 -Cllvm-args=-sanitizer-coverage-level=4 \
    -Cllvm-args=-sanitizer-coverage-inline-8bit-counters -Cllvm-args=-sanitizer-coverage-pc-table \
    -Cllvm-args=-sanitizer-coverage-trace-compares";
/// Longer inputs than this are slow, and show nothing that shorter ones don't.
const LONGEST: u32 = 4096;

/// The most that one hunt through a target adds to the corpus, the shortest first: it is read at every run of the tests.
const KEPT: usize = 16;

/// What a hunt works in.
struct Ground {
    place: Place,
    program: PathBuf,
}

/// Hunts through one target or all of them. What broke a promise stands in the corpus afterwards, and so does the little
/// that reaches code which nothing in the corpus reached.
///
/// # Errors
/// Where something can't be brought or built, there is no such target, or a promise was broken.
pub fn run(hunt: &Hunt) -> Result<()> {
    let place = Place::find()?;
    let compiler = system(
        &["c++"],
        "g++",
        "a C++ compiler (the engine is written in it)",
    );
    step("looking at what is here", || {
        bring_all(&place, &[compiler], None)
    })?;
    let ground = Ground::prepare(place)?;
    let all = ground.names()?;
    let chosen: Vec<&String> = match &hunt.target {
        Some(name) => all.iter().filter(|known| *known == name).collect(),
        None => all.iter().collect(),
    };
    ensure!(
        !chosen.is_empty(),
        "There is no such target. There are: {}.",
        all.join(", ")
    );
    chosen.into_iter().try_for_each(|name| {
        step(name, || ground.hunt(name, hunt.minutes))?;
        ground.keep(name)
    })
}

impl Ground {
    /// In a folder of its own: nothing else is built with such instruments.
    fn prepare(place: Place) -> Result<Self> {
        let told = Program::new(&place, "rustc").args(["-vV"]).read()?;
        let host = told.lines().find_map(|line| line.strip_prefix("host: "));
        let host = host
            .context("rustc doesn't say what it builds for")?
            .to_owned();
        let built = place.target.join("fuzz");
        step("building the readers with the engine", || {
            // A target is named so that what runs while compiling is built without instruments.
            Program::new(&place, "cargo")
                .args([
                    "build",
                    "--package",
                    "fuzz",
                    "--features",
                    "engine",
                    "--bin",
                    "hunt",
                    "--target",
                    &host,
                ])
                .env("CARGO_TARGET_DIR", &built)
                .env("CARGO_PROFILE_DEV_OPT_LEVEL", "2")
                .env("RUSTFLAGS", INSTRUMENTED)
                .logged(&place.log("fuzz-build"))
        })?;
        let program = built.join(host).join("debug/hunt");
        Ok(Self { place, program })
    }

    fn names(&self) -> Result<Vec<String>> {
        let names = self.engine().without("LIGHTROUND_FUZZ").read()?;
        Ok(names.lines().map(str::to_owned).collect())
    }

    fn hunt(&self, name: &str, minutes: u32) -> Result<()> {
        let (known, found, corpus) = (self.known(name), self.found(name), self.corpus(name));
        let _ = fs::remove_dir_all(&known);
        for folder in [&known, &found, &corpus] {
            fs::create_dir_all(folder)?;
        }
        let ended = self
            .engine()
            .env("LIGHTROUND_FUZZ", name)
            .env("LIGHTROUND_FUZZ_INPUTS", &known)
            .args([&found, &known])
            .arg(format!("-max_total_time={}", 60 * minutes))
            .arg(format!("-max_len={LONGEST}"))
            // What breaks a promise goes where the tests will feed it from then on.
            .arg(format!("-artifact_prefix={}/", corpus.display()))
            .args(["-timeout=60", "-print_final_stats=1"])
            .logged(&self.place.log(&format!("fuzz-{name}")));
        // Most hunts leave nothing there, and only an empty folder can be removed like this.
        let _ = fs::remove_dir(&corpus);
        ended
    }

    /// Keeps the finds that reach what no input did that was known before.
    fn keep(&self, name: &str) -> Result<()> {
        let (known, corpus) = (self.known(name), self.corpus(name));
        let before = files(&known)?;
        self.engine()
            .env("LIGHTROUND_FUZZ", name)
            // How often code is gone through doesn't count: that would keep hundreds.
            .args(["-set_cover_merge=1", "-use_counters=0"])
            .args([&known, &self.found(name)])
            .logged(&self.place.log(&format!("fuzz-{name}-merge")))?;
        let mut new: Vec<OsString> = files(&known)?.difference(&before).cloned().collect();
        new.sort_by_cached_key(|file| fs::metadata(known.join(file)).map_or(0, |data| data.len()));
        for file in new.iter().take(KEPT) {
            fs::create_dir_all(&corpus)?;
            fs::copy(known.join(file), corpus.join(file))?;
        }
        Ok(())
    }

    fn engine(&self) -> Program {
        Program::new(&self.place, &self.program.to_string_lossy())
    }

    /// Everything to begin with.
    fn known(&self, name: &str) -> PathBuf {
        self.place.target.join("fuzz/known").join(name)
    }

    /// What the engine goes on from, in this hunt and later ones.
    fn found(&self, name: &str) -> PathBuf {
        self.place.target.join("fuzz/found").join(name)
    }

    fn corpus(&self, name: &str) -> PathBuf {
        self.place.root.join("tests/fuzz/corpus").join(name)
    }
}

fn files(folder: &Path) -> Result<BTreeSet<OsString>> {
    let names = fs::read_dir(folder)?.map(|entry| entry.map(|entry| entry.file_name()));
    Ok(names.collect::<Result<_, _>>()?)
}
