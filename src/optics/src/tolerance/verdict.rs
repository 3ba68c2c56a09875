//! What came of a comparison, with its reason.

use super::{Basis, Hundredths};
use crate::format::{plain, power, signed};
use crate::prism::Base;
use crate::{Eye, Meridian};
use ::words::optics::tolerance as say;
use std::fmt;

/// What was compared.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum What {
    /// The power in a principal meridian of the order, in dioptres.
    Power(Eye, Meridian),
    /// The cylinder in minus form, in dioptres.
    Cylinder(Eye),
    /// Its axis, in degrees.
    Axis(Eye),
    /// The addition, in dioptres.
    Addition(Eye),
    /// The height of the segment, in millimetres.
    Segment(Eye),
    /// What the right eye has more than the left along the horizontal, in prism dioptres, base in positive.
    HorizontalPrism,
    /// What the right eye has more than the left along the vertical, in prism dioptres, base up positive.
    VerticalPrism,
}

impl What {
    /// A value of it as the trade writes it.
    fn value(self, value: f64) -> String {
        let toward = |positive: Base, negative: Base| {
            let base = if value < 0.0 { negative } else { positive };
            let amount = signed(value.abs(), 2);
            format!("{} {}", amount.trim_start_matches('+'), base.said())
        };
        match self {
            Self::Power(..) | Self::Cylinder(_) | Self::Addition(_) => power(value),
            Self::Axis(_) => plain(value, 2),
            Self::Segment(_) => format!("{} mm", plain(value, 2)),
            Self::HorizontalPrism => toward(Base::In, Base::Out),
            Self::VerticalPrism => toward(Base::Up, Base::Down),
        }
    }

    /// A difference of it.
    fn size(self, size: Hundredths) -> String {
        match self {
            Self::Axis(_) | Self::Segment(_) => plain(size.value(), 2),
            _ => size.to_string(),
        }
    }
}

impl fmt::Display for What {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Power(eye, meridian) => {
                let along = plain(meridian.degrees(), 1);
                f.write_str(&say::power_along(&eye.said(), &along))
            }
            Self::Cylinder(eye) => f.write_str(&say::cylinder_of(&eye.said())),
            Self::Axis(eye) => f.write_str(&say::axis_of(&eye.said())),
            Self::Addition(eye) => f.write_str(&say::addition_of(&eye.said())),
            Self::Segment(eye) => f.write_str(&say::segment_of(&eye.said())),
            Self::HorizontalPrism => f.write_str(say::horizontal_prism()),
            Self::VerticalPrism => f.write_str(say::vertical_prism()),
        }
    }
}

/// How a reading stands to its limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// Within, with at least one step of the focimeter to spare.
    Within,
    /// Within, but one more step would be outside.
    Borderline,
    /// Outside.
    Outside,
}

/// One comparison.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Verdict {
    /// What was compared.
    pub what: What,
    /// As ordered, in its unit.
    pub ordered: f64,
    /// As measured, in its unit.
    pub measured: f64,
    /// How far apart they are, without sign.
    pub off: Hundredths,
    /// The most that is allowed.
    pub limit: Hundredths,
    /// How it stands.
    pub outcome: Outcome,
    /// Where the limit comes from.
    pub basis: Basis,
}

impl Verdict {
    /// A comparison against a limit, read in steps of so many hundredths.
    pub(super) fn new(
        what: What,
        (ordered, measured): (f64, f64),
        off: Hundredths,
        (limit, basis): (Hundredths, Basis),
        step: i64,
    ) -> Self {
        let outcome = if off > limit {
            Outcome::Outside
        } else if off.0 + step > limit.0 {
            Outcome::Borderline
        } else {
            Outcome::Within
        };
        Self {
            what,
            ordered,
            measured,
            off,
            limit,
            outcome,
            basis,
        }
    }

    /// What is left to the limit; negative outside it.
    pub const fn margin(&self) -> Hundredths {
        Hundredths(self.limit.0 - self.off.0)
    }

    /// The comparison with its reason, in words.
    pub fn sentence(&self) -> String {
        let Self { what, .. } = self;
        let stands = match self.outcome {
            Outcome::Within => say::within().to_owned(),
            Outcome::Borderline => say::within_borderline().to_owned(),
            Outcome::Outside => say::outside_by(&what.size(Hundredths(-self.margin().0))),
        };
        let basis = match self.basis {
            Basis::Seen => "",
            Basis::FromMemory => say::limit_remembered(),
        };
        say::compared(
            &what,
            &what.value(self.ordered),
            &what.value(self.measured),
            &what.size(self.off),
            &what.size(self.limit),
            &stands,
            &basis,
        )
    }
}

/// Why something was not judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Why {
    /// It was ordered, and nobody measured it.
    NotMeasured,
    /// It was measured, and nobody ordered it.
    NotOrdered,
    /// The table has no limit for it.
    NoLimit,
}

/// Something that was not judged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unjudged {
    /// What.
    pub what: What,
    /// Why not.
    pub why: Why,
}

impl Unjudged {
    /// In words.
    pub fn sentence(&self) -> String {
        let why = match self.why {
            Why::NotMeasured => say::not_measured(),
            Why::NotOrdered => say::not_ordered(),
            Why::NoLimit => say::no_limit(),
        };
        format!("{}: {why}", self.what)
    }
}

/// Everything that came of comparing a pair.
#[derive(Debug, Clone, PartialEq)]
pub struct Report {
    /// The table that was used, with its edition.
    pub standard: &'static str,
    /// What was judged: right, left, then the pair.
    pub verdicts: Vec<Verdict>,
    /// What was not.
    pub unjudged: Vec<Unjudged>,
}

impl Report {
    /// The worst that came up; borderline is worse than within. An empty report is within.
    pub fn outcome(&self) -> Outcome {
        let has = |outcome| self.verdicts.iter().any(|one| one.outcome == outcome);
        if has(Outcome::Outside) {
            Outcome::Outside
        } else if has(Outcome::Borderline) {
            Outcome::Borderline
        } else {
            Outcome::Within
        }
    }

    /// The whole in words, with what it rests on.
    pub fn sentence(&self) -> String {
        let stands = match self.outcome() {
            Outcome::Within => say::all_within(),
            Outcome::Borderline => say::all_borderline(),
            Outcome::Outside => say::all_outside(),
        };
        let remembered = self
            .verdicts
            .iter()
            .any(|one| one.basis == Basis::FromMemory);
        let basis = if remembered {
            say::limits_remembered()
        } else {
            ""
        };
        let left_out = say::left_out(self.unjudged.len());
        say::by_standard(&stands, &self.standard, &basis, &left_out)
    }
}
