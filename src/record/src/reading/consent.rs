//! Capacity and consent in words.

use super::{Lines, Reads, filled};
use crate::sections::{Agreed, Assessed, Capacity, Consent};
use ::words::record::reading as say;

impl Assessed {
    fn answers(&self) -> String {
        let four = [
            (say::understands(), self.understands),
            (say::retains(), self.retains),
            (say::weighs(), self.weighs),
            (say::communicates(), self.communicates),
        ];
        let said =
            four.map(|(what, yes)| format!("{what}: {}", if yes { say::yes() } else { say::no() }));
        said.join(", ")
    }
}

impl Capacity {
    /// "can decide, presumed", or the four answers and how they were found.
    pub fn in_words(&self) -> String {
        let can = if self.can_decide() {
            say::can_decide()
        } else {
            say::cannot_decide()
        };
        match self {
            Self::Presumed => say::presumed(&can),
            Self::Assessed(assessed) => {
                let how = filled(&assessed.how).map(|how| format!("; {how}"));
                format!("{can}: {}{}", assessed.answers(), how.unwrap_or_default())
            }
        }
    }
}

impl Agreed {
    /// The ways of agreeing, with nothing said yet of who or why.
    pub const fn all() -> [Self; 6] {
        [
            Self::Spoken,
            Self::Shown,
            Self::Written,
            Self::ByAttorney { who: String::new() },
            Self::BestInterests { why: String::new() },
            Self::Refused { how: String::new() },
        ]
    }

    /// The way alone.
    pub fn way(&self) -> &'static str {
        match self {
            Self::Spoken => say::in_words(),
            Self::Shown => say::by_going_along(),
            Self::Written => say::in_writing(),
            Self::ByAttorney { .. } => say::legal_power(),
            Self::BestInterests { .. } => say::best_interests(),
            Self::Refused { .. } => say::did_not_agree(),
        }
    }

    /// What is still to be said of that way.
    pub fn asks(&self) -> Option<&'static str> {
        match self {
            Self::Spoken | Self::Shown | Self::Written => None,
            Self::ByAttorney { .. } => Some(say::ask_who_agreed()),
            Self::BestInterests { .. } => Some(say::ask_best_interests()),
            Self::Refused { .. } => Some(say::ask_how_refused()),
        }
    }

    /// What was said of who, why or how; nothing where there is nothing to say.
    pub fn said(&self) -> &str {
        match self {
            Self::Spoken | Self::Shown | Self::Written => "",
            Self::ByAttorney { who: said }
            | Self::BestInterests { why: said }
            | Self::Refused { how: said } => said,
        }
    }

    /// Says who, why or how.
    pub fn say(&mut self, words: String) {
        match self {
            Self::Spoken | Self::Shown | Self::Written => {}
            Self::ByAttorney { who: said }
            | Self::BestInterests { why: said }
            | Self::Refused { how: said } => *said = words,
        }
    }

    /// "in words", "best interests: daughter asked".
    pub fn in_words(&self) -> String {
        filled(self.said()).map_or_else(
            || self.way().to_owned(),
            |said| format!("{}: {said}", self.way()),
        )
    }
}

impl Reads for Consent {
    fn read(&self, lines: &mut Lines) {
        lines.one(say::asked_for_by(), &*self.asked_for_by);
        lines.one(say::identified_by(), &*self.identified_by);
        lines.one(say::present(), &*self.present);
        lines.one(say::helps_to_follow(), &*self.communication);
        lines.finding(say::capacity(), &self.capacity, Capacity::in_words);
        lines.finding(say::agreed(), &self.agreed, Agreed::in_words);
        lines.one(say::declined(), &*self.declined);
        lines.one(say::note(), &*self.note);
    }
}
