//! Near retinoscopy in the dark: the eye looks at the dim light of the retinoscope at 50 cm, the other is covered.
//!
//! ```text
//! net = gross − allowance
//! ```
//!
//! Dioptres. The allowance is less than the reciprocal of the distance because a young eye accommodates a little in the
//! dark; it was found by trial and belongs to 50 cm:
//!
//! | age | allowance | source |
//! | --- | --- | --- |
//! | below 2 years | 0.75 | 31 infants against drops, the comparison of 1992 (below) |
//! | 2 to 12 years | 1.25 | 202 eyes from 1 to 12 years, Kauser and others 2020 |
//! | 13 years to the end of accommodation | 1.25 | procedure texts allow adults; no figures seen |
//! | no accommodation left | 1/distance | computed: 1.25 would leave 0.75 D too much plus at 50 cm |
//!
//! “Comparison between near retinoscopy and cycloplegic retinoscopy in the refraction of infants and children”, 1992
//! (abstract seen; Optom Vis Sci 69:615-622 from memory), would take 1.00 for its 43 children above 2 years. Kauser and
//! others are in Indian J Ophthalmol 68:2458-2461 (abstract seen). Accommodation counts as ended where the least of
//! [`crate::near::hofstetter`] is nothing, at 60 years.
//!
//! ```
//! use optics::SphereCyl;
//! use optics::retinoscopy::WorkingDistance;
//! use optics::retinoscopy::near_technique::{Caution, allowance};
//!
//! let distance = WorkingDistance::from_cm(50.0)?;
//! let child = allowance(6.0, distance)?;
//! assert_eq!(child.net(&SphereCyl::sphere(3.0)), SphereCyl::sphere(1.75));
//! let old = allowance(82.0, distance)?;
//! assert_eq!(old.taken_off(), 2.00);
//! assert!(old.cautions().contains(&Caution::NothingToAllowFor { constant_would_leave: 0.75 }));
//! # Ok::<(), optics::OpticsError>(())
//! ```

use super::{WorkingDistance, slips};
use crate::format::plain;
use crate::{OpticsError, SphereCyl, limits, near};
use ::words::optics::retinoscopy as say;

/// The technique's own allowance in dioptres.
pub const USUAL: f64 = 1.25;

/// The allowance for infants in dioptres.
pub const INFANTS: f64 = 0.75;

/// The distance in centimetres that both belong to, and how far from it is still that distance (common practice, no
/// source).
const BELONGS_TO_CM: f64 = 50.0;
const WITHIN_CM: f64 = 2.5;

/// What the technique read more plus than drops did, in dioptres, on average (Kauser and others 2020).
const MORE_PLUS_THAN_DROPS: f64 = 0.3;

/// What another paper takes for children, in dioptres.
const CHILDREN_ELSEWHERE: f64 = 1.00;

/// How the technique fares at an age.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// Below 2 years.
    Infant,
    /// 2 years up to 13.
    Child,
    /// 13 years and more, with accommodation left.
    Unstudied,
    /// No accommodation left.
    Old,
}

impl Group {
    /// The group of an age in years.
    ///
    /// # Errors
    /// [`OpticsError::OutOfRange`] outside 0 to 120 years.
    pub fn of(age: f64) -> Result<Self, OpticsError> {
        Ok(match limits::age(age)? {
            age if age < 2.0 => Self::Infant,
            age if age < 13.0 => Self::Child,
            age if near::hofstetter(age)?.least > 0.0 => Self::Unstudied,
            _ => Self::Old,
        })
    }
}

/// What is worth a second thought.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Caution {
    /// It reads more plus than drops would.
    MorePlusThanDrops {
        /// By so many dioptres on average.
        by: f64,
    },
    /// Others take another allowance.
    OthersTake {
        /// In dioptres.
        allowance: f64,
    },
    /// Nobody's figures were seen for this age: the allowance lies between the constant and the reciprocal.
    NoFigures {
        /// The reciprocal of the distance in dioptres.
        up_to: f64,
    },
    /// No accommodation is left to allow for.
    NothingToAllowFor {
        /// By how much too plus the net would be with the constant, in dioptres.
        constant_would_leave: f64,
    },
    /// The constant belongs to another distance.
    NotAtFifty {
        /// The distance.
        distance: WorkingDistance,
    },
}

/// What is taken off, and what is to be said of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Allowance {
    taken_off: f64,
    cautions: Vec<Caution>,
}

/// The allowance at an age in years and a distance.
///
/// # Errors
/// [`OpticsError::OutOfRange`] outside 0 to 120 years.
pub fn allowance(age: f64, distance: WorkingDistance) -> Result<Allowance, OpticsError> {
    let reciprocal = distance.dioptres();
    let (taken_off, caution) = match Group::of(age)? {
        Group::Infant => (INFANTS, Caution::OthersTake { allowance: USUAL }),
        Group::Child => (
            USUAL,
            Caution::OthersTake {
                allowance: CHILDREN_ELSEWHERE,
            },
        ),
        Group::Unstudied => (USUAL, Caution::NoFigures { up_to: reciprocal }),
        Group::Old => {
            // What is too little taken off stays in as too plus.
            let constant_would_leave = slips::mismatch(distance, USUAL);
            return Ok(Allowance {
                taken_off: reciprocal,
                cautions: vec![Caution::NothingToAllowFor {
                    constant_would_leave,
                }],
            });
        }
    };
    let drops = Caution::MorePlusThanDrops {
        by: MORE_PLUS_THAN_DROPS,
    };
    let elsewhere = (distance.cm() - BELONGS_TO_CM).abs() > WITHIN_CM;
    let cautions = [
        elsewhere.then_some(Caution::NotAtFifty { distance }),
        Some(caution),
        (Group::of(age)? == Group::Child).then_some(drops),
    ];
    Ok(Allowance {
        taken_off,
        cautions: cautions.into_iter().flatten().collect(),
    })
}

impl Allowance {
    /// Dioptres to take off.
    pub const fn taken_off(&self) -> f64 {
        self.taken_off
    }

    /// What is worth a second thought, the gravest first.
    pub fn cautions(&self) -> &[Caution] {
        &self.cautions
    }

    /// The net from everything in the light's path.
    pub fn net(&self, gross: &SphereCyl) -> SphereCyl {
        gross.with_sphere_changed(-self.taken_off)
    }
}

impl Caution {
    /// The caution in one plain sentence.
    pub fn sentence(&self) -> String {
        match *self {
            Self::MorePlusThanDrops { by } => say::more_plus_than_drops(&format_args!("{by:.2}")),
            Self::OthersTake { allowance } => say::others_take(&format_args!("{allowance:.2}")),
            Self::NoFigures { up_to } => say::no_figures(&format_args!("{up_to:.2}")),
            Self::NothingToAllowFor {
                constant_would_leave,
            } => say::nothing_to_allow(
                &format_args!("{USUAL:.2}"),
                &slips::off(constant_would_leave),
            ),
            Self::NotAtFifty { distance } => say::not_at_fifty(&plain(distance.cm(), 1)),
        }
    }
}
