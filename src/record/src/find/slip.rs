//! One slip of a finger: a letter missing, one too many, another one, or two swapped.

/// Whether the word, or its beginning, is what was asked but for one slip.
pub fn is_one_slip_off(asked: &str, word: &str) -> bool {
    if asked.is_ascii() && word.is_ascii() {
        return one_slip(asked.as_bytes(), word.as_bytes());
    }
    let letters = |text: &str| text.chars().collect::<Vec<_>>();
    one_slip(&letters(asked), &letters(word))
}

fn one_slip<T: PartialEq>(asked: &[T], word: &[T]) -> bool {
    let alike = asked
        .iter()
        .zip(word)
        .take_while(|(one, other)| one == other)
        .count();
    let (asked, word) = (&asked[alike..], &word[alike..]);
    let after = |skip_asked: usize, skip_word: usize| match (
        asked.get(skip_asked..),
        word.get(skip_word..),
    ) {
        (Some(asked), Some(word)) => word.starts_with(asked),
        _ => false,
    };
    let swapped = || {
        let ends = |at: usize| Some((asked.get(at)?, word.get(1 - at)?));
        matches!((ends(0), ends(1)), (Some(one), Some(other)) if one.0 == one.1 && other.0 == other.1)
            && after(2, 2)
    };
    after(0, 1) || after(1, 0) || after(1, 1) || swapped()
}

#[cfg(test)]
mod tests {
    use super::is_one_slip_off;

    #[test]
    fn one_slip_is_forgiven_and_two_are_not() {
        for asked in [
            "penyquick",
            "pennyquiick",
            "pennyqnick",
            "pennyquikc",
            "ennyquick",
            "penyq",
            "épennyquick",
        ] {
            assert!(is_one_slip_off(asked, "pennyquick"), "{asked}");
        }
        for asked in ["peyquick", "penniquik", "nepnyquikc", "oakhollow"] {
            assert!(!is_one_slip_off(asked, "pennyquick"), "{asked}");
        }
    }
}
