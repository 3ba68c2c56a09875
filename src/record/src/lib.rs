//! What is written down about people and their eyes.
//!
//! Everything that changes is an [`Entry`]: immutable, naming the entries that it rests on or replaces. A [`Story`] is
//! the fold of all entries, in whatever order they come. Editing a section writes a whole new version of it; two
//! tablets that replaced the same version make two heads ([`Heads`]), and both stay until somebody settles them with
//! a version that names both. Signing names the versions that were signed; what comes later needs a reason.
//!
//! Before signing, and while somebody writes, [`second_look`] asks about what looks like a slip; [`Story::answer`] keeps the
//! answer.
//!
//! A [`Round`] is a day's list of people at a [`Place`]. Who was seen on it, the exams tell; [`Visit`]s say who was asleep, out, or
//! did not want to be. [`home_list`] reads the list that a home sends.
//!
//! This crate reads no clock and draws no randomness: ids and times are passed in. It knows nothing of storage, keys or
//! screens. What an eye's lens does is the business of [`optics`].
//!
//! ```
//! use record::*;
//! # use chrono::NaiveDate;
//! # use uuid::Uuid;
//! # let mut ids = 0;
//! # let mut new_id = || { ids += 1; Uuid::from_u128(ids) };
//! let (tablet, mut clock) = (DeviceId([7; 16]), Clock::default());
//! let mut story = Story::default();
//! let mut write = |story: &mut Story, id, now_ms, planned: Planned| {
//!     let entry = planned.into_entry(EntryId::from_uuid(id), "M. Farrow".into(), tablet, clock.tick(now_ms));
//!     story.admit(Entry::from_cbor(&entry.to_cbor()).unwrap()) // as if it came from another tablet
//! };
//!
//! let orla = PersonId::from_uuid(new_id());
//! let name = Name { given: "Orla".into(), family: "Pennyquick".into() };
//! let planned = story.put_person(orla, PersonDetails { name, ..PersonDetails::default() });
//! write(&mut story, new_id(), 1_000, planned)?;
//!
//! let exam = ExamId::from_uuid(new_id());
//! let today = NaiveDate::from_ymd_opt(2026, 3, 4).unwrap();
//! let planned = story.open_exam(exam, orla, "Saltmarsh Court".into(), today)?;
//! write(&mut story, new_id(), 2_000, planned)?;
//!
//! let decision = Decision { glasses: Some(Glasses::LeaveAlone), ..Decision::default() };
//! let planned = story.put_section(&exam, Section::Decision(decision.clone()), None)?;
//! write(&mut story, new_id(), 3_000, planned)?;
//! let planned = story.sign(&exam, "M. Farrow".into())?;
//! write(&mut story, new_id(), 4_000, planned)?;
//!
//! // Signed: a change without a reason is refused.
//! let refused = story.put_section(&exam, Section::Decision(decision), None);
//! assert_eq!(refused, Err(RecordError::ReasonNeeded(SectionKind::Decision)));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod body;
mod cbor;
mod check;
mod differences;
mod draft;
pub mod earlier_list;
mod elsewhere;
mod entry;
mod error;
mod exam;
mod excerpt;
pub mod find;
mod finding;
pub mod fog;
mod half;
pub mod home_list;
mod ids;
mod jotted;
mod lane;
mod last_two;
mod look;
mod manner;
mod person;
mod plan;
mod reading;
mod rounds;
mod second_look;
mod sections;
mod sent;
mod settings;
mod side_by_side;
mod signing;
mod stamp;
mod story;
mod story_so_far;
mod summary;
mod to_come;
mod to_order;
mod usual_in;
mod versions;
mod whole;

pub use body::{Answered, Body, Unread};
pub use check::{FieldError, check};
pub use differences::{Change, Difference, differences};
pub use draft::Draft;
pub use entry::Entry;
pub use error::{FoldError, ReadError, RecordError};
pub use exam::{Amendment, Exam, ExamState, Signature};
pub use finding::{Eye, Eyes, Finding, NOT_DONE_BECAUSE, UNABLE_BECAUSE};
pub use half::Half;
pub use ids::{DeviceId, EntryId, ExamId, PersonId, PlaceId, RoundId};
pub use jotted::{Jotted, JottedError};
pub use lane::{Heads, Version};
pub use last_two::{LastTwo, Together};
pub use look::LastTime;
pub use manner::{DateOrder, DecimalMark, FarUnit, Manner};
pub use person::{
    Apart, Born, Contact, Doctor, Families, Identifier, Joined, LOOKED_AT, LooksAt, Name,
    NoDistance, Person, PersonDetails, Same, Told, ToldOn,
};
pub use plan::Planned;
pub use reading::{Line, Said};
pub use rounds::*;
pub use second_look::{Answer, Raised, Rule, Thresholds, second_look, second_look_with};
pub use sections::*;
pub use sent::{Sent, SentPaper};
pub use settings::{
    Figure, FigureUnit, Phrase, PhraseError, Settings, Usual, holds_phrase, own_words,
    turned_phrase,
};
pub use side_by_side::{Beside, FoundBy};
pub use stamp::{Clock, Stamp};
pub use story::Story;
pub use story_so_far::{
    Event, Followed, Happened, Local, Measure, Moment, Noted, Obtained, Stands, StorySoFar,
    in_years,
};
pub use summary::{Age, FinalLens, LastNet, Source};
pub use to_come::ToCome;
pub use versions::{Against, Written};
pub use whole::{OnRound, PastKeeping, Whole};
