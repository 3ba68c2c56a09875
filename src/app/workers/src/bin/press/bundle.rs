//! Exams, or a whole person, as a FHIR bundle, from the entries that tell of them.

use record::{Entry, ExamId, PersonId, Story};
use serde_bytes::ByteBuf;
use workers::Made;

use crate::files::file;

/// After so many exams it is said how far it is.
const A_FEW: usize = 8;

pub fn bundle(
    entries: &[ByteBuf],
    exams: &[ExamId],
    so_far: impl Fn(usize, usize),
) -> Result<Made, String> {
    so_far(0, exams.len());
    let story = fold(entries)?;
    let told = exams.iter().enumerate().filter_map(|(at, exam)| {
        if at % A_FEW == 0 {
            so_far(at, exams.len());
        }
        let exam = story.exam(exam)?;
        Some((story.person(&exam.person())?, exam))
    });
    let bundle = fhir::bundle(told);
    so_far(exams.len(), exams.len());
    Ok(file(bundle.to_json().into_bytes()))
}

pub fn whole(entries: &[ByteBuf], person: &PersonId) -> Result<Made, String> {
    let story = fold(entries)?;
    let known = story
        .person(person)
        .ok_or_else(::words::app::workers::no_such_person)?;
    let mut exams = story.exams_of(person);
    exams.reverse();
    Ok(file(fhir::whole(known, exams).to_json().into_bytes()))
}

fn fold(entries: &[ByteBuf]) -> Result<Story, String> {
    let mut story = Story::default();
    for bytes in entries {
        let entry = Entry::from_cbor(bytes).map_err(|error| error.to_string())?;
        story.admit(entry).map_err(|error| error.to_string())?;
    }
    Ok(story)
}
