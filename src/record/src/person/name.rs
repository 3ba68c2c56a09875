//! What a person is called.

use serde::{Deserialize, Serialize};

/// A person's name, as two fields.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Name {
    /// The given name or names.
    pub given: String,
    /// The family name.
    pub family: String,
}

impl std::fmt::Display for Name {
    /// `Orla Pennyquick`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let both = format!("{} {}", self.given.trim(), self.family.trim());
        f.write_str(both.trim())
    }
}
