//! Acuity: what an eye reads, on whatever chart and at whatever distance the room allows.
//!
//! ```text
//! acuity = distance of the eye / distance at which the letter subtends 5 minutes of arc = 1 / MAR
//! logMAR = log10(MAR) = −log10(decimal acuity)
//! ```
//!
//! MAR is the least angle resolved, in minutes of arc: a fifth of the letter. Source of the definitions: DICOM PS3.17,
//! annex on visual acuity notation, which also says that Snellen meant the distance really used.
//!
//! One rule a file: [`LogMar`] and its other names, the lines of a traditional chart ([`ChartLine`]) and of an even one
//! ([`EvenLine`]), a chart read [at another distance](logmar), the letter count ([`LetterScore`]), what a person writes down
//! ([`Written`]), the [`Category`] of an eye that reads no chart, the [`Band`] of impairment, the size of a letter
//! ([`letter_height_mm`]), and print read near by ([`NearAcuity`]).
//!
//! A pinhole is no arithmetic: better through it hints at a refractive error or at some clouding, no better or worse at
//! the macula or at dense clouding, and no lens follows from how much better. It is recorded as one more reading.
//!
//! ```
//! use optics::acuity::{Acuity, Written};
//!
//! let read: Written = "6/12 -1".parse()?;
//! assert_eq!(read.to_string(), "6/12 −1");
//! let fingers: Written = "CF 50 cm".parse()?;
//! assert_eq!(fingers.to_string(), "counts fingers at 50 cm");
//! assert!(Acuity::from(read) > Acuity::from(fingers));
//! # Ok::<(), optics::acuity::WrittenError>(())
//! ```

mod at_distance;
mod band;
mod category;
mod chart_line;
mod even_line;
mod letters;
mod near;
mod optotype;
mod partial;
mod reader;
mod score;
mod written;
mod written_error;

pub use at_distance::{LETTER, as_read, at_six_metres, logmar, on_chart, with_letters};
pub use band::Band;
pub use category::{Acuity, Category, FingersAt, StandIn, StandInSource};
pub use chart_line::{ChartLine, NoSuchLine};
pub use even_line::{EvenLine, Over};
pub use letters::LetterScore;
pub use near::{NearAcuity, Print};
pub use optotype::{SIZE_STEP, letter_height_mm, stroke_mm};
pub use partial::PartialLine;
pub use score::LogMar;
pub use written::{Measure, Written, WrittenLine};
pub use written_error::WrittenError;
