//! The seven papers that an exam can make, each with whom it is for.

use ::words::papers::kinds as say;
use chrono::NaiveDate;
use record::{Exam, Person};

use super::{
    InFrame, Letter, NoteOptions, care_staff_note, fitting_sheet, lab_order, person_note,
    visit_summary,
};
use crate::document::Document;
use crate::error::PaperError;
use crate::prescription::Prescription;

/// Which paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PaperKind {
    /// The prescription for glasses.
    Prescription,
    /// The order for the lens laboratory.
    Order,
    /// The referral letter.
    Referral,
    /// The note for the care staff.
    CareStaff,
    /// The note for the person.
    Person,
    /// The visit as it was written down.
    Summary,
    /// The glasses that came, against their limits.
    Fitting,
}

/// What is told beside the record.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Wording {
    /// The referral letter as it was changed; nothing for the one that is proposed.
    pub letter: Option<Letter>,
    /// What the two notes add.
    pub note: NoteOptions,
    /// What is told of the frames of an order.
    pub frames: Vec<InFrame>,
}

impl PaperKind {
    /// Every paper, in the order in which they are offered.
    pub const ALL: [Self; 7] = [
        Self::Prescription,
        Self::Order,
        Self::Referral,
        Self::CareStaff,
        Self::Person,
        Self::Summary,
        Self::Fitting,
    ];

    /// What it is called.
    pub fn title(self) -> &'static str {
        match self {
            Self::Prescription => say::prescription(),
            Self::Order => say::order(),
            Self::Referral => say::referral(),
            Self::CareStaff => say::care_staff(),
            Self::Person => say::person(),
            Self::Summary => say::summary(),
            Self::Fitting => say::fitting(),
        }
    }

    /// Whom it is for.
    pub fn whom(self) -> &'static str {
        match self {
            Self::Prescription => say::whom_prescription(),
            Self::Order => say::whom_order(),
            Self::Referral => say::whom_referral(),
            Self::CareStaff => say::whom_care_staff(),
            Self::Person => say::whom_person(),
            Self::Summary => say::whom_summary(),
            Self::Fitting => say::whom_fitting(),
        }
    }

    /// The word for it in an address and in a file’s name.
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Prescription => "prescription",
            Self::Order => "order",
            Self::Referral => "referral",
            Self::CareStaff => "care-staff",
            Self::Person => "person",
            Self::Summary => "summary",
            Self::Fitting => "fitting",
        }
    }

    /// Whether something is told on it beside the record: such a paper can't be made again from the exam alone.
    pub const fn has_words(self) -> bool {
        matches!(
            self,
            Self::Order | Self::Referral | Self::CareStaff | Self::Person
        )
    }

    /// The paper that goes by a word.
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.slug() == slug)
    }

    /// The paper of an exam, as written on a day.
    ///
    /// # Errors
    /// [`PaperError`], one sentence for each reason.
    pub fn document(
        self,
        person: &Person,
        exam: &Exam,
        wording: &Wording,
        on: NaiveDate,
    ) -> Result<Document, PaperError> {
        match self {
            Self::Prescription => Ok(Prescription::from_exam(person, exam, on)?.document()),
            Self::Order => lab_order(person, exam, &wording.frames, on),
            Self::Referral => match &wording.letter {
                Some(letter) => letter.document(person, exam, on),
                None => Letter::proposed(person, exam)?.document(person, exam, on),
            },
            Self::CareStaff => care_staff_note(person, exam, &wording.note, on),
            Self::Person => person_note(person, exam, &wording.note, on),
            Self::Summary => visit_summary(person, exam, on),
            Self::Fitting => fitting_sheet(person, exam, on),
        }
    }
}
