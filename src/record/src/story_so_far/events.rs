//! What happened: glasses, referrals, drops, a clouded lens noted, an implant seen, an amendment.
//!
//! Only what stands on record counts. That an eye was operated is not written down as such: what is told is the exam
//! that first saw an implant.

use ::words::record::story as say;
use chrono::NaiveDate;

use super::Local;
use crate::exam::Exam;
use crate::finding::{Eye, Eyes};
use crate::ids::ExamId;
use crate::sections::{Decision, Drops, Fitting, LensState, Pupils};

/// Something that happened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Event {
    /// On which day.
    pub on: NaiveDate,
    /// The exam that tells it.
    pub exam: ExamId,
    /// What.
    pub what: Happened,
    /// The same with its particulars, one sentence without a stop.
    pub words: String,
}

/// What can happen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Happened {
    /// New glasses were prescribed.
    Prescribed,
    /// New glasses were fitted.
    Fitted,
    /// The person was referred.
    Referred,
    /// Drops were given.
    Drops,
    /// A clouded lens was noted for the first time.
    Cataract,
    /// An implant, or no lens, was seen for the first time.
    Implant,
    /// Something was changed after signing.
    Amended,
}

impl Happened {
    /// Everything that can happen, in the order in which it is told.
    pub const ALL: [Self; 7] = [
        Self::Prescribed,
        Self::Fitted,
        Self::Referred,
        Self::Drops,
        Self::Cataract,
        Self::Implant,
        Self::Amended,
    ];

    /// In a few words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Prescribed => say::prescribed(),
            Self::Fitted => say::fitted(),
            Self::Referred => say::referred(),
            Self::Drops => say::drops_given(),
            Self::Cataract => say::cataract(),
            Self::Implant => say::implant(),
            Self::Amended => say::amended(),
        }
    }
}

/// Everything that happened to a person, oldest first; `exams` are theirs, oldest first.
pub(super) fn all(exams: &[&Exam], local: Local<'_>) -> Vec<Event> {
    let (mut clouded, mut replaced) = (Eyes::default(), Eyes::default());
    let mut events = Vec::new();
    for exam in exams {
        events.extend(decided(exam));
        events.extend(fitted(exam));
        events.extend(drops(exam));
        events.extend(first(
            exam,
            Happened::Cataract,
            &mut clouded,
            LensState::is_clouded,
        ));
        events.extend(first(
            exam,
            Happened::Implant,
            &mut replaced,
            LensState::is_replaced,
        ));
        events.extend(amended(exam, local));
    }
    events.sort_by_key(|event| event.on);
    events
}

fn event(exam: &Exam, on: NaiveDate, what: Happened, more: &str) -> Event {
    let words = match more.trim() {
        "" => what.words().to_owned(),
        more => format!("{}: {more}", what.words()),
    };
    Event {
        on,
        exam: exam.id(),
        what,
        words,
    }
}

fn decided(exam: &Exam) -> Vec<Event> {
    let decision = exam.decision().settled();
    let Some(decision) = decision.map(|version| version.value) else {
        return Vec::new();
    };
    let today = |what, more: &str| event(exam, exam.opened_on(), what, more);
    let Decision { refer, .. } = decision;
    let glasses = decision
        .prescribes()
        .then(|| today(Happened::Prescribed, ""));
    let referred = refer.as_ref().map(|refer| {
        let more = say::referred_to(&refer.urgency.word(), &refer.to.trim());
        today(Happened::Referred, &more)
    });
    glasses.into_iter().chain(referred).collect()
}

fn fitted(exam: &Exam) -> Vec<Event> {
    let fitting = exam.part::<Fitting>().settled();
    let pairs = fitting.into_iter().flat_map(|version| &version.value.pairs);
    let days = pairs.filter_map(|pair| pair.fitted_on);
    days.map(|on| event(exam, on, Happened::Fitted, ""))
        .collect()
}

fn drops(exam: &Exam) -> Option<Event> {
    let drops = exam.part::<Drops>().settled()?;
    let mut names: Vec<&str> = drops.value.each().map(|drop| drop.drug.name()).collect();
    names.dedup();
    let given = !names.is_empty();
    given.then(|| event(exam, exam.opened_on(), Happened::Drops, &names.join(", ")))
}

/// What is seen of a lens for the first time.
fn first(
    exam: &Exam,
    what: Happened,
    known: &mut Eyes<bool>,
    is: fn(&LensState) -> bool,
) -> Option<Event> {
    let pupils = exam.part::<Pupils>().settled()?;
    let seen = |eye: Eye| pupils.value.eyes.of(eye).lens.done().is_some_and(is);
    let new = Eyes {
        right: seen(Eye::Right) && !known.right,
        left: seen(Eye::Left) && !known.left,
    };
    known.right |= new.right;
    known.left |= new.left;
    let which = match (new.right, new.left) {
        (true, true) => say::both_eyes(),
        (true, false) => say::right_eye(),
        (false, true) => say::left_eye(),
        (false, false) => return None,
    };
    Some(event(exam, exam.opened_on(), what, which))
}

fn amended(exam: &Exam, local: Local<'_>) -> Vec<Event> {
    let amendments = exam.amendments();
    let told = amendments.iter().map(|amendment| {
        let more = say::amended_by(
            &amendment.kind.title(),
            &amendment.entry.author,
            &amendment.reason.trim(),
        );
        let on = local(amendment.entry.stamp).date();
        event(exam, on, Happened::Amended, &more)
    });
    told.collect()
}
