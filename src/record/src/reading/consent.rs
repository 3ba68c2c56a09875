//! Capacity and consent in words.

use super::{Lines, Reads, filled};
use crate::sections::{Agreed, Assessed, Capacity, Consent};

impl Assessed {
    fn answers(&self) -> String {
        let four = [
            ("understands it", self.understands),
            ("keeps it in mind", self.retains),
            ("weighs it", self.weighs),
            ("tells the choice", self.communicates),
        ];
        let said = four.map(|(what, yes)| format!("{what}: {}", if yes { "yes" } else { "no" }));
        said.join(", ")
    }
}

impl Capacity {
    /// "can decide, presumed", or the four answers and how they were found.
    pub fn in_words(&self) -> String {
        let can = if self.can_decide() {
            "can decide"
        } else {
            "can’t decide this"
        };
        match self {
            Self::Presumed => format!("{can}, presumed"),
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
    pub const fn way(&self) -> &'static str {
        match self {
            Self::Spoken => "in words",
            Self::Shown => "by going along",
            Self::Written => "in writing",
            Self::ByAttorney { .. } => "somebody with legal power",
            Self::BestInterests { .. } => "best interests",
            Self::Refused { .. } => "did not agree",
        }
    }

    /// What is still to be said of that way.
    pub const fn asks(&self) -> Option<&'static str> {
        match self {
            Self::Spoken | Self::Shown | Self::Written => None,
            Self::ByAttorney { .. } => Some("who agreed, and by what power?"),
            Self::BestInterests { .. } => Some("why is it in their interest, and who was asked?"),
            Self::Refused { .. } => Some("how did they refuse?"),
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
        lines.one("asked for by", &*self.asked_for_by);
        lines.one("identified by", &*self.identified_by);
        lines.one("present", &*self.present);
        lines.one("helps to follow", &*self.communication);
        lines.finding("capacity", &self.capacity, Capacity::in_words);
        lines.finding("agreed", &self.agreed, Agreed::in_words);
        lines.one("declined", &*self.declined);
        lines.one("note", &*self.note);
    }
}
