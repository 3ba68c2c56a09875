//! Passphrases: offering one of random words, and refusing one that falls to guessing.

use crate::random::{NoRandomness, random};

/// The words: short, plain, harmless, all different.
static WORDS: &str = include_str!("words.txt");

/// Fewest characters of a passphrase.
pub const SHORTEST: usize = 12;
/// Most characters of a passphrase.
pub const LONGEST: usize = 1024;
/// Fewest different characters of a passphrase.
const FEWEST_DIFFERENT: usize = 5;

/// Why a passphrase is refused for a new vault.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum PassphraseError {
    /// A PIN, however long it looks: six digits fall in hours to anyone who holds a copy of the vault.
    #[error("digits alone are guessed in hours by someone who holds a copy: use words")]
    OnlyDigits,
    /// Shorter than [`SHORTEST`].
    #[error("this is too short: use at least {SHORTEST} letters, best as several words")]
    TooShort,
    /// Longer than [`LONGEST`].
    #[error("this is longer than {LONGEST} letters: use fewer words")]
    TooLong,
    /// The same few characters over and over.
    #[error("the same few letters over and over are quickly guessed: use different words")]
    TooFewDifferent,
}

/// The form in which a passphrase counts: without blanks at either end, one space where several stand.
///
/// So a double space or one typed at the end by an eager keyboard shuts nobody out. Nothing else is changed: capitals
/// count, and an accented letter counts as it was typed.
pub fn normal(passphrase: &str) -> String {
    passphrase.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Refuses a passphrase that must not guard a vault.
///
/// # Errors
///
/// Digits only, too short, too long, or of too few different characters; each error is a sentence for the field.
pub fn check(passphrase: &str) -> Result<(), PassphraseError> {
    let normal = normal(passphrase);
    let length = normal.chars().count();
    if length > 0
        && !normal.chars().any(char::is_alphabetic)
        && normal.chars().any(|c| c.is_ascii_digit())
    {
        return Err(PassphraseError::OnlyDigits);
    }
    if length < SHORTEST {
        return Err(PassphraseError::TooShort);
    }
    if length > LONGEST {
        return Err(PassphraseError::TooLong);
    }
    let mut different: Vec<char> = normal.chars().collect();
    different.sort_unstable();
    different.dedup();
    if different.len() < FEWEST_DIFFERENT {
        Err(PassphraseError::TooFewDifferent)
    } else {
        Ok(())
    }
}

/// A passphrase of `words` words drawn at random, with a space between them.
///
/// # Errors
///
/// The system gives no random numbers.
pub fn offer(words: usize) -> Result<String, NoRandomness> {
    let list: Vec<&str> = WORDS.lines().collect();
    let drawn: Result<Vec<&str>, NoRandomness> =
        (0..words).map(|_| Ok(list[draw(list.len())?])).collect();
    Ok(drawn?.join(" "))
}

/// The word at this place of the list, which begins again after its end.
pub(crate) fn word(place: u64) -> &'static str {
    let count = WORDS.lines().count() as u64;
    WORDS.lines().nth((place % count) as usize).unwrap_or("")
}

/// How hard an offered passphrase is to guess, in bits: log2 of the number of equally likely passphrases.
pub fn bits(words: usize) -> f64 {
    (WORDS.lines().count() as f64).log2() * words as f64
}

/// An even draw from `0..below`: numbers from the ragged end of the range are drawn again.
fn draw(below: usize) -> Result<usize, NoRandomness> {
    let below = below as u64;
    let whole = u64::from(u32::MAX) + 1;
    let usable = whole - whole % below;
    loop {
        let drawn = u64::from(u32::from_be_bytes(random()?));
        if drawn < usable {
            return Ok((drawn % below) as usize);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::HashSet;

    #[test]
    fn the_words_are_short_plain_and_all_different() {
        let words: Vec<&str> = WORDS.lines().collect();
        assert!(words.len() >= 1024, "{} words", words.len());
        assert_eq!(words.iter().collect::<HashSet<_>>().len(), words.len());
        for word in words {
            assert!(
                (3..=8).contains(&word.len()) && word.bytes().all(|b| b.is_ascii_lowercase()),
                "{word}"
            );
        }
    }

    // Computed from the formula: log2(1295) is 10.3388, six times that 62.0.
    #[test]
    fn six_words_are_more_than_sixty_bits() {
        assert!(bits(6) >= 60.0, "{}", bits(6));
        assert!((bits(6) - 62.03).abs() < 0.01, "{}", bits(6));
    }

    #[test]
    fn an_offer_has_the_words_asked_for_differs_each_time_and_is_accepted() {
        let (one, other) = (offer(6).unwrap(), offer(6).unwrap());
        assert_eq!(one.split(' ').count(), 6);
        assert_ne!(one, other);
        assert_eq!(check(&one), Ok(()));
    }

    #[test]
    fn draws_are_even() {
        let mut counts = [0_u32; 10];
        for _ in 0..10_000 {
            counts[draw(10).unwrap()] += 1;
        }
        // Computed: each count is binomial(10000, 0.1), standard deviation 30; 200 away is beyond six of them.
        assert!(
            counts.iter().all(|count| count.abs_diff(1000) < 200),
            "{counts:?}"
        );
    }

    #[test]
    fn a_pin_is_refused_however_it_is_spaced_or_long() {
        for pin in [
            "123456",
            "0000",
            "1234 5678 9012 3456",
            "12-34-56-78-90-12",
            "31415926535897932384",
        ] {
            assert_eq!(check(pin), Err(PassphraseError::OnlyDigits), "{pin}");
        }
    }

    #[test]
    fn short_long_and_monotonous_passphrases_are_refused() {
        assert_eq!(check(""), Err(PassphraseError::TooShort));
        assert_eq!(check("  amber fern  "), Err(PassphraseError::TooShort));
        assert_eq!(
            check("abababababababab"),
            Err(PassphraseError::TooFewDifferent)
        );
        assert_eq!(check(&"word ".repeat(300)), Err(PassphraseError::TooLong));
        assert_eq!(check("amber lantern 9"), Ok(()));
    }

    #[test]
    fn only_the_blanks_are_evened_out() {
        assert_eq!(normal("  amber \t lantern\n"), "amber lantern");
        assert_ne!(normal("Amber lantern"), normal("amber lantern"));
    }
}
