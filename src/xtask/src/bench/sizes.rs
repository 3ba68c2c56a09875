//! Bytes over the wire, brotli 11.

use super::report::{Measure, Unit};
use crate::seal::{walk, wire_size};
use anyhow::Result;
use std::path::Path;

/// All that is needed to examine, over the wire: the design's budget for a first load.
const BUDGET: f64 = 450.0 * 1024.0;

/// When a file is needed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Part {
    /// Before the first page can be used.
    FirstLoad,
    /// To show text in its own face.
    Fonts,
    /// By work beside the page.
    Workers,
    /// Kept for later.
    Kept,
}

/// Compares the sealed app's bytes with those of the one button.
///
/// # Errors
/// Where a folder can't be read.
pub fn compare(ours: &Path, button: &Path) -> Result<Vec<Measure>> {
    let floor = total(button, |_| true)?;
    let row = |name: &str, part: Part| -> Result<Measure> {
        Ok(Measure::new(
            name,
            Unit::Bytes,
            total(ours, |path| part_of(path) == part)?,
        ))
    };
    let first = row("first load: page, styles, code", Part::FirstLoad)?
        .against("one-button app", floor)
        .within(BUDGET);
    let whole = Measure::new(
        "everything kept for offline use",
        Unit::Bytes,
        total(ours, |_| true)?,
    )
    .against("one-button app", floor);
    Ok(vec![
        first,
        row("fonts", Part::Fonts)?,
        row("workers, loaded on need", Part::Workers)?,
        row("icons, licences, service worker", Part::Kept)?,
        whole,
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

/// The bundler gives workers their plain names, and a hash to all that the page itself loads.
fn part_of(path: &str) -> Part {
    let ending = path.rsplit('.').next().unwrap_or_default();
    match ending {
        _ if path.starts_with("fonts/") => Part::Fonts,
        "html" | "css" => Part::FirstLoad,
        "js" | "wasm" if path.starts_with("app-") || path.starts_with("snippets/") => {
            Part::FirstLoad
        }
        "js" | "wasm" if path != "sw.js" => Part::Workers,
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
            ("stretch_bg.wasm", Part::Workers),
            ("strength_loader.js", Part::Workers),
            ("sw.js", Part::Kept),
            ("icons/lightround.svg", Part::Kept),
            ("fonts/text-400.woff2", Part::Fonts),
        ] {
            assert_eq!(part_of(path), part, "{path}");
        }
    }
}
