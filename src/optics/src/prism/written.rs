//! Printing and reading a prism: `2.00 in`, `1.50 up & 2.00 in`, `2.24 @ 296.6`, `0.00`.
//!
//! Names need an eye, the compass does not. The vertical part is written first, names in the language spoken. Reading
//! takes names of every language, `Δ` after an amount, the word `base` before a name, initials, `&` or `and` between the
//! parts, a comma for the point, any spaces. It refuses an amount without a base, a sign, two bases along one line, and
//! initials that mean another base in another language, since each can turn into a wrong prism: `BO` is base out in
//! English and "Basis oben", up, in German, so that where German is spoken only `BI` and `BA` are taken.
//! Amounts in prism dioptres (Δ), 0 to 50; base angle in degrees, 0 to 360. How the trade writes prism is common
//! practice, no source; the compass is that of ISO 8429:1986.

use super::{Base, Prism, Toward};
use crate::format::plain;
use crate::{Eye, OpticsError};
use ::words::Language;
use ::words::optics::prism as say;
use std::fmt;
use thiserror::Error;

/// A part that would print as 0.00 is not printed.
const PRINTS_AS_ZERO: f64 = 0.005;

/// Why a text was not taken as a prism. Each prints one plain sentence.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum ReadError {
    /// It is no prism.
    #[error("{}", say::unreadable(.text))]
    Unreadable {
        /// The text as it came.
        text: String,
    },
    /// An amount without its base.
    #[error("{}", say::no_base(.text))]
    NoBase {
        /// The text as it came.
        text: String,
    },
    /// Two bases along one line.
    #[error("{}", say::two_bases(.text))]
    Twice {
        /// The text as it came.
        text: String,
    },
    /// Initials that mean one base in this language and another in that.
    #[error("{}", say::doubtful_initials(.text))]
    Initials {
        /// The text as it came.
        text: String,
    },
    /// An amount or an angle outside its range.
    #[error(transparent)]
    Refused(#[from] OpticsError),
}

/// The compass form, the same for both eyes.
impl fmt::Display for Prism {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let amount = amount_text(self.amount());
        if self.amount() < PRINTS_AS_ZERO {
            return f.write_str(&amount);
        }
        let angle = plain(self.base_degrees(), 1);
        let angle = if angle == "360" { "0" } else { &angle };
        write!(f, "{amount} @ {angle}")
    }
}

impl Prism {
    /// By names before this eye, the vertical part first; `0.00` for none.
    ///
    /// ```
    /// use optics::{Eye, prism::Prism};
    /// let prism = Prism::new(2.0, -1.0)?;
    /// assert_eq!(prism.written(Eye::Right), "1.00 down & 2.00 in");
    /// assert_eq!(prism.written(Eye::Left), "1.00 down & 2.00 out");
    /// # Ok::<(), optics::OpticsError>(())
    /// ```
    pub fn written(self, eye: Eye) -> String {
        let parts: Vec<String> = [self.vertical(), self.horizontal(eye)]
            .iter()
            .filter(|part| part.amount >= PRINTS_AS_ZERO)
            .map(Toward::to_string)
            .collect();
        if parts.is_empty() {
            amount_text(0.0)
        } else {
            parts.join(" & ")
        }
    }

    /// Reads a prism before this eye, by names or by the compass. See the module for what is taken.
    ///
    /// ```
    /// use optics::{Eye, prism::Prism};
    /// assert_eq!(Prism::read("1.50 BU & 2.00 BI", Eye::Left)?, Prism::new(-2.0, 1.5)?);
    /// assert!(Prism::read("2.00", Eye::Left).is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// [`ReadError`] with a sentence.
    pub fn read(text: &str, eye: Eye) -> Result<Self, ReadError> {
        let undressed = undressed(text);
        if let Some((amount, angle)) = undressed.split_once('@') {
            let angle = number(angle.trim_end_matches('°'), text)?;
            return Ok(Self::at(number(amount, text)?, angle)?);
        }
        if matches!(undressed.parse(), Ok(0.0)) && number(&undressed, text).is_ok() {
            return Ok(Self::NONE);
        }
        match undressed.split('&').collect::<Vec<_>>().as_slice() {
            [one] => Ok(part(one, eye, text)?.1),
            [one, other] => {
                let (first, one) = part(one, eye, text)?;
                let (second, other) = part(other, eye, text)?;
                if first.is_horizontal() == second.is_horizontal() {
                    return Err(ReadError::Twice { text: whole(text) });
                }
                Ok(one + other)
            }
            _ => Err(unreadable(text)),
        }
    }
}

impl fmt::Display for Toward {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", amount_text(self.amount), self.base.said())
    }
}

fn amount_text(amount: f64) -> String {
    // Rounded here because the formatter rounds halves to even.
    format!("{:.2}", (amount * 100.0).round() / 100.0)
}

/// One amount with its named base.
fn part(undressed: &str, eye: Eye, text: &str) -> Result<(Base, Prism), ReadError> {
    let after = undressed.find(|c: char| c.is_ascii_alphabetic());
    let (amount, name) = undressed.split_at(after.unwrap_or(undressed.len()));
    let amount = number(amount, text)?;
    if name.is_empty() {
        return Err(ReadError::NoBase { text: whole(text) });
    }
    let base = match initials(name, text)? {
        Some(base) => base,
        None => named(name).ok_or_else(|| unreadable(text))?,
    };
    Ok((base, Prism::toward(amount, base, eye)?))
}

/// The base that initials stand for in the language spoken.
fn initials(name: &str, text: &str) -> Result<Option<Base>, ReadError> {
    Ok(Some(match (name, ::words::spoken()) {
        ("bi", _) => Base::In,
        ("bo", Language::English) | ("ba", Language::German) => Base::Out,
        ("bu", Language::English) => Base::Up,
        ("bd", Language::English) => Base::Down,
        ("bo" | "bu", Language::German) => {
            return Err(ReadError::Initials { text: whole(text) });
        }
        _ => return Ok(None),
    }))
}

/// The base of a name in any language, with the word for base before it or without.
fn named(name: &str) -> Option<Base> {
    let bare = ["basis", "base"]
        .iter()
        .find_map(|word| name.strip_prefix(word))
        .unwrap_or(name);
    // Who has no ß at hand writes two s.
    let bare = bare.replace("ss", "ß");
    Base::ALL.into_iter().find(|base| {
        let said = |language| ::words::in_language(language, || base.said()) == bare;
        Language::ALL.into_iter().any(said)
    })
}

/// Lower case, without spaces and Δ, with one kind of point and one kind of "and".
fn undressed(text: &str) -> String {
    let kept = text
        .chars()
        .filter(|c| !c.is_whitespace() && !matches!(c, 'Δ' | '∆'));
    let plain: String = kept
        .map(|c| {
            if c == ',' {
                '.'
            } else {
                c.to_ascii_lowercase()
            }
        })
        .collect();
    plain.replace("and", "&").replace("und", "&")
}

/// A decimal number without a sign.
fn number(digits: &str, text: &str) -> Result<f64, ReadError> {
    let is_decimal = digits.chars().all(|c| c.is_ascii_digit() || c == '.');
    let value = digits.parse().ok().filter(|_| is_decimal);
    value.ok_or_else(|| unreadable(text))
}

fn unreadable(text: &str) -> ReadError {
    ReadError::Unreadable { text: whole(text) }
}

fn whole(text: &str) -> String {
    text.trim().to_owned()
}
