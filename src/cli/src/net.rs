//! `lightround net`: the working line by line, what the hand does next, and what to mind.

use crate::args::{Options, measure};
use crate::lines;
use anyhow::{Context, Result, bail};
use optics::retinoscopy::{self, Neutral, Retinoscopy, Setup, WorkingDistance, WorkingLens};
use optics::written::parse_power;
use optics::{Cell, SphereCyl, limits};
use std::fmt::Write;

const OPTIONS: [&str; 7] = [
    "at",
    "first",
    "second",
    "in-frame",
    "working-lens",
    "cell",
    "spacing",
];

/// Answers the words after `net`.
pub fn answer(words: &[String]) -> Result<String> {
    let mut options = Options::read(words, &OPTIONS)?;
    let setup = setup(&mut options)?;
    let neutral = neutral(&mut options)?;
    page(&retinoscopy::net(&neutral, &setup))
}

fn setup(options: &mut Options) -> Result<Setup> {
    let at = options.need("at", "how far was the retinoscope, in cm?")?;
    let distance = WorkingDistance::from_cm(measure(&at, "cm")?)?;
    let cell = options.take("cell");
    let spacing = options.take("spacing");
    let Some(power) = options.take("working-lens") else {
        if cell.is_some() || spacing.is_some() {
            bail!("--cell and --spacing say where the working lens stood: which lens was it?");
        }
        return Ok(Setup::new(distance, None));
    };
    let cell = cell.as_deref().map_or(Ok(Cell::Back), cell_named)?;
    let lens = WorkingLens::new(parse_power(&power)?, cell)?;
    let mut setup = Setup::new(distance, Some(lens));
    if let Some(spacing) = spacing {
        setup.cell_spacing_mm = limits::cell_spacing_mm(measure(&spacing, "mm")?)?;
    }
    Ok(setup)
}

fn cell_named(name: &str) -> Result<Cell> {
    Cell::ALL
        .into_iter()
        .find(|cell| cell.to_string() == name)
        .with_context(|| format!("there is no “{name}” cell: it is back, middle or front"))
}

fn neutral(options: &mut Options) -> Result<Neutral> {
    let given = (
        options.take("in-frame"),
        options.take("first"),
        options.take("second"),
    );
    match given {
        (Some(lens), None, None) => {
            let lens = SphereCyl::parse(&lens)?;
            limits::lens(&lens)?;
            Ok(Neutral::InFrame(lens))
        }
        (None, Some(first), Some(second)) => two_meridians(&first, &second),
        (Some(_), ..) => {
            bail!("--in-frame stands for both meridians: leave --first and --second out")
        }
        (None, None, None) => {
            bail!("what was neutral? give --first and --second, or --in-frame")
        }
        (None, ..) => bail!("--first and --second go together: one lens for each meridian"),
    }
}

fn two_meridians(first: &str, second: &str) -> Result<Neutral> {
    let (meridian, power) = first
        .split_once('=')
        .with_context(|| format!("“{first}” names no meridian: write it like --first 90=+4.00"))?;
    Ok(Neutral::two_meridians(
        measure(meridian, "degrees")?,
        parse_power(power)?,
        parse_power(second)?,
    )?)
}

fn page(found: &Retinoscopy) -> Result<String> {
    let mut page = lines::page(&found.working)?;
    writeln!(page, "\nnow: {}", found.hand.sentence())?;
    for caution in &found.cautions {
        writeln!(page, "mind: {}", caution.sentence())?;
    }
    Ok(page)
}
