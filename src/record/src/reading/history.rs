//! History and its complaints in words.

use super::{Lines, Reads, listed};
use crate::sections::{Complaint, History, Symptom};
use ::words::record::reading as say;

impl Complaint {
    /// "pain, left eye: since Sunday"; something else in its own words.
    pub fn in_words(&self) -> String {
        let words = self.words.trim();
        if self.what == Symptom::Other && self.eye.is_none() && !words.is_empty() {
            return words.to_owned();
        }
        let eye = self.eye.map(|eye| say::complaint_eye(&eye.said()));
        let what = listed([Some(self.what.words().to_owned()), eye]);
        if words.is_empty() {
            what
        } else {
            format!("{what}: {words}")
        }
    }

    /// All of them; "none" where the person was asked and has none.
    pub fn all_in_words(all: &[Self]) -> String {
        if all.is_empty() {
            return say::none_told().into();
        }
        let each: Vec<String> = all.iter().map(Self::in_words).collect();
        each.join("; ")
    }
}

impl Reads for History {
    fn read(&self, lines: &mut Lines) {
        lines.one(say::seen_because(), &*self.reason);
        lines.one(say::cannot_travel_because(), &*self.cannot_travel);
        lines.one(say::told_by(), &*self.told_by);
        lines.finding(say::complaints(), &self.complaints, |all| {
            Complaint::all_in_words(all)
        });
        lines.one(say::eyes_before(), &*self.eyes_before);
        lines.one(say::health(), &*self.health);
        lines.one(say::medicines(), &*self.medicines);
        lines.finding(say::allergies(), &self.allergies, Clone::clone);
        lines.one(say::family(), &*self.family);
        let falls = |falls: &u16| match falls {
            0 => say::none_told().to_owned(),
            falls => falls.to_string(),
        };
        lines.finding(
            say::falls_in_twelve_months(),
            &self.falls_in_12_months,
            falls,
        );
        lines.some(
            say::gets_about(),
            self.mobility.map(|way| way.words().into()),
        );
        lines.one(say::uses_the_eyes_for(), &*self.uses);
    }
}
