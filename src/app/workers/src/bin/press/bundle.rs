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
    let told = counted(exams, &so_far).filter_map(|exam| {
        let exam = story.exam(exam)?;
        Some((story.person(&exam.person())?, exam))
    });
    let text = fhir::bundle_text(told);
    so_far(exams.len(), exams.len());
    Ok(file(text.into_bytes()))
}

pub fn whole(
    entries: &[ByteBuf],
    person: &PersonId,
    so_far: impl Fn(usize, usize),
) -> Result<Made, String> {
    let story = fold(entries)?;
    let known = story
        .person(person)
        .ok_or_else(::words::app::workers::no_such_person)?;
    let mut exams = story.exams_of(person);
    exams.reverse();
    let told = counted(&exams, &so_far).copied();
    Ok(file(fhir::whole_text(known, told).into_bytes()))
}

/// Says how far it is, as they are taken one by one.
fn counted<'a, T>(all: &'a [T], so_far: &'a impl Fn(usize, usize)) -> impl Iterator<Item = &'a T> {
    all.iter().enumerate().map(|(at, one)| {
        if at % A_FEW == 0 {
            so_far(at, all.len());
        }
        one
    })
}

fn fold(entries: &[ByteBuf]) -> Result<Story, String> {
    let mut story = Story::default();
    for bytes in entries {
        let entry = Entry::from_cbor(bytes).map_err(|error| error.to_string())?;
        story.admit(entry).map_err(|error| error.to_string())?;
    }
    Ok(story)
}
