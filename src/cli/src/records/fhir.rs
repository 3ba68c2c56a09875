//! `lightround fhir`: a bundle of exams.

use super::by_family::{Opened, wanted};
use super::options::FhirAsked;
use super::write::{self, Cut};
use crate::ended::{Ended, Failure};
use ::fhir::BundleFile;

pub fn answer(asked: &FhirAsked) -> Result<Ended, Failure> {
    let mut opened = Opened::open(&asked.records)?;
    write::piece_by_piece(asked.out.as_deref(), |file| {
        let mut bundle = BundleFile::begin(file)?;
        opened.each_family(|story| {
            let exams = wanted(story, &asked.exams).into_iter();
            for (person, exam) in exams {
                bundle.exam(person, exam)?;
            }
            Ok::<_, Cut>(())
        })?;
        Ok(bundle.end()?.write_all(b"\n")?)
    })?;
    Ok(write::tell(&opened.damage()))
}
