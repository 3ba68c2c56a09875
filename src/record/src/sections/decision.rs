//! The decision: what is done about what was found.

use ::words::record::sections as say;
use serde::{Deserialize, Serialize};

use super::Filled;
use crate::check::{Checks, FieldError, blank};

/// What is done about what was found. Glasses, a referral and advice may stand together.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Decision {
    /// Whether new lenses are prescribed. Nothing while undecided, or when the visit was not about glasses.
    pub glasses: Option<Glasses>,
    /// Whom the person is sent to.
    pub refer: Option<Referral>,
    /// What the person, family or staff were told.
    #[serde(default)]
    pub advice: String,
    /// When to come back.
    pub recall: Option<Recall>,
    /// For the record only.
    #[serde(default)]
    pub note: String,
}

/// What is decided about glasses.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Glasses {
    /// The final lenses of this exam are prescribed.
    Prescribe,
    /// The person is better off with what they have.
    LeaveAlone,
}

/// A referral to somebody else.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Referral {
    /// How soon.
    pub urgency: Urgency,
    /// To whom.
    pub to: String,
}

/// How soon a referral is to be seen. Local rules say what each means in days.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Urgency {
    /// In its turn.
    #[default]
    Routine,
    /// Ahead of its turn.
    Soon,
    /// Within days.
    Urgent,
    /// Today.
    Emergency,
}

impl Urgency {
    /// Every urgency, from least to most.
    pub const ALL: [Self; 4] = [Self::Routine, Self::Soon, Self::Urgent, Self::Emergency];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Routine => say::routine(),
            Self::Soon => say::soon(),
            Self::Urgent => say::urgent(),
            Self::Emergency => say::emergency(),
        }
    }
}

/// When the person is to be seen again, and why then.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Recall {
    /// In how many months.
    pub months: u16,
    /// Why then.
    pub reason: String,
}

impl Decision {
    /// Whether anything at all was decided.
    pub fn is_made(&self) -> bool {
        self.glasses.is_some() || self.refer.is_some() || !blank(&self.advice)
    }

    /// Whether lenses are prescribed.
    pub fn prescribes(&self) -> bool {
        self.glasses == Some(Glasses::Prescribe)
    }
}

impl Filled for Decision {
    fn check(&self) -> Vec<FieldError> {
        let mut checks = Checks::default();
        if self.refer.as_ref().is_some_and(|refer| blank(&refer.to)) {
            checks.say("refer.to", say::ask_refer_to());
        }
        if let Some(recall) = &self.recall {
            if recall.months == 0 || recall.months > LONGEST_RECALL {
                checks.say("recall.months", say::recall_range(&LONGEST_RECALL));
            }
            if blank(&recall.reason) {
                checks.say("recall.reason", say::ask_recall_why());
            }
        }
        checks.done()
    }
}

/// Months. Common practice, no source: nobody of the people visited is left longer than five years.
const LONGEST_RECALL: u16 = 60;
