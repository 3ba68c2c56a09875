//! `lightround papers`: the papers of each exam, as PDF.

use super::by_family::{Opened, wanted};
use super::options::{Kind, PapersAsked, Size};
use super::write;
use crate::ended::{Ended, Failure};
use ::papers::{
    Document, Letter, NoteOptions, PaperError, Prescription, care_staff_note, fitting_sheet,
    lab_order, person_note, visit_summary,
};
use chrono::NaiveDate;
use clap::ValueEnum;
use record::{Exam, Person};
use std::fs;

pub fn answer(asked: &PapersAsked) -> Result<Ended, Failure> {
    let mut opened = Opened::open(&asked.records)?;
    fs::create_dir_all(&asked.out).map_err(|error| write::failed(&asked.out, error))?;
    let today = chrono::Utc::now().date_naive();
    let written = asked.written.unwrap_or(today);
    let mut said = Vec::new();
    opened.each_family(|story| {
        for (person, exam) in wanted(story, &asked.exams) {
            said.extend(each(asked, person, exam, written)?);
        }
        Ok::<_, Failure>(())
    })?;
    let damage = [opened.damage(), said].concat();
    Ok(write::tell(&damage))
}

/// Makes the papers of one exam; says what is amiss with them.
fn each(
    asked: &PapersAsked,
    person: &Person,
    exam: &Exam,
    written: NaiveDate,
) -> Result<Vec<String>, Failure> {
    let mut said = Vec::new();
    let kinds = Kind::value_variants().iter();
    for kind in kinds.filter(|kind| asked.only.is_empty() || asked.only.contains(kind)) {
        // The exam's number, since a file's name is read by more people than the file.
        let name = format!("{} {} {}.pdf", exam.opened_on(), exam.id(), kind.word());
        match kind.document(person, exam, written) {
            Ok(document) => said.extend(make(asked, &name, &document)?),
            Err(error) if is_not_called_for(&error) => {}
            Err(error) => said.push(format!("{name} was not made: {error}")),
        }
    }
    Ok(said)
}

/// Makes one file; says which letters no font has.
fn make(asked: &PapersAsked, name: &str, document: &Document) -> Result<Option<String>, Failure> {
    let size = match asked.size {
        Size::A4 => pdf::Paper::A4,
        Size::Letter => pdf::Paper::Letter,
    };
    let made = pdf::pdf(document, size)?;
    write::file(&asked.out.join(name), &made.bytes)?;
    let letters: String = made.lacking.iter().collect();
    Ok((!letters.is_empty())
        .then(|| format!("no font here has {letters}: see the question marks in {name}")))
}

/// Whether there is nothing to say on this paper, so that nobody misses it.
const fn is_not_called_for(error: &PaperError) -> bool {
    matches!(
        error,
        PaperError::NotPrescribed
            | PaperError::NoLens
            | PaperError::NoOrder
            | PaperError::NoFitting
            | PaperError::NotReferred
            | PaperError::NotSigned
    )
}

impl Kind {
    /// The paper's word in the names of files.
    const fn word(self) -> &'static str {
        match self {
            Self::Prescription => "prescription",
            Self::Order => "order",
            Self::Referral => "referral",
            Self::Person => "note for the person",
            Self::Staff => "note for the staff",
            Self::Summary => "summary",
            Self::Fitting => "fitting",
        }
    }

    fn document(
        self,
        person: &Person,
        exam: &Exam,
        written: NaiveDate,
    ) -> Result<Document, PaperError> {
        let note = NoteOptions::default();
        match self {
            Self::Prescription => Ok(Prescription::from_exam(person, exam, written)?.document()),
            Self::Order => lab_order(person, exam, &[], written),
            Self::Referral => Letter::proposed(person, exam)?.document(person, exam, written),
            Self::Person => person_note(person, exam, &note, written),
            Self::Staff => care_staff_note(person, exam, &note, written),
            Self::Summary => visit_summary(person, exam, written),
            Self::Fitting => fitting_sheet(person, exam, written),
        }
    }
}
