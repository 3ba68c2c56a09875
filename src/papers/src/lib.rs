//! Documents, made from a folded record: plain lines ready to print, and a refusal in one sentence where a paper would
//! say something other than what was signed. No markup here; the app sets the lines.
//!
//! ```
//! use optics::SphereCyl;
//! use papers::{PaperError, Prescription};
//! use record::*;
//! # use chrono::NaiveDate;
//! # use uuid::Uuid;
//! # let mut count = 0;
//! # let mut write = |story: &mut Story, planned: Planned| {
//! #     count += 1;
//! #     let id = EntryId::from_uuid(Uuid::from_u128(count));
//! #     story.admit(planned.into_entry(id, "M. Farrow".into(), DeviceId([1; 16]), Stamp::default()))
//! # };
//! let mut story = Story::default();
//! let today = NaiveDate::from_ymd_opt(2026, 3, 4).unwrap();
//! let (ivo, exam) = (PersonId::from_uuid(Uuid::from_u128(1)), ExamId::from_uuid(Uuid::from_u128(2)));
//! let name = Name { given: "Ivo".into(), family: "Castlemere".into() };
//! let planned = story.put_person(ivo, PersonDetails { name, ..PersonDetails::default() });
//! write(&mut story, planned)?;
//! let planned = story.open_exam(exam, ivo, "Gull Harbour".into(), today)?;
//! write(&mut story, planned)?;
//!
//! let lens = SphereCyl::parse("−2.50 / −1.25 × 10")?;
//! let eye = Finding::Done(SubjectiveEye { lens, acuity: None });
//! let eyes = Eyes { right: eye.clone(), left: eye };
//! let chosen = Section::Subjective(Subjective { eyes, ..Subjective::default() });
//! let planned = story.put_section(&exam, chosen, None)?;
//! write(&mut story, planned)?;
//! let decision = Decision { glasses: Some(Glasses::Prescribe), ..Decision::default() };
//! let planned = story.put_section(&exam, Section::Decision(decision), None)?;
//! write(&mut story, planned)?;
//!
//! let paper = |story: &Story| {
//!     Prescription::from_exam(story.person(&ivo).unwrap(), story.exam(&exam).unwrap(), today)
//! };
//! assert_eq!(paper(&story), Err(PaperError::NotSigned));
//!
//! let planned = story.sign(&exam, "M. Farrow, optometrist".into())?;
//! write(&mut story, planned)?;
//! let [right, _] = paper(&story)?.eyes;
//! assert_eq!([right.sphere, right.cylinder, right.axis], ["−2.50", "−1.25", "10"]);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod cautions;
mod day;
mod document;
mod documents;
mod error;
pub mod holds;
pub mod log;
mod manner;
mod prescription;
#[cfg(feature = "sample")]
pub mod sample;

pub use document::{
    Against, Block, Callout, Document, Fact, LensCells, LensRow, LensTable, Measure, Print, Sign,
    Standing, Table, Weight,
};
pub use documents::{
    Finding, InFrame, Letter, NoteOptions, PaperKind, Told, Wording, care_staff_note,
    fitting_sheet, lab_order, person_note, visit_summary, whole_record,
};
pub use error::PaperError;
pub use prescription::{BornLine, EyeLine, Options, Prescription};
