//! What is usual in a language, for whoever has not chosen.

use crate::{DecimalMark, Manner};
use ::words::Language;

impl DecimalMark {
    /// The mark that the language's writers put before the decimals.
    pub const fn usual_in(language: Language) -> Self {
        if language.writes_comma() {
            Self::Comma
        } else {
            Self::Point
        }
    }
}

impl Manner {
    /// The manner of somebody who reads this language and has chosen nothing.
    pub fn usual_in(language: Language) -> Self {
        Self {
            decimal: DecimalMark::usual_in(language),
            ..Self::default()
        }
    }

    /// After a change of the language: what was as is usual in the one before becomes what is usual in the next; what was
    /// chosen stays.
    ///
    /// ```
    /// use record::{DecimalMark, Manner};
    /// use words::Language::{English, German};
    /// let usual = Manner::usual_in(English);
    /// assert_eq!(usual.decimal, DecimalMark::Point);
    /// assert_eq!(usual.gone_over(English, German).decimal, DecimalMark::Comma);
    /// let chosen = Manner { decimal: DecimalMark::Point, ..Manner::usual_in(German) };
    /// assert_eq!(chosen.gone_over(German, English), chosen);
    /// ```
    #[must_use]
    pub fn gone_over(self, before: Language, next: Language) -> Self {
        let follows = self.decimal == DecimalMark::usual_in(before);
        let decimal = if follows {
            DecimalMark::usual_in(next)
        } else {
            self.decimal
        };
        Self { decimal, ..self }
    }
}
