use serde::{Deserialize, Serialize};

/// A language that the words are kept in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Language {
    /// Complete: the others fall back to it.
    #[default]
    #[serde(rename = "en")]
    English,
    /// German, with the polite "Sie".
    #[serde(rename = "de")]
    German,
}

impl Language {
    /// All of them, in the order of their numbers.
    pub const ALL: [Self; 2] = [Self::English, Self::German];

    /// What its speakers call it.
    pub const fn own_name(self) -> &'static str {
        match self {
            Self::English => "English",
            Self::German => "Deutsch",
        }
    }

    /// Its tag by BCP 47, as a document's `lang` is written.
    pub const fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::German => "de",
        }
    }

    /// The language of a tag, whatever its region: `de-AT` is German.
    ///
    /// ```
    /// use words::Language;
    /// assert_eq!(Language::of_tag("de-AT"), Some(Language::German));
    /// assert_eq!(Language::of_tag("den"), None); // Slavey, by ISO 639-2.
    /// ```
    pub fn of_tag(tag: &str) -> Option<Self> {
        let spoken = tag.split('-').next().unwrap_or(tag);
        Self::ALL
            .into_iter()
            .find(|language| language.tag().eq_ignore_ascii_case(spoken))
    }

    /// Whether a comma stands before the decimals, for whoever has not chosen (CLDR: `numbers/symbols/decimal`).
    pub const fn writes_comma(self) -> bool {
        matches!(self, Self::German)
    }
}
