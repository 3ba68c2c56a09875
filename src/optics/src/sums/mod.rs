//! The sums that a practitioner does on the back of an envelope, answered with their working.
//!
//! One table for whoever asks, be it a page or a command: each [`Sum`] says what it asks and answers texts as a person
//! writes them. No rule lives here. Texts are read as [`crate::written`], [`crate::acuity`] and [`crate::prism`] read
//! them, numbers are held to [`crate::limits`], and the figures come from the module of the trade's word.
//!
//! ```
//! use optics::sums;
//!
//! let off_axis = sums::named("off-axis").unwrap();
//! let lines = off_axis.answer(&["−2.00 / −3.00 × 180", "10", ""])?;
//! assert_eq!(lines[1].label, "what is left over");
//! assert_eq!(lines[1].value, "+0.52 / −1.04 × 140");
//!
//! let refused = off_axis.answer(&["−2.00 / 3.00 × 180", "10"]).unwrap_err();
//! assert_eq!(refused.to_string(), "the lens meant: “3.00” (character 9) has no sign: write +3.00 or −3.00");
//! # Ok::<(), sums::SumError>(())
//! ```

mod acuity;
mod asked;
mod beside;
mod centres;
mod change;
mod error;
mod finished;
mod lens;
mod letters;
mod low_vision;
mod meridians;
mod moved;
mod prism;
mod read;
mod reading;
mod retinoscopy;
mod shared;

pub use asked::{Ask, Asked, Kind};
pub use error::{NumberOf, SumError, Unread};

use crate::Line;
use ::words::optics::sums as say;
use asked::Words;

/// One sum: what it is for, what it asks, and how it answers.
#[derive(Debug)]
pub struct Sum {
    /// Its name in an address or on a command line.
    pub slug: &'static str,
    name: Words,
    about: Words,
    /// What it asks, in the order in which the texts are given.
    pub asks: &'static [Ask],
    answer: fn(&Asked) -> Result<Vec<Line>, SumError>,
}

impl Sum {
    /// Its name in the trade's words.
    pub fn name(&self) -> &'static str {
        (self.name)()
    }

    /// What it is for, in one sentence.
    pub fn about(&self) -> &'static str {
        (self.about)()
    }

    /// Answers texts in the order of the asks. An empty text, and one that is not there, is left out.
    ///
    /// # Errors
    /// [`SumError`] with a sentence that names the ask where it is about one.
    pub fn answer<T: AsRef<str>>(&self, texts: &[T]) -> Result<Vec<Line>, SumError> {
        if texts.len() > self.asks.len() {
            return Err(SumError::TooMany {
                taken: self.asks.len(),
                given: texts.len(),
            });
        }
        (self.answer)(&Asked::new(self.asks, texts))
    }
}

/// Sums that belong together.
#[derive(Debug)]
pub struct Group {
    name: Words,
    /// The sums, the commonest first.
    pub sums: &'static [Sum],
}

impl Group {
    /// What they are about.
    pub fn name(&self) -> &'static str {
        (self.name)()
    }
}

/// Every sum there is.
pub const ALL: &[Group] = &[
    Group {
        name: say::group_lenses,
        sums: &[
            lens::FORMS,
            lens::ALONG,
            lens::TWO,
            lens::OFF_AXIS,
            lens::READINGS,
            moved::VERTEX,
            moved::CELLS,
            moved::THICK,
            moved::FOCUS,
            moved::FAR,
        ],
    },
    Group {
        name: say::group_retinoscopy,
        sums: &[
            retinoscopy::NET,
            meridians::FITTED,
            retinoscopy::DISTANCE,
            retinoscopy::WORKING_LENS,
            retinoscopy::STREAK,
            retinoscopy::WRONG_DISTANCE,
            retinoscopy::MOVING,
            beside::OVER_LENS,
            beside::NEAR_TECHNIQUE,
            beside::OFF_SIGHT,
            beside::REFLEX,
        ],
    },
    Group {
        name: say::group_acuity,
        sums: &[
            acuity::NOTATIONS,
            acuity::ELSEWHERE,
            letters::COUNT,
            letters::SIZE,
        ],
    },
    Group {
        name: say::group_near,
        sums: &[
            letters::PRINT,
            reading::ADDITION,
            reading::RESERVE,
            reading::CLEAR,
            low_vision::START,
            low_vision::MAGNIFIER,
            low_vision::LARGER,
        ],
    },
    Group {
        name: say::group_prism,
        sums: &[
            prism::COMBINED,
            prism::SPLIT,
            prism::BETWEEN,
            prism::ANGLE,
            centres::DECENTRED,
            centres::WANTED,
            centres::CENTRE,
            centres::FRAME,
            centres::READING,
        ],
    },
    Group {
        name: say::group_glasses,
        sums: &[change::COMPARED, finished::AGAINST_ORDER],
    },
];

/// Every sum, group by group.
pub fn each() -> impl Iterator<Item = &'static Sum> {
    ALL.iter().flat_map(|group| group.sums)
}

/// The sum that goes by a slug.
pub fn named(slug: &str) -> Option<&'static Sum> {
    each().find(|sum| sum.slug == slug)
}
