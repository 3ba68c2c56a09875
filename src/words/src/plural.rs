//! Which form of a sentence goes with how many things.

use crate::Language;

/// A category of the plural rules of the Unicode CLDR; only those that the languages here have for whole numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Plural {
    One,
    Other,
}

/// The form for whole things. CLDR, cardinal rules: in English and in German `one` is `i = 1 and v = 0`, the rest `other`.
pub(crate) const fn plural(language: Language, count: usize) -> Plural {
    match (language, count) {
        (Language::English | Language::German, 1) => Plural::One,
        (Language::English | Language::German, _) => Plural::Other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use intl_pluralrules::{PluralCategory, PluralRuleType, PluralRules};

    /// Unicode CLDR, cardinal plural rules, as `intl_pluralrules` carries them.
    #[test]
    fn the_forms_are_those_of_the_cldr() {
        for language in Language::ALL {
            let tag: unic_langid::LanguageIdentifier = language.tag().parse().unwrap();
            let rules = PluralRules::create(tag, PluralRuleType::CARDINAL).unwrap();
            for count in (0..=1100).chain([10_001, 1_000_000, 1_000_001]) {
                let theirs = match rules.select(count).unwrap() {
                    PluralCategory::ONE => Plural::One,
                    PluralCategory::OTHER => Plural::Other,
                    unlike => panic!("{language:?} has the form {unlike:?}"),
                };
                assert_eq!(plural(language, count), theirs, "{language:?}, {count}");
            }
        }
    }
}
