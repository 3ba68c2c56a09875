//! A standard as data: rows of limits, each with the end of its range.

use super::reckoning::{Hundredths, thousandths};

/// Where a cell of a table comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Basis {
    /// Seen in print, in the source that the standard names.
    Seen,
    /// Remembered only; not to be relied on until it is checked against the standard.
    FromMemory,
}

/// How far off a reading may be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Allowed {
    /// So many hundredths of a dioptre, degree, prism dioptre or millimetre.
    Within(i64),
    /// So many percent of the ordered size.
    Percent(i64),
}

impl Allowed {
    /// The limit for an ordered size in thousandths, never rounded up.
    pub(super) fn limit(self, size: i64) -> Hundredths {
        Hundredths(match self {
            Self::Within(hundredths) => hundredths,
            Self::Percent(percent) => size.abs() * percent / 1000,
        })
    }
}

/// A limit for ordered sizes up to an end, the end included.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// The end of the range; none where it has no end.
    pub up_to: Option<f64>,
    /// What is allowed.
    pub allowed: Allowed,
    /// Where that comes from.
    pub basis: Basis,
}

/// The limits on power for a lens whose stronger principal power is up to an end in dioptres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PowerRow {
    /// The end of the range; none where it has no end.
    pub up_to: Option<f64>,
    /// What is allowed in each principal meridian.
    pub meridian: Allowed,
    /// What is allowed of the cylinder, by its ordered size.
    pub cylinder: &'static [Band],
    /// Where the meridian's limit comes from.
    pub basis: Basis,
}

/// What a pair's relative prism may be off along one direction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Imbalance {
    /// Hundredths of a prism dioptre, for weaker lenses.
    pub fixed: i64,
    /// Up to this power along the direction, in dioptres.
    pub up_to_power: f64,
    /// Stronger lenses may have what this displacement gives, in tenths of a millimetre, and never less than `fixed`.
    pub beyond_tenths_mm: i64,
    /// Where that comes from.
    pub basis: Basis,
}

impl Imbalance {
    /// The limit for the stronger lens's power along the direction, in thousandths, never rounded up.
    pub(super) fn limit(self, power: i64) -> Hundredths {
        let displaced = power.abs() * self.beyond_tenths_mm / 1000;
        Hundredths(if power.abs() <= thousandths(self.up_to_power) {
            self.fixed
        } else {
            self.fixed.max(displaced)
        })
    }
}

/// The limits on relative prism where up to so much is prescribed along a direction, in prism dioptres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PrismRow {
    /// The end of the range; none where it has no end.
    pub up_to: Option<f64>,
    /// Along the horizontal.
    pub horizontal: Imbalance,
    /// Along the vertical.
    pub vertical: Imbalance,
}

/// A table of limits on finished spectacles.
#[derive(Debug, Clone, Copy)]
pub struct Standard {
    /// Its name with its edition.
    pub name: &'static str,
    /// Says which lenses this table is for.
    pub lenses: fn() -> &'static str,
    /// Says where its cells were seen.
    pub source: fn() -> &'static str,
    /// Limits on power, by the stronger principal power.
    pub power: &'static [PowerRow],
    /// From this ordered cylinder in dioptres its axis has a limit.
    pub axis_from: f64,
    /// Limits on the axis in hundredths of a degree, by the ordered cylinder.
    pub axis: &'static [Band],
    /// Limits on the addition, by its ordered size.
    pub addition: &'static [Band],
    /// Limits on a pair's relative prism, by what is prescribed. Empty where no limit was seen.
    pub prism: &'static [PrismRow],
    /// The limit on a segment's or fitting cross's height, each eye. None where no limit was seen.
    pub segment: Option<Band>,
}

/// The first row whose end a size in thousandths does not pass.
pub(super) fn row<T>(rows: &[T], up_to: impl Fn(&T) -> Option<f64>, size: i64) -> Option<&T> {
    rows.iter()
        .find(|row| up_to(row).is_none_or(|end| size.abs() <= thousandths(end)))
}

/// The band that an ordered size in thousandths falls into.
pub(super) fn band(bands: &[Band], size: i64) -> Option<&Band> {
    row(bands, |band| band.up_to, size)
}
