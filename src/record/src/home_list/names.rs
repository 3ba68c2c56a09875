//! A whole name in one cell, taken apart.

use crate::person::Name;

/// Titles are no part of a name.
const TITLES: [&str; 9] = ["mr", "mrs", "ms", "miss", "mx", "dr", "sir", "lady", "rev"];

/// `Pennyquick, Orla` and `PENNYQUICK Orla` have the family name first, anything else has it last. One word is a family name.
pub fn split(whole: &str) -> Name {
    if let Some((family, given)) = whole.split_once(',') {
        return named(words(given), words(family));
    }
    let mut words = words(whole);
    let shouted = words.iter().take_while(|word| is_shouted(word)).count();
    let at = if shouted > 0 && shouted < words.len() {
        words.rotate_left(shouted);
        words.len() - shouted
    } else {
        words.len().saturating_sub(1)
    };
    let family = words.split_off(at);
    named(words, family)
}

fn named(given: Vec<&str>, family: Vec<&str>) -> Name {
    Name {
        given: given.join(" "),
        family: family.join(" "),
    }
}

fn words(text: &str) -> Vec<&str> {
    let is_title = |word: &&str| {
        let bare = word.trim_end_matches('.').to_lowercase();
        TITLES.contains(&bare.as_str())
    };
    text.split_whitespace()
        .filter(|word| !is_title(word))
        .collect()
}

/// Two capitals or more and nothing small: an initial is not shouted.
fn is_shouted(word: &str) -> bool {
    let letters = || word.chars().filter(|c| c.is_alphabetic());
    letters().count() > 1 && letters().all(|c| !c.is_lowercase())
}
