//! As a program: the measures go into the file that is named.

use crate::measure;
use anyhow::{Context, Result};
use std::time::Instant;

/// Measures and writes.
///
/// # Errors
/// Where no file is named or it can't be written.
pub fn main() -> Result<()> {
    let file = std::env::args_os()
        .nth(1)
        .context("name a file for the measures")?;
    let began = Instant::now();
    let measures = measure::all("native", || began.elapsed().as_nanos() as f64)?;
    std::fs::write(&file, measures.to_string()).context("the measures can't be written")?;
    Ok(())
}
