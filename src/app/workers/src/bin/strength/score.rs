//! The estimate, in our own words.

use workers::Strength;
use zxcvbn::feedback::Warning;

/// The estimate reads this many characters and no more: longer is not weaker.
const READ: usize = 100;

/// How hard a passphrase is to guess.
pub fn score(passphrase: &str) -> Strength {
    let normal = vault::phrase::normal(passphrase);
    let read: String = normal.chars().take(READ).collect();
    let found = zxcvbn::zxcvbn(&read, &["lightround"]);
    let score = u8::from(found.score());
    let warning = found
        .feedback()
        .and_then(zxcvbn::feedback::Feedback::warning);
    Strength {
        // Nothing typed is one guess away, not minus infinity.
        guesses_log10: found.guesses_log10().max(0.0),
        score,
        hint: hint(score, warning),
    }
}

fn hint(score: u8, warning: Option<Warning>) -> String {
    let how_good = match score {
        0 => "this is guessed at once",
        1 => "this is guessed quickly",
        2 => "this holds out for a while, and not long enough",
        3 => "this is fair; one more word makes it good",
        _ => "this is out of reach of guessing",
    };
    match warning.map(weakness) {
        Some(weakness) if score < 4 => format!("{how_good}: {weakness}"),
        _ if score < 3 => format!("{how_good}: add words that have nothing to do with one another"),
        _ => how_good.to_owned(),
    }
}

fn weakness(warning: Warning) -> &'static str {
    match warning {
        Warning::StraightRowsOfKeysAreEasyToGuess
        | Warning::ShortKeyboardPatternsAreEasyToGuess => {
            "keys that lie side by side are tried first"
        }
        Warning::RepeatsLikeAaaAreEasyToGuess
        | Warning::RepeatsLikeAbcAbcAreOnlySlightlyHarderToGuess => {
            "the same letters again add next to nothing"
        }
        Warning::ThisIsATop10Password
        | Warning::ThisIsATop100Password
        | Warning::ThisIsACommonPassword
        | Warning::ThisIsSimilarToACommonlyUsedPassword => {
            "many people use it or something like it"
        }
        Warning::SequencesLikeAbcAreEasyToGuess => "letters or digits in a row are tried first",
        Warning::RecentYearsAreEasyToGuess | Warning::DatesAreOftenEasyToGuess => {
            "years and dates are tried first"
        }
        Warning::AWordByItselfIsEasyToGuess => "one word alone is in every list: add others",
        Warning::NamesAndSurnamesByThemselvesAreEasyToGuess
        | Warning::CommonNamesAndSurnamesAreEasyToGuess => "names are tried first",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Common practice, no source: what stands at the top of every list of leaked passwords.
    #[test]
    fn what_everybody_uses_scores_nothing_and_says_why() {
        let found = score("password1");
        assert_eq!(found.score, 0);
        assert!(found.hint.contains("many people use it"), "{}", found.hint);
    }

    // Computed: six words of 1024 or more are at least 2^60, about 10^18 guesses; the estimate may be off by some, not
    // by half.
    #[test]
    fn six_offered_words_score_highest() {
        let offered = vault::phrase::offer(6).unwrap();
        let found = score(&offered);
        assert_eq!(found.score, 4, "{offered}");
        assert!(
            found.guesses_log10 > 14.0,
            "{offered}: {}",
            found.guesses_log10
        );
    }

    #[test]
    fn nothing_typed_is_a_finite_answer() {
        let found = score("");
        assert_eq!((found.score, found.guesses_log10), (0, 0.0));
    }

    #[test]
    fn ten_thousand_characters_are_answered_at_once() {
        let started = std::time::Instant::now();
        score(&"amber lantern ".repeat(700));
        assert!(started.elapsed().as_secs() < 10);
    }

    #[test]
    fn every_score_has_a_sentence() {
        for score in 0..=4 {
            assert!(hint(score, None).starts_with("this "));
        }
    }
}
