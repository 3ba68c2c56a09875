//! One visit as the log has it.

use ::words::papers::log as say;
use chrono::{Months, NaiveDate};
use record::{Drops, Exam, ExamId, ExamState, Glasses, Order, Person, SectionKind, Urgency};
use serde::{Deserialize, Serialize};

/// One visit.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Visit {
    /// The exam that it was.
    pub exam: ExamId,
    /// The day.
    pub date: NaiveDate,
    /// Where.
    pub place: String,
    /// The room there.
    pub room: String,
    /// Who was seen.
    pub person: String,
    /// How old they were, in words.
    pub age: String,
    /// The number by which others know them.
    pub number: String,
    /// Who signed, else who wrote last.
    pub clinician: String,
    /// What came of it.
    pub outcome: Outcome,
    /// How urgent a referral was made.
    pub referred: Option<Urgency>,
    /// How many pairs of glasses were ordered.
    pub pairs: u32,
    /// Which drops were given.
    pub drops: String,
    /// On which day the person is to be seen again.
    pub again_on: Option<NaiveDate>,
    /// Minutes from the first thing written to the signature; nothing where it took longer than a day.
    pub minutes: Option<u32>,
    /// How the exam stands.
    pub state: ExamState,
}

/// What came of a visit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Outcome {
    /// Glasses were prescribed.
    Prescribed,
    /// The glasses stay as they are.
    LeftAlone,
    /// Something else was decided.
    Advised,
    /// Nothing is decided yet.
    Unfinished,
}

impl Outcome {
    /// Every outcome.
    pub const ALL: [Self; 4] = [
        Self::Prescribed,
        Self::LeftAlone,
        Self::Advised,
        Self::Unfinished,
    ];

    /// The words for it.
    pub fn words(self) -> &'static str {
        match self {
            Self::Prescribed => say::glasses_prescribed(),
            Self::LeftAlone => say::glasses_left_alone(),
            Self::Advised => say::advice_only(),
            Self::Unfinished => say::not_finished(),
        }
    }

    fn of(exam: &Exam) -> Self {
        let decision = exam.decision().settled().map(|version| version.value);
        match decision {
            Some(decision) if decision.prescribes() => Self::Prescribed,
            Some(decision) if decision.glasses == Some(Glasses::LeaveAlone) => Self::LeftAlone,
            Some(decision) if decision.is_made() => Self::Advised,
            _ => Self::Unfinished,
        }
    }
}

impl Visit {
    /// What the log is ordered by: the day, then place and room, then the person; no two visits stand at one place.
    pub fn order(&self) -> impl Ord + '_ {
        (self.date, &self.place, &self.room, &self.person, self.exam)
    }

    /// The visit that an exam was.
    pub fn of(person: &Person, exam: &Exam) -> Self {
        let details = person.details();
        let decision = exam.decision().settled().map(|version| version.value);
        let order = exam.part::<Order>().settled().map(|version| version.value);
        let drops = exam.part::<Drops>().settled().map(|version| version.value);
        let drops = drops.into_iter().flat_map(Drops::each);
        let mut named: Vec<&str> = drops.map(|given| given.drug.name()).collect();
        named.dedup();
        let age = details.age_on(exam.opened_on());
        let recall = decision.and_then(|decision| decision.recall.as_ref());
        Self {
            exam: exam.id(),
            date: exam.opened_on(),
            place: exam.place().trim().to_owned(),
            room: details.room.trim().to_owned(),
            person: details.name.to_string(),
            age: age.map_or_else(String::new, |age| age.to_string()),
            number: details.numbers_in_words(),
            clinician: clinician(exam),
            outcome: Outcome::of(exam),
            referred: decision.and_then(|decision| Some(decision.refer.as_ref()?.urgency)),
            pairs: order.map_or(0, |order| order.pairs.len() as u32),
            drops: named.join(", "),
            again_on: recall.and_then(|recall| {
                let months = Months::new(recall.months.into());
                exam.opened_on().checked_add_months(months)
            }),
            minutes: minutes(exam),
            state: exam.state(),
        }
    }
}

fn clinician(exam: &Exam) -> String {
    if let Some(last) = exam.signatures().last() {
        return last.signer.trim().to_owned();
    }
    let written = SectionKind::ALL
        .into_iter()
        .flat_map(|kind| exam.history(kind));
    let last = written.max_by_key(|version| version.entry.stamp);
    last.map_or_else(String::new, |version| {
        version.entry.author.trim().to_owned()
    })
}

/// A visit that takes longer than this was broken off and taken up again.
const DAY_MIN: u64 = 24 * 60;

fn minutes(exam: &Exam) -> Option<u32> {
    let written = SectionKind::ALL
        .into_iter()
        .flat_map(|kind| exam.history(kind));
    let first = written.map(|version| version.entry.stamp.wall_ms).min()?;
    let signed = exam.signatures().first()?.entry.stamp.wall_ms;
    let minutes = signed.checked_sub(first)? / 60_000;
    u32::try_from(minutes).ok().filter(|_| minutes <= DAY_MIN)
}
