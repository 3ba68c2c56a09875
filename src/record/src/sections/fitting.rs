//! The glasses that came: measured against what was ordered, fitted, and how they were taken.
//!
//! What the comparison says is derived from order and measurement ([`Fitting::report`]) and never stored.

use ::words::record::sections as say;
use chrono::NaiveDate;
use optics::prism::Prism;
use optics::tolerance::{
    self, ANSI_Z80_1_2015, ANSI_Z80_1_2015_PROGRESSIVE, ISO_21987_2017, Measured, Report, Standard,
};
use optics::{SphereCyl, limits};
use serde::{Deserialize, Serialize};

use super::kind::pair_halves;
use super::one_of::one_of;
use super::order::finished;
use super::{Filled, Order};
use crate::check::{Checks, FieldError};
use crate::finding::{Eye, Eyes, Finding};

/// The glasses that came.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Fitting {
    /// Each pair that came.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub pairs: Vec<Fitted>,
}

/// One pair.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Fitted {
    /// Which pair of the order it is, counted from 0.
    pub pair: u16,
    /// On which day it came.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub received_on: Option<NaiveDate>,
    /// Its lenses as measured.
    pub lenses: Eyes<Finding<MadeLens>>,
    /// How finely the focimeter reads.
    pub read_to: ReadTo,
    /// By which limits it is judged.
    pub judged_by: Tolerance,
    /// Whether the name that was ordered stands on it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name_on_it: Option<bool>,
    /// On which day it was fitted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fitted_on: Option<NaiveDate>,
    /// What was adjusted.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub adjusted: String,
    /// How the person took it: what they say, how they walk and read with it.
    #[serde(skip_serializing_if = "Finding::is_blank")]
    pub reaction: Finding<String>,
}

/// One lens as measured.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct MadeLens {
    /// Its power; of a multifocal lens that for far.
    pub lens: SphereCyl,
    /// The addition in dioptres.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub add_d: Option<f64>,
    /// The prism where the order wants the centre.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub prism: Option<Prism>,
    /// The height of the segment or fitting cross, in millimetres.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height_mm: Option<f64>,
}

/// How finely a focimeter reads.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ReadTo {
    /// 0.12 D, by eye.
    Eighth,
    /// 0.06 D, by eye, between the marks.
    #[default]
    Sixteenth,
    /// 0.01 D, by an instrument.
    Hundredth,
}

impl From<ReadTo> for tolerance::ReadTo {
    fn from(read_to: ReadTo) -> Self {
        match read_to {
            ReadTo::Eighth => Self::Eighth,
            ReadTo::Sixteenth => Self::Sixteenth,
            ReadTo::Hundredth => Self::Hundredth,
        }
    }
}

/// The limits by which a pair is judged. Which apply is for local rules to say.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Tolerance {
    /// ISO 21987:2017; its limits here are from memory, and the verdict says so.
    #[default]
    Iso21987,
    /// ANSI Z80.1-2015, single vision and multifocal.
    AnsiZ801,
    /// ANSI Z80.1-2015, progressive.
    AnsiZ801Progressive,
}

impl Tolerance {
    /// The table of limits.
    pub const fn standard(self) -> &'static Standard {
        match self {
            Self::Iso21987 => &ISO_21987_2017,
            Self::AnsiZ801 => &ANSI_Z80_1_2015,
            Self::AnsiZ801Progressive => &ANSI_Z80_1_2015_PROGRESSIVE,
        }
    }
}

impl Fitted {
    fn measured(&self) -> Option<Measured> {
        let lens = |eye| {
            let made = self.lenses.of(eye).done()?;
            finished(&made.lens, made.add_d, made.prism, made.height_mm).ok()
        };
        Some(Measured {
            lenses: Eyes {
                right: lens(Eye::Right)?,
                left: lens(Eye::Left)?,
            },
            read_to: self.read_to.into(),
        })
    }
}

impl Fitting {
    /// How a pair that came stands to its order, by the limits chosen; `place` counts the pairs that came from 0. Nothing
    /// where the order has no such pair, or not both lenses were ordered and measured.
    pub fn report(&self, place: usize, order: &Order) -> Option<Report> {
        let fitted = self.pairs.get(place)?;
        let ordered = order.pairs.get(usize::from(fitted.pair))?.ordered()?;
        let standard = fitted.judged_by.standard();
        Some(standard.judge(&ordered, &fitted.measured()?))
    }
}

impl Filled for Fitting {
    fn halves(&self) -> Vec<(Eye, String, bool)> {
        pair_halves(self.pairs.iter().map(|pair| &pair.lenses))
    }

    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        for pair in &self.pairs {
            checks.reason_of("reaction", &pair.reaction);
            for (eye, finding) in pair.lenses.each() {
                checks.reason(eye, "lens", finding);
                if let Some(made) = finding.done() {
                    let name = |part| Checks::name(eye, part);
                    checks.lens(eye, &made.lens);
                    checks.optional(name("add_d"), made.add_d, limits::add);
                    checks.prism(eye, made.prism);
                    checks.optional(name("height_mm"), made.height_mm, limits::segment_mm);
                }
            }
            if let (Some(came), Some(fitted)) = (pair.received_on, pair.fitted_on)
                && fitted < came
            {
                checks.say("fitted_on", say::fitted_before_came());
            }
        }
        checks.done()
    }
}

one_of! {
    ReadTo {
        Eighth = say::read_to_eighth,
        Sixteenth = say::read_to_sixteenth,
        Hundredth = say::read_to_hundredth,
    }
    Tolerance {
        Iso21987 = say::tolerance_iso,
        AnsiZ801 = say::tolerance_ansi,
        AnsiZ801Progressive = say::tolerance_ansi_progressive,
    }
}
