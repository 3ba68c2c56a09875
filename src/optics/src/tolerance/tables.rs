//! The tables themselves.

use super::standard::Allowed::{Percent, Within};
use super::standard::Basis::{FromMemory, Seen};
use super::standard::{Allowed, Band, Basis, Imbalance, PowerRow, PrismRow, Standard};
use ::words::optics::tolerance as say;

const fn to(end: f64, allowed: Allowed, basis: Basis) -> Band {
    Band {
        up_to: Some(end),
        allowed,
        basis,
    }
}

const fn above(allowed: Allowed, basis: Basis) -> Band {
    Band {
        up_to: None,
        allowed,
        basis,
    }
}

const fn power(
    up_to: Option<f64>,
    meridian: Allowed,
    cylinder: &'static [Band],
    basis: Basis,
) -> PowerRow {
    PowerRow {
        up_to,
        meridian,
        cylinder,
        basis,
    }
}

const fn imbalance(fixed: i64, up_to_power: f64, beyond_tenths_mm: i64, basis: Basis) -> Imbalance {
    Imbalance {
        fixed,
        up_to_power,
        beyond_tenths_mm,
        basis,
    }
}

const ANSI_CYLINDER: &[Band] = &[
    to(2.00, Within(13), Seen),
    to(4.50, Within(15), Seen),
    above(Percent(4), Seen),
];

const ANSI_CYLINDER_PROGRESSIVE: &[Band] = &[
    to(2.00, Within(16), Seen),
    to(3.50, Within(18), Seen),
    above(Percent(5), Seen),
];

const ANSI_AXIS: &[Band] = &[
    to(0.25, Within(1400), Seen),
    to(0.50, Within(700), Seen),
    to(0.75, Within(500), Seen),
    to(1.50, Within(300), Seen),
    above(Within(200), Seen),
];

const ADDITION: &[Band] = &[to(4.00, Within(12), Seen), above(Within(18), Seen)];

/// ANSI Z80.1-2015, a recommendation of the United States, for single-vision and multifocal lenses.
pub const ANSI_Z80_1_2015: Standard = Standard {
    name: "ANSI Z80.1-2015",
    lenses: say::single_vision_and_multifocal,
    source: say::seen_in_reproductions,
    power: &[
        power(Some(6.50), Within(13), ANSI_CYLINDER, Seen),
        power(None, Percent(2), ANSI_CYLINDER, Seen),
    ],
    axis_from: 0.12,
    axis: ANSI_AXIS,
    addition: ADDITION,
    prism: &[PrismRow {
        up_to: None,
        horizontal: imbalance(67, 2.75, 25, Seen),
        vertical: imbalance(33, 3.375, 10, Seen),
    }],
    segment: Some(above(Within(100), Seen)),
};

/// The same for progressive lenses. Its prism limits were not seen whole, so none stand here.
pub const ANSI_Z80_1_2015_PROGRESSIVE: Standard = Standard {
    lenses: say::progressive,
    power: &[
        power(Some(8.00), Within(16), ANSI_CYLINDER_PROGRESSIVE, Seen),
        power(None, Percent(2), ANSI_CYLINDER_PROGRESSIVE, Seen),
    ],
    prism: &[],
    segment: None,
    ..ANSI_Z80_1_2015
};

/// A row of the remembered power table: cylinder up to 0.75, 4.00, 6.00, and above where the row goes on.
macro_rules! remembered {
    ($up_to:expr, $meridian:literal, $first:literal, $second:literal, $third:literal $(, $fourth:literal)?) => {
        power(
            $up_to,
            Within($meridian),
            &[
                to(0.75, Within($first), FromMemory),
                to(4.00, Within($second), FromMemory),
                to(6.00, Within($third), FromMemory),
                $(above(Within($fourth), FromMemory),)?
            ],
            FromMemory,
        )
    };
}

/// ISO 21987:2017, adopted in the United Kingdom and in Europe, for single-vision and multifocal lenses.
///
/// Every cell is remembered and none was checked; an older memory of the axis limits (7, 5, 3 and 2 degrees) competes with
/// the one that stands here. Check it against the standard before anybody relies on it.
pub const ISO_21987_2017: Standard = Standard {
    name: "ISO 21987:2017",
    lenses: say::single_vision_and_multifocal,
    source: say::seen_in_memory,
    power: &[
        remembered!(Some(3.00), 12, 9, 12, 18),
        remembered!(Some(6.00), 12, 12, 12, 18, 25),
        remembered!(Some(9.00), 12, 12, 18, 18, 25),
        remembered!(Some(12.00), 18, 12, 18, 25, 25),
        remembered!(Some(20.00), 25, 18, 25, 25, 25),
        remembered!(None, 37, 25, 25, 37, 37),
    ],
    // Above 0.125, so from the first thousandth beyond it.
    axis_from: 0.126,
    axis: &[
        to(0.25, Within(1600), FromMemory),
        to(0.50, Within(900), FromMemory),
        to(0.75, Within(600), FromMemory),
        to(1.50, Within(400), FromMemory),
        to(2.50, Within(300), FromMemory),
        above(Within(200), FromMemory),
    ],
    addition: &[
        to(4.00, Within(12), FromMemory),
        above(Within(18), FromMemory),
    ],
    prism: &[
        PrismRow {
            up_to: Some(2.00),
            horizontal: imbalance(67, 3.25, 20, FromMemory),
            vertical: imbalance(50, 5.00, 10, FromMemory),
        },
        PrismRow {
            up_to: Some(10.00),
            horizontal: imbalance(100, 3.25, 20, FromMemory),
            vertical: imbalance(75, 5.00, 10, FromMemory),
        },
        PrismRow {
            up_to: None,
            horizontal: imbalance(125, 3.25, 20, FromMemory),
            vertical: imbalance(100, 5.00, 10, FromMemory),
        },
    ],
    segment: Some(above(Within(100), FromMemory)),
};
