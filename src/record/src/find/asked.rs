//! What was asked, cut into pieces; where a date may be meant, both ways to take it.

use super::birth::Birth;
use super::fold::{fold, words};

/// One piece of what was asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Piece {
    /// The piece as a word; empty where it can only be a birth.
    pub word: String,
    /// The piece as a birth, where it can be one.
    pub birth: Option<Birth>,
}

/// Every way to take what was asked: word by word, and with dates that are written with blanks. Each needs all its pieces.
pub fn ways(asked: &str) -> Vec<Vec<Piece>> {
    let tokens: Vec<&str> = asked.split_whitespace().collect();
    let plain = tokens.iter().flat_map(|token| pieces(token)).collect();
    let mut ways = vec![plain];
    ways.extend(with_spaced_date(&tokens));
    ways
}

/// A date with signs between its figures is a birth; anything else is its words, of which a year may be a birth too.
fn pieces(token: &str) -> Vec<Piece> {
    let birth = Birth::read(token.trim_end_matches([',', ';']));
    let words = words(token);
    match (birth, words.as_slice()) {
        (Some(birth), [_, _, ..]) => vec![Piece {
            word: String::new(),
            birth: Some(birth),
        }],
        (birth, _) => words
            .into_iter()
            .map(|word| Piece {
                word,
                birth: birth.clone(),
            })
            .collect(),
    }
}

/// The same where the tokens hold a date written with blanks, `12 March 1938` or `12 3 38`, with whatever stands about it.
fn with_spaced_date(tokens: &[&str]) -> Option<Vec<Piece>> {
    (2..=3).rev().find_map(|long| {
        (0..tokens.len().saturating_sub(long - 1)).find_map(|from| {
            let folded: Vec<String> = tokens[from..from + long]
                .iter()
                .map(|token| fold(token.trim_end_matches(['.', ',', ';'])))
                .collect();
            let parts: Vec<&str> = folded.iter().map(String::as_str).collect();
            let birth = Birth::of_parts(&parts)?;
            let about = tokens[..from].iter().chain(&tokens[from + long..]);
            let mut way: Vec<Piece> = about.flat_map(|token| pieces(token)).collect();
            way.push(Piece {
                word: String::new(),
                birth: Some(birth),
            });
            Some(way)
        })
    })
}
