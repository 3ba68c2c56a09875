//! A bundle from exams, in memory or written exam by exam. Its words are English whatever is spoken: ids are made of them, and
//! others compare what they get.

use ::words::{Language, in_language};
use std::collections::BTreeSet;
use std::io::{self, Write};

use record::{Exam, Person};

use crate::exam::Visit;
use crate::names::Name;
use crate::patient::patient;
use crate::resources::{Bundle, Entry, Resource};

/// A bundle of exams with everybody and everything that they name, each once.
pub fn bundle<'a>(exams: impl IntoIterator<Item = (&'a Person, &'a Exam)>) -> Bundle {
    let mut known = Known::default();
    let exams = exams.into_iter();
    collection(exams.flat_map(|(person, exam)| known.exam(person, exam)))
}

/// A bundle of one person, with every exam of theirs that is given; there may be none.
pub fn whole<'a>(person: &'a Person, exams: impl IntoIterator<Item = &'a Exam>) -> Bundle {
    let mut known = Known::default();
    let first = known.person(person);
    let exams = exams.into_iter();
    let told = exams.flat_map(|exam| known.exam(person, exam));
    collection(first.into_iter().chain(told))
}

/// [`bundle`] as JSON, on one line. Each exam is written as soon as it is taken from the iterator: so whoever counts them there
/// knows how far it is, and no more than one of them stands in memory beside the text.
pub fn bundle_text<'a>(exams: impl IntoIterator<Item = (&'a Person, &'a Exam)>) -> String {
    text(|file| {
        exams
            .into_iter()
            .try_for_each(|(person, exam)| file.exam(person, exam))
    })
}

/// [`whole`] as JSON, in the same way.
pub fn whole_text<'a>(person: &'a Person, exams: impl IntoIterator<Item = &'a Exam>) -> String {
    text(|file| {
        file.person(person)?;
        exams
            .into_iter()
            .try_for_each(|exam| file.exam(person, exam))
    })
}

fn text(write: impl FnOnce(&mut BundleFile<&mut Vec<u8>>) -> io::Result<()>) -> String {
    let mut bytes = Vec::new();
    let written = BundleFile::begin(&mut bytes).and_then(|mut file| {
        write(&mut file)?;
        file.end()
    });
    written.expect("nothing stands in the way of writing to memory");
    String::from_utf8(bytes).expect("JSON is UTF-8")
}

fn collection(entry: impl Iterator<Item = Entry>) -> Bundle {
    Bundle {
        kind: "collection",
        entry: entry.collect(),
    }
}

/// A bundle that is written exam by exam: no more than one of them is in memory, and the names of what is told once for all.
///
/// ```
/// # let desk = papers::sample::Desk::full();
/// let mut file = fhir::BundleFile::begin(Vec::new())?;
/// file.exam(desk.person(), desk.exam())?;
/// let text = String::from_utf8(file.end()?)?;
/// assert_eq!(text, fhir::bundle_text([(desk.person(), desk.exam())]));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub struct BundleFile<W> {
    out: W,
    known: Known,
    /// What stands before the next entry.
    before: &'static str,
}

impl<W: Write> BundleFile<W> {
    /// Begins a bundle.
    ///
    /// # Errors
    /// It can't be written.
    pub fn begin(mut out: W) -> io::Result<Self> {
        let empty = collection(std::iter::empty()).to_json();
        // Entries go in before its end.
        out.write_all(empty.trim_end_matches('}').as_bytes())?;
        Ok(Self {
            out,
            known: Known::default(),
            before: ",\"entry\":[",
        })
    }

    /// Writes who somebody is, if that is not written yet.
    ///
    /// # Errors
    /// It can't be written.
    pub fn person(&mut self, person: &Person) -> io::Result<()> {
        let entries = self.known.person(person);
        self.write(entries)
    }

    /// Writes an exam with everything that it names and that is not written yet.
    ///
    /// # Errors
    /// It can't be written.
    pub fn exam(&mut self, person: &Person, exam: &Exam) -> io::Result<()> {
        let entries = self.known.exam(person, exam);
        self.write(entries)
    }

    /// Ends the bundle, and gives back what it was written to.
    ///
    /// # Errors
    /// It can't be written.
    pub fn end(mut self) -> io::Result<W> {
        let end = if self.before == "," { "]}" } else { "}" };
        self.out.write_all(end.as_bytes())?;
        self.out.flush()?;
        Ok(self.out)
    }

    fn write(&mut self, entries: Vec<Entry>) -> io::Result<()> {
        for entry in entries {
            self.out.write_all(self.before.as_bytes())?;
            self.before = ",";
            serde_json::to_writer(&mut self.out, &entry)?;
        }
        Ok(())
    }
}

/// What a bundle has already: the exams, and whatever several of them name.
#[derive(Default)]
struct Known(BTreeSet<Name>);

impl Known {
    fn person(&mut self, person: &Person) -> Vec<Entry> {
        self.anew(in_language(Language::English, || vec![patient(person)]))
    }

    fn exam(&mut self, person: &Person, exam: &Exam) -> Vec<Entry> {
        if !self.0.insert(Name::exam(exam)) {
            return Vec::new();
        }
        let visit = Visit { person, exam };
        self.anew(in_language(Language::English, || visit.resources()))
    }

    fn anew(&mut self, told: Vec<(Name, Resource)>) -> Vec<Entry> {
        let mut here = BTreeSet::new();
        let anew = told.into_iter().filter(|(name, resource)| {
            if resource.is_shared() {
                self.0.insert(*name)
            } else {
                here.insert(*name)
            }
        });
        anew.map(|(name, resource)| Entry {
            full_url: name.url(),
            resource,
        })
        .collect()
    }
}
