//! Words as they are compared: without case, accents and signs.

use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::canonical_combining_class;

/// A text without case and accents. Letters that are no letter with an accent go by how they are written without them.
pub fn fold(text: &str) -> String {
    if text.is_ascii() {
        return text.to_ascii_lowercase();
    }
    let mut folded = String::with_capacity(text.len());
    let letters = text
        .nfd()
        .filter(|letter| canonical_combining_class(*letter) == 0);
    for letter in letters.flat_map(char::to_lowercase) {
        match plain(letter) {
            Some(written) => folded.push_str(written),
            None => folded.push(letter),
        }
    }
    folded
}

/// How a letter of its own is written where a keyboard lacks it. Common practice, no source.
const fn plain(letter: char) -> Option<&'static str> {
    Some(match letter {
        'ß' => "ss",
        'æ' => "ae",
        'œ' => "oe",
        'ø' => "o",
        'ł' => "l",
        'đ' | 'ð' => "d",
        'þ' => "th",
        'ı' => "i",
        _ => return None,
    })
}

/// The words of a text. An apostrophe joins (`O'Hara` is one word), any other sign parts.
pub fn words(text: &str) -> Vec<String> {
    let mut folded = fold(text);
    folded.retain(|letter| !matches!(letter, '\'' | '\u{2019}'));
    let parts = folded.split(|letter: char| !letter.is_alphanumeric());
    parts
        .filter(|word| !word.is_empty())
        .map(str::to_owned)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::words;

    /// From the Unicode standard's decompositions, and common practice for the letters that have none.
    #[test]
    fn case_accents_and_signs_do_not_count() {
        assert_eq!(words("Åse  Übélacker-Ñuñez"), ["ase", "ubelacker", "nunez"]);
        assert_eq!(words("O\u{2019}Hara, ÆGIR Øst"), ["ohara", "aegir", "ost"]);
        assert_eq!(words("Strauß Łukasz"), ["strauss", "lukasz"]);
        assert_eq!(words(" - "), [""; 0]);
    }
}
