//! Sizes and colours. Lengths in points of 1/72 inch.

use krilla::color::rgb::Color;
use papers::Print;

/// Words.
pub(crate) const INK: [u8; 3] = [0x1e, 0x1b, 0x14];
/// Words that stand back; 9:1 on white.
pub(crate) const SOFT: [u8; 3] = [0x4b, 0x43, 0x35];
/// What presses, and what is outside.
pub(crate) const LAMP: [u8; 3] = [0x70, 0x39, 0x00];
/// Hairlines.
pub(crate) const HAIR: [u8; 3] = [0xd8, 0xcf, 0xba];
/// What is allowed.
pub(crate) const GLOW: [u8; 3] = [0xff, 0xe3, 0xb3];
/// Behind what is set apart.
pub(crate) const ASIDE: [u8; 3] = [0xf8, 0xf4, 0xea];
/// Across a page that nobody has signed: far lighter than any word on it.
pub(crate) const ACROSS: [u8; 3] = [0xef, 0xe9, 0xdd];

pub(crate) fn colour([red, green, blue]: [u8; 3]) -> Color {
    Color::new(red, green, blue)
}

/// How large things are set.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Look {
    /// Running words.
    pub body: f32,
    /// Labels and the foot.
    pub small: f32,
    /// Headings.
    pub heading: f32,
    /// The title.
    pub title: f32,
    /// The person's name.
    pub name: f32,
    /// The figures of a lens, where there is room.
    pub figure: f32,
}

/// Large print: 16 points at least (common practice of sight-loss charities, from memory).
const LARGE: Look = Look {
    body: 17.0,
    small: 14.0,
    heading: 21.0,
    title: 30.0,
    name: 22.0,
    figure: 22.0,
};

const ORDINARY: Look = Look {
    body: 10.5,
    small: 8.5,
    heading: 13.0,
    title: 24.0,
    name: 15.0,
    figure: 17.0,
};

impl Look {
    pub const fn of(print: Print) -> Self {
        match print {
            Print::Ordinary => ORDINARY,
            Print::Large => LARGE,
        }
    }
}

/// From one line to the next.
pub(crate) fn leading(size: f32) -> f32 {
    size * 1.42
}

/// From the top of a line to its baseline.
pub(crate) fn baseline(size: f32) -> f32 {
    // Half of the height of capitals below the middle of the line.
    leading(size) / 2.0 + size * 0.334
}
