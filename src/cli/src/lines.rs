//! Lines of an answer under one another.

use anyhow::Result;
use optics::Line;
use std::fmt::Write;

/// Labels beside their values, the values in one column.
pub fn page(lines: &[Line]) -> Result<String> {
    let width = lines.iter().map(|line| line.label.chars().count()).max();
    let width = width.unwrap_or_default();
    let mut page = String::new();
    for Line { label, value } in lines {
        writeln!(page, "{label:width$}  {value}")?;
    }
    Ok(page)
}
