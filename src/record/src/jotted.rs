//! A pair of lenses as it is jotted on a slip, typed, or stands in a code that a camera reads: each eye by its word, then its lens
//! as lenses are written ([`optics::written`]), then the addition.
//!
//! ```
//! use record::Jotted;
//!
//! let jotted: Jotted = "R +2.50/-1.00x90 L +2.25/-0.75x85 add +2.50".parse()?;
//! assert_eq!(jotted.lenses.right.unwrap().to_string(), "+2.50 / −1.00 × 90");
//! assert_eq!(jotted.adds.left, Some(2.5));
//!
//! let refused = "R +2.50/-1.00 L +2.25".parse::<Jotted>().unwrap_err();
//! assert!(refused.to_string().starts_with("right eye: "));
//! # Ok::<(), record::JottedError>(())
//! ```
//!
//! `R`, `RE`, `OD` and `right` name the right eye, `L`, `LE`, `OS` and `left` the left one; capitals or not. One addition is of
//! both eyes, two are each of the eye before them. How the trade writes a pair is common practice, no source.

use ::words::record::jotted as say;
use std::str::FromStr;

use optics::SphereCyl;
use optics::written::parse_power;
use thiserror::Error;

use crate::finding::{Eye, Eyes};

/// A pair of lenses as it was jotted.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Jotted {
    /// The lens of each eye; at least one.
    pub lenses: Eyes<Option<SphereCyl>>,
    /// The addition to each, in dioptres.
    pub adds: Eyes<Option<f64>>,
}

/// Why a note is no pair of lenses.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum JottedError {
    /// No eye is named.
    #[error("{}", say::no_eye())]
    NoEye,
    /// It is longer than any note of a pair.
    #[error("{}", say::too_long(&LONGEST))]
    Long,
    /// Something stands before the first eye.
    #[error("{}", say::before_eye(.0))]
    Before(String),
    /// An eye is named twice.
    #[error("{}", say::eye_twice(&.0.said()))]
    Twice(Eye),
    /// What follows an eye is no lens.
    #[error("{}", say::of_eye(&.eye.said(), .why))]
    Lens {
        /// Which eye.
        eye: Eye,
        /// Why.
        why: String,
    },
    /// What follows `add` is no power.
    #[error("{}", say::of_addition(.0))]
    Add(String),
    /// There are more additions than lenses, or two for one eye.
    #[error("{}", say::additions())]
    Adds,
}

/// What a word announces.
#[derive(Clone, Copy)]
enum Announced {
    Lens(Eye),
    Add,
}

/// Words that announce what follows. Common practice, no source.
fn announced(word: &str) -> Option<Announced> {
    match word.to_lowercase().as_str() {
        "r" | "re" | "od" | "right" | "rechts" => Some(Announced::Lens(Eye::Right)),
        "l" | "le" | "os" | "left" | "links" => Some(Announced::Lens(Eye::Left)),
        "add" | "addition" | "nahzusatz" => Some(Announced::Add),
        _ => None,
    }
}

/// A note is short: a longer text is something else. Own choice.
const LONGEST: usize = 300;

impl FromStr for Jotted {
    type Err = JottedError;

    fn from_str(text: &str) -> Result<Self, JottedError> {
        let parts = parts(text)?;
        let mut jotted = Self::default();
        let (mut last, mut adds) = (None, Vec::new());
        for (announced, said) in parts {
            match announced {
                Announced::Lens(eye) => {
                    let lens = SphereCyl::parse(said).map_err(|error| JottedError::Lens {
                        eye,
                        why: error.to_string(),
                    })?;
                    if jotted.lenses.of_mut(eye).replace(lens).is_some() {
                        return Err(JottedError::Twice(eye));
                    }
                    last = Some(eye);
                }
                Announced::Add => {
                    let add = parse_power(said);
                    let add = add.map_err(|error| JottedError::Add(error.to_string()))?;
                    adds.push((last, add));
                }
            }
        }
        if last.is_none() {
            return Err(JottedError::NoEye);
        }
        jotted.adds = adds_of(&jotted.lenses, &adds)?;
        Ok(jotted)
    }
}

/// One addition is of every lens, two are each of the lens before them.
fn adds_of(
    lenses: &Eyes<Option<SphereCyl>>,
    adds: &[(Option<Eye>, f64)],
) -> Result<Eyes<Option<f64>>, JottedError> {
    let mut each = Eyes::default();
    if let [(_, add)] = adds {
        for eye in Eye::BOTH
            .into_iter()
            .filter(|eye| lenses.of(*eye).is_some())
        {
            *each.of_mut(eye) = Some(*add);
        }
        return Ok(each);
    }
    for (eye, add) in adds {
        let eye = eye.ok_or(JottedError::Adds)?;
        if each.of_mut(eye).replace(*add).is_some() {
            return Err(JottedError::Adds);
        }
    }
    Ok(each)
}

/// What is announced, each with the words up to the next.
fn parts(text: &str) -> Result<Vec<(Announced, &str)>, JottedError> {
    if text.chars().count() > LONGEST {
        return Err(JottedError::Long);
    }
    let heads = heads(text);
    let Some((first, _, _)) = heads.first() else {
        return Err(JottedError::NoEye);
    };
    let before = bare(&text[..*first]);
    if !before.is_empty() {
        return Err(JottedError::Before(before.to_owned()));
    }
    let ends = heads.iter().skip(1).map(|(start, ..)| *start);
    let ends = ends.chain([text.len()]);
    let each = heads.iter().zip(ends);
    Ok(each
        .map(|((_, end, announced), next)| (*announced, bare(&text[*end..next])))
        .collect())
}

/// Where each announcing word begins and ends.
fn heads(text: &str) -> Vec<(usize, usize, Announced)> {
    let mut heads = Vec::new();
    let mut start = None;
    for (at, sign) in text.char_indices().chain([(text.len(), ' ')]) {
        match (start, sign.is_alphabetic()) {
            (None, true) => start = Some(at),
            (Some(from), false) => {
                heads.extend(announced(&text[from..at]).map(|announced| (from, at, announced)));
                start = None;
            }
            _ => {}
        }
    }
    heads
}

fn bare(said: &str) -> &str {
    said.trim_matches(|sign: char| sign.is_whitespace() || matches!(sign, ':' | ';' | ',' | '='))
}
