//! Bytes over the wire, brotli 11.

use super::report::{Measure, Unit};
use crate::seal::{walk, wire_size};
use anyhow::Result;
use std::path::Path;

/// The design's budget for all that is needed to examine, over the wire.
const BUDGET: f64 = 450_000.0;

/// When a file is needed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Part {
    /// Before the first page can be used.
    FirstLoad,
    /// To show text in its own face.
    Fonts,
    /// To open the vault.
    Unlocking,
    /// To judge a passphrase, once, when a vault is founded.
    Scoring,
    /// To look around among made-up people.
    LookingAround,
    /// To make files: PDF, workbooks, FHIR.
    Files,
    /// Kept for later.
    Kept,
}

/// Compares the sealed app's bytes with those of the one button.
///
/// # Errors
/// Where a folder can't be read.
pub fn compare(ours: &Path, button: &Path) -> Result<Vec<Measure>> {
    let floor = total(button, |_| true)?;
    let row = |name: &str, parts: &[Part]| -> Result<Measure> {
        let bytes = total(ours, |path| parts.contains(&part_of(path)))?;
        Ok(Measure::new(name, Unit::Bytes, bytes))
    };
    let to_examine = [Part::FirstLoad, Part::Fonts, Part::Unlocking];
    let whole = total(ours, |_| true)?;
    Ok(vec![
        row("first load: page, styles, code", &[Part::FirstLoad])?.against("one-button app", floor),
        row("fonts", &[Part::Fonts])?,
        row("opening the vault", &[Part::Unlocking])?,
        row("all of these: what examining needs", &to_examine)?.within(BUDGET),
        row("judging a new passphrase", &[Part::Scoring])?,
        row("made-up people to look around", &[Part::LookingAround])?,
        row("making files", &[Part::Files])?,
        row("icons, licences, service worker", &[Part::Kept])?,
        Measure::new("everything kept for offline use", Unit::Bytes, whole)
            .against("one-button app", floor),
    ])
}

fn total(dist: &Path, wanted: impl Fn(&str) -> bool) -> Result<f64> {
    let mut bytes = 0;
    walk(dist, &mut |path| {
        let name = path.strip_prefix(dist)?.to_string_lossy().into_owned();
        let is_copy = path.extension().is_some_and(|ending| ending == "br");
        if !is_copy && wanted(&name) {
            bytes += wire_size(path)?;
        }
        Ok(())
    })?;
    Ok(bytes as f64)
}

/// Told from the names that the bundler gives.
fn part_of(path: &str) -> Part {
    let ending = path.rsplit('.').next().unwrap_or_default();
    match ending {
        "woff2" => Part::Fonts,
        "html" | "css" => Part::FirstLoad,
        "js" | "wasm" if path.starts_with("stretch") => Part::Unlocking,
        "js" | "wasm" if path.starts_with("strength") => Part::Scoring,
        "js" | "wasm" if path.starts_with("made_up") => Part::LookingAround,
        "js" | "wasm" if path.starts_with("press") => Part::Files,
        "js" | "wasm" if path != "sw.js" => Part::FirstLoad,
        _ => Part::Kept,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_file_of_a_build_counts_once_in_its_part() {
        for (path, part) in [
            ("index.html", Part::FirstLoad),
            ("tokens-9c1f0a2b3c4d5ee2.css", Part::FirstLoad),
            ("app-9c1f0a2b3c4d5ee2_bg.wasm", Part::FirstLoad),
            ("stretch_bg.wasm", Part::Unlocking),
            ("strength_loader.js", Part::Scoring),
            ("made_up_bg.wasm", Part::LookingAround),
            ("press_bg.wasm", Part::Files),
            ("sw.js", Part::Kept),
            ("icons/lightround.svg", Part::Kept),
            ("fonts/text-400.woff2", Part::Fonts),
            ("fonts/OFL.txt", Part::Kept),
        ] {
            assert_eq!(part_of(path), part, "{path}");
        }
    }
}
