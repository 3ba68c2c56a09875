//! One line of a working or of an answer.

/// What a line is, in plain words, and its value as written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// What the line is, in plain words.
    pub label: String,
    /// Its value as written: a lens, a number with its unit, or a sentence.
    pub value: String,
}

impl Line {
    pub(crate) fn new(label: impl Into<String>, value: impl ToString) -> Self {
        Self {
            label: label.into(),
            value: value.to_string(),
        }
    }
}
