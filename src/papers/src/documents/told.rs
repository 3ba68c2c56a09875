//! What was told beside the record, as words under names: a draft while it is changed, and kept with a paper that leaves.
//!
//! Only what differs from the proposal is named, so that what was left as it was follows the record.

use std::collections::BTreeMap;

use super::{InFrame, Letter, Wording};

/// Words under names.
pub type Told = BTreeMap<String, String>;

/// A text of a letter, by its name.
type Text = (&'static str, fn(&mut Letter) -> &mut String);

const TEXTS: [Text; 4] = [
    ("to", |letter| &mut letter.to),
    ("opening", |letter| &mut letter.opening),
    ("asked", |letter| &mut letter.asked),
    ("closing", |letter| &mut letter.closing),
];

const NOTE: &str = "note";
const CONTACT: &str = "contact";
const YES: &str = "yes";
const NO: &str = "no";

impl Wording {
    /// What differs from the proposal.
    pub fn told(&self, proposed: &Self) -> Told {
        let mut told = Told::new();
        if let (Some(letter), Some(before)) = (&self.letter, &proposed.letter) {
            tell_letter(&mut told, letter, before);
        }
        for (name, words) in [(NOTE, &self.note.words), (CONTACT, &self.note.contact)] {
            if !words.trim().is_empty() {
                told.insert(name.to_owned(), words.clone());
            }
        }
        for (at, frame) in self.frames.iter().enumerate() {
            if let Some(mm) = frame.middles_mm {
                told.insert(middles(at), mm.to_string());
            }
            if frame.compensate {
                told.insert(compensate(at), YES.to_owned());
            }
        }
        told
    }

    /// The proposal with what was told in place of its own; a finding that is there no more is passed over.
    #[must_use]
    pub fn with(mut self, told: &Told) -> Self {
        if let Some(letter) = &mut self.letter {
            for (name, text) in TEXTS {
                if let Some(words) = told.get(name) {
                    text(letter).clone_from(words);
                }
            }
            for at in 0..letter.findings.len() {
                let name = finding(letter, at);
                if let Some(said) = told.get(&name) {
                    letter.findings[at].told = said == YES;
                }
            }
        }
        let words = |name: &str| told.get(name).cloned().unwrap_or_default();
        self.note.words = words(NOTE);
        self.note.contact = words(CONTACT);
        self.frames = frames(told);
        self
    }
}

fn tell_letter(told: &mut Told, letter: &Letter, before: &Letter) {
    let (mut letter, mut before) = (letter.clone(), before.clone());
    for (name, text) in TEXTS {
        let words = text(&mut letter);
        if words != text(&mut before) {
            told.insert(name.to_owned(), words.clone());
        }
    }
    let pairs = letter.findings.iter().zip(&before.findings).enumerate();
    for (at, _) in pairs.filter(|(_, (now, then))| now.told != then.told) {
        let said = if letter.findings[at].told { YES } else { NO };
        told.insert(finding(&letter, at), said.to_owned());
    }
}

/// `told acuity: unaided`, and a number where there are several of that name.
fn finding(letter: &Letter, at: usize) -> String {
    let named = |at: usize| {
        let finding = &letter.findings[at];
        format!("told {}: {}", finding.section.slug(), finding.line.label)
    };
    let name = named(at);
    match (0..at).filter(|other| named(*other) == name).count() {
        0 => name,
        before => format!("{name} ({})", before + 1),
    }
}

fn middles(at: usize) -> String {
    format!("frame {}: middles, mm", at + 1)
}

fn compensate(at: usize) -> String {
    format!("frame {}: compensated", at + 1)
}

fn frames(told: &Told) -> Vec<InFrame> {
    let frame = |at| InFrame {
        middles_mm: told.get(&middles(at)).and_then(|mm| mm.parse().ok()),
        compensate: told.get(&compensate(at)).is_some_and(|said| said == YES),
    };
    let named =
        |at: &usize| told.contains_key(&middles(*at)) || told.contains_key(&compensate(*at));
    // An order has a few pairs; one that nothing is told of may stand before another.
    let last = (0..MOST_PAIRS).rev().find(named);
    last.map_or_else(Vec::new, |last| (0..=last).map(frame).collect())
}

/// More pairs than anybody orders at once. Own choice.
const MOST_PAIRS: usize = 16;
