//! To and from the worker that makes people up.

use crate::{READY, message};
use js_sys::{Array, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};

/// What the page asks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MadeUpRequest {
    /// The day before which all exams lie: year-month-day.
    pub today: String,
}

/// What the worker says: that it is ready, then how many people there are, then every one of them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MadeUpAnswer {
    /// It can be asked now.
    Ready,
    /// What will come.
    Island {
        /// How many people.
        people: usize,
        /// Who signed.
        examiner: String,
    },
    /// A person.
    Life(Life),
}

/// A person and what was written about them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Life {
    /// Who: a UUID’s bytes.
    pub person: [u8; 16],
    /// Entries as CBOR, in the order in which they were written.
    pub entries: Vec<Vec<u8>>,
}

impl MadeUpRequest {
    /// The message to post.
    pub fn to_js(&self) -> JsValue {
        message::object(&[("today", self.today.as_str().into())])
    }

    /// Reads a message; none where it is no such request.
    pub fn from_js(message: &JsValue) -> Option<Self> {
        let today = message::text(message, "today")?;
        Some(Self { today })
    }
}

impl MadeUpAnswer {
    /// The message to post.
    pub fn to_js(&self) -> JsValue {
        match self {
            Self::Ready => crate::ready(),
            Self::Island { people, examiner } => message::object(&[
                ("kind", "island".into()),
                ("people", (*people as u32).into()),
                ("examiner", examiner.into()),
            ]),
            Self::Life(life) => {
                let entries = life.entries.iter();
                let entries: Array = entries
                    .map(|entry| Uint8Array::from(entry.as_slice()))
                    .collect();
                message::object(&[
                    ("kind", "life".into()),
                    ("person", Uint8Array::from(life.person.as_slice()).into()),
                    ("entries", entries.into()),
                ])
            }
        }
    }

    /// Reads a message; none where it is no such answer.
    pub fn from_js(message: &JsValue) -> Option<Self> {
        match message::text(message, "kind")?.as_str() {
            READY => Some(Self::Ready),
            "island" => Some(Self::Island {
                people: message::whole(message, "people")? as usize,
                examiner: message::text(message, "examiner")?,
            }),
            "life" => {
                let entries = message::field(message, "entries")
                    .dyn_into::<Array>()
                    .ok()?;
                let bytes = |entry: JsValue| entry.dyn_into::<Uint8Array>().ok();
                let entries = entries.iter().map(|entry| Some(bytes(entry)?.to_vec()));
                Some(Self::Life(Life {
                    person: message::bytes(message, "person")?,
                    entries: entries.collect::<Option<_>>()?,
                }))
            }
            _ => None,
        }
    }
}
