//! The estimate, in our own words.

use words::app::workers as say;
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
        0 => say::score_0(),
        1 => say::score_1(),
        2 => say::score_2(),
        3 => say::score_3(),
        _ => say::score_4(),
    };
    match warning.map(weakness) {
        Some(weakness) if score < 4 => say::because(&how_good, &weakness),
        _ if score < 3 => say::add_words(&how_good),
        _ => how_good.to_owned(),
    }
}

fn weakness(warning: Warning) -> &'static str {
    match warning {
        Warning::StraightRowsOfKeysAreEasyToGuess
        | Warning::ShortKeyboardPatternsAreEasyToGuess => say::side_by_side(),
        Warning::RepeatsLikeAaaAreEasyToGuess
        | Warning::RepeatsLikeAbcAbcAreOnlySlightlyHarderToGuess => say::same_letters(),
        Warning::ThisIsATop10Password
        | Warning::ThisIsATop100Password
        | Warning::ThisIsACommonPassword
        | Warning::ThisIsSimilarToACommonlyUsedPassword => say::many_use(),
        Warning::SequencesLikeAbcAreEasyToGuess => say::in_a_row(),
        Warning::RecentYearsAreEasyToGuess | Warning::DatesAreOftenEasyToGuess => say::years(),
        Warning::AWordByItselfIsEasyToGuess => say::one_word(),
        Warning::NamesAndSurnamesByThemselvesAreEasyToGuess
        | Warning::CommonNamesAndSurnamesAreEasyToGuess => say::names(),
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
