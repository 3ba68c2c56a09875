//! History and its complaints in words.

use super::{Lines, Reads, listed};
use crate::sections::{Complaint, History, Symptom};

impl Complaint {
    /// "pain, left eye: since Sunday"; something else in its own words.
    pub fn in_words(&self) -> String {
        let words = self.words.trim();
        if self.what == Symptom::Other && self.eye.is_none() && !words.is_empty() {
            return words.to_owned();
        }
        let eye = self.eye.map(|eye| format!("{} eye", eye.word()));
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
            return "none".into();
        }
        let each: Vec<String> = all.iter().map(Self::in_words).collect();
        each.join("; ")
    }
}

impl Reads for History {
    fn read(&self, lines: &mut Lines) {
        lines.one("seen because", &*self.reason);
        lines.one("can’t travel because", &*self.cannot_travel);
        lines.one("told by", &*self.told_by);
        lines.finding("complaints", &self.complaints, |all| {
            Complaint::all_in_words(all)
        });
        lines.one("eyes before", &*self.eyes_before);
        lines.one("health", &*self.health);
        lines.one("medicines", &*self.medicines);
        lines.finding("allergies", &self.allergies, Clone::clone);
        lines.one("family", &*self.family);
        let falls = |falls: &u16| match falls {
            0 => "none".to_owned(),
            falls => falls.to_string(),
        };
        lines.finding("falls in twelve months", &self.falls_in_12_months, falls);
        lines.some("gets about", self.mobility.map(|way| way.words().into()));
        lines.one("uses the eyes for", &*self.uses);
    }
}
