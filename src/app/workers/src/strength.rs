//! To and from the worker that scores.

use crate::{READY, message};
use wasm_bindgen::JsValue;
use zeroize::Zeroizing;

/// How hard a passphrase is to guess.
#[derive(Clone, Debug, PartialEq)]
pub struct Strength {
    /// The decimal logarithm of the number of guesses that it would take.
    pub guesses_log10: f64,
    /// 0 (falls at once) to 4 (out of reach).
    pub score: u8,
    /// One sentence: how good it is, and what would make it better.
    pub hint: String,
}

/// What the worker says.
#[derive(Clone, Debug, PartialEq)]
pub enum StrengthAnswer {
    /// It can be asked now.
    Ready,
    /// The answer to the oldest question without one.
    Scored(Strength),
}

impl Strength {
    /// The question to post.
    pub fn question(passphrase: &str) -> JsValue {
        message::question(&[("passphrase", passphrase.into())])
    }

    /// The passphrase of a question; none where it is no question.
    pub fn asked(message: &JsValue) -> Option<Zeroizing<String>> {
        message::text(message, "passphrase").map(Zeroizing::new)
    }
}

impl StrengthAnswer {
    /// The message to post.
    pub fn to_js(&self) -> JsValue {
        match self {
            Self::Ready => crate::ready(),
            Self::Scored(strength) => message::object(&[
                ("kind", "strength".into()),
                ("guesses_log10", strength.guesses_log10.into()),
                ("score", strength.score.into()),
                ("hint", strength.hint.as_str().into()),
            ]),
        }
    }

    /// Reads a message; none where it is no such answer.
    pub fn from_js(message: &JsValue) -> Option<Self> {
        match message::text(message, "kind")?.as_str() {
            READY => Some(Self::Ready),
            "strength" => Some(Self::Scored(Strength {
                guesses_log10: message::field(message, "guesses_log10").as_f64()?,
                score: u8::try_from(message::whole(message, "score")?).ok()?,
                hint: message::text(message, "hint")?,
            })),
            _ => None,
        }
    }
}
