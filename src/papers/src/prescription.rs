//! The prescription for glasses: what was signed, eye by eye, with the cautions that go with it.

use ::words::papers::documents as say;
use chrono::{Months, NaiveDate};
use optics::SphereCyl;
use optics::format::{plain, power};
use record::{Amendment, Born, Exam, Eye, Heads, Person, Subjective};

use crate::cautions;
use crate::day::{day, day_of};
use crate::documents::axis;
use crate::error::PaperError;

/// What a clinic chooses to have printed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Options {
    /// For how many months a prescription holds where local rules say so. Nothing prints nothing.
    pub valid_months: Option<u32>,
}

/// A prescription for glasses, every line a string ready to print.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Prescription {
    /// The person's name.
    pub name: String,
    /// How old the person is, as far as that is known.
    pub born: BornLine,
    /// The day of the examination.
    pub examined_on: String,
    /// The day on which the paper was written.
    pub written_on: String,
    /// The right eye, then the left.
    pub eyes: [EyeLine; 2],
    /// The distance for which the addition is meant: `40 cm`.
    pub near: Option<String>,
    /// The distance from the lens to the eye, where it was measured: `12 mm`.
    pub vertex: Option<String>,
    /// The last day on which it holds, where the clinic's settings say how long.
    pub valid_until: Option<String>,
    /// What whoever makes and fits the glasses has to know, one sentence each.
    pub cautions: Vec<String>,
    /// What was changed after signing, when, by whom and why, one sentence each. Empty for an exam as first signed.
    pub amendments: Vec<String>,
    /// Who signed.
    pub signer: String,
}

/// The person's birth or age, with what to call it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BornLine {
    /// `date of birth`, or `age` where only that is known.
    pub label: &'static str,
    /// `4 March 1940`, `about 86 years`, `not known`.
    pub value: String,
}

/// One eye's line on a prescription.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct EyeLine {
    /// `right` or `left`.
    pub eye: &'static str,
    /// `+3.25`, `0.00`, or empty where the eye has no lens.
    pub sphere: String,
    /// `−1.50`, or empty.
    pub cylinder: String,
    /// `90`, or empty.
    pub axis: String,
    /// `+2.50`, or empty.
    pub add: String,
    /// What the eye reads with the lens: `6/9`, `2/18 −1`, or empty.
    pub acuity: String,
    /// Why there is no lens, or empty.
    pub note: String,
}

impl Prescription {
    /// Makes the prescription of a signed exam in which lenses were prescribed, with the usual [`Options`].
    ///
    /// # Errors
    /// [`PaperError`], one sentence for each reason.
    pub fn from_exam(
        person: &Person,
        exam: &Exam,
        written_on: NaiveDate,
    ) -> Result<Self, PaperError> {
        Self::with_options(person, exam, written_on, &Options::default())
    }
}

impl Prescription {
    /// As [`Prescription::from_exam`], with what the clinic chose to have printed.
    ///
    /// # Errors
    /// [`PaperError`], one sentence for each reason.
    pub fn with_options(
        person: &Person,
        exam: &Exam,
        written_on: NaiveDate,
        options: &Options,
    ) -> Result<Self, PaperError> {
        let signer = may_be_printed(person, exam)?;
        let subjective = exam.subjective().settled().map(|version| version.value);
        let valid_until = options
            .valid_months
            .and_then(|months| exam.opened_on().checked_add_months(Months::new(months)));
        Ok(Self {
            name: person.details().name.to_string(),
            born: born(person, exam.opened_on()),
            examined_on: day(exam.opened_on()),
            written_on: day(written_on),
            eyes: Eye::BOTH.map(|eye| EyeLine::new(eye, exam, subjective)),
            near: subjective
                .and_then(|subjective| subjective.add)
                .map(|add| format!("{} cm", plain(add.at_cm, 1))),
            vertex: subjective
                .and_then(|subjective| subjective.vertex_mm)
                .map(|mm| format!("{} mm", plain(mm, 1))),
            valid_until: valid_until.map(day),
            cautions: cautions::all(exam, subjective),
            amendments: exam.amendments().iter().map(amended).collect(),
            signer,
        })
    }
}

/// Refuses whatever would print something other than what was signed; gives the signer.
fn may_be_printed(person: &Person, exam: &Exam) -> Result<String, PaperError> {
    if exam.person() != person.id() {
        return Err(PaperError::OtherPerson);
    }
    let Some(signer) = exam
        .signatures()
        .last()
        .map(|signed| signed.signer.to_owned())
    else {
        return Err(PaperError::NotSigned);
    };
    if exam.has_unread() {
        return Err(PaperError::WrittenByNewer);
    }
    if let Some(kind) = exam.unsettled().first() {
        return Err(PaperError::TwoVersions(*kind));
    }
    if let Heads::Several(_) = person.versions() {
        return Err(PaperError::TwoPersons);
    }
    if let Some(kind) = exam.uncovered().first() {
        return Err(PaperError::ChangedUnsigned(*kind));
    }
    let decided = exam.decision().settled();
    if !decided.is_some_and(|decision| decision.value.prescribes()) {
        return Err(PaperError::NotPrescribed);
    }
    if Eye::BOTH.iter().all(|eye| exam.final_lens(*eye).is_none()) {
        return Err(PaperError::NoLens);
    }
    Ok(signer)
}

pub(crate) fn born(person: &Person, on: NaiveDate) -> BornLine {
    let details = person.details();
    let (label, value) = match (details.born, details.age_on(on)) {
        (Some(Born::Date(date)), _) => (say::date_of_birth(), day(date)),
        (Some(Born::Stated { .. }), Some(age)) => (say::age(), years(&age.to_string())),
        _ => (say::date_of_birth(), say::birth_not_known().to_owned()),
    };
    BornLine { label, value }
}

fn years(age: &str) -> String {
    match age {
        "1" => say::one_year_old().to_owned(),
        age => say::years_old(&age),
    }
}

pub(crate) fn amended(amendment: &Amendment<'_>) -> String {
    say::amended_by(
        &amendment.kind.named(),
        &day_of(amendment.entry.stamp),
        &amendment.entry.author,
        &amendment.reason.trim(),
    )
}

impl EyeLine {
    fn new(eye: Eye, exam: &Exam, subjective: Option<&Subjective>) -> Self {
        let empty = Self {
            eye: eye.said(),
            sphere: String::new(),
            cylinder: String::new(),
            axis: String::new(),
            add: String::new(),
            acuity: String::new(),
            note: String::new(),
        };
        let Some(found) = exam.final_lens(eye) else {
            let why = exam.why_no_lens(eye);
            let note = why.unwrap_or_else(|| say::no_lens().to_owned());
            return Self { note, ..empty };
        };
        let seen = subjective.and_then(|subjective| {
            let seen = subjective.eyes.of(eye).done()?.acuity?;
            Some(subjective.chart.in_words(&seen))
        });
        let add = subjective.and_then(|subjective| subjective.add);
        Self {
            add: add.map_or_else(String::new, |add| power(add.power)),
            acuity: seen.unwrap_or_default(),
            ..empty.with_lens(&found.lens)
        }
    }

    fn with_lens(self, lens: &SphereCyl) -> Self {
        let sphere = power(lens.sphere);
        match lens.cylinder {
            Some(cylinder) => Self {
                sphere,
                cylinder: power(cylinder.power()),
                axis: axis(cylinder.axis()),
                ..self
            },
            None => Self { sphere, ..self },
        }
    }
}
