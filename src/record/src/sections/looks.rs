//! How a part of the eye looks: normal, or in the examiner's words.

use ::words::record::sections as say;
use serde::{Deserialize, Serialize};

use crate::check::{Checks, blank};
use crate::finding::{Eye, Finding};

/// How a part of the eye looks.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Looks {
    /// Nothing out of the ordinary.
    Normal,
    /// Something else, in the examiner's words.
    Other(String),
}

impl Finding<Looks> {
    /// Normal, in one tap.
    pub const NORMAL: Self = Self::Done(Looks::Normal);
}

impl Checks {
    /// How a part looks: in words where it is not normal, or with the reason why it was not looked at.
    pub fn looks(&mut self, eye: Eye, part: &str, finding: &Finding<Looks>) {
        self.reason(eye, part, finding);
        if let Some(Looks::Other(words)) = finding.done()
            && blank(words)
        {
            self.say(Self::name(eye, part), say::ask_how_it_looks());
        }
    }
}
