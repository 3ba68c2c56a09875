//! `lightround fhir`: a bundle of exams.

use super::open::{open, wanted};
use super::options::FhirAsked;
use super::write;
use crate::ended::{Ended, Failure};

pub fn answer(asked: &FhirAsked) -> Result<Ended, Failure> {
    let opened = open(&asked.records)?;
    let exams = wanted(&opened.story, &asked.exams);
    let mut text = ::fhir::bundle_text(exams);
    text.push('\n');
    write::out(asked.out.as_deref(), text.as_bytes())?;
    Ok(write::tell(&opened.damage))
}
