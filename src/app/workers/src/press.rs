//! To and from the worker that makes files.

use papers::Document;
use papers::log::{Column, Visit};
use record::{ExamId, PersonId, Section};
use serde::{Deserialize, Serialize};
use serde_bytes::ByteBuf;
use wasm_bindgen::JsValue;

use crate::{READY, message};

/// What the page asks.
#[derive(Serialize, Deserialize)]
pub enum Job {
    /// A paper as PDF.
    Pdf {
        /// The paper.
        document: Document,
        /// On which sheets.
        size: PaperSize,
    },
    /// The log as comma-separated values.
    Csv(Log),
    /// The log as a workbook.
    Workbook(Log),
    /// Exams as a FHIR bundle.
    Bundle {
        /// The entries that tell of them (`Story::excerpt`), each as its bytes.
        entries: Vec<ByteBuf>,
        /// Which exams, in this order.
        exams: Vec<ExamId>,
    },
    /// A person with all exams as a FHIR bundle.
    Whole {
        /// The entries that tell of them (`Story::excerpt_of`), each as its bytes.
        entries: Vec<ByteBuf>,
        /// Who.
        person: PersonId,
    },
    /// A FHIR file to be read.
    Read {
        /// What stands in it.
        text: String,
    },
}

/// Visits under chosen columns.
#[derive(Serialize, Deserialize)]
pub struct Log {
    /// The columns, in this order.
    pub columns: Vec<Column>,
    /// The visits.
    pub visits: Vec<Visit>,
}

/// A size of paper.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PaperSize {
    /// 210 by 297 mm (ISO 216).
    #[default]
    A4,
    /// 8.5 by 11 inches.
    Letter,
}

/// What the worker gives.
#[derive(Serialize, Deserialize)]
pub enum Made {
    /// A file.
    File {
        /// Its bytes.
        bytes: ByteBuf,
        /// Letters that no built-in font has; each stands as a question mark.
        lacking: String,
    },
    /// What a FHIR file holds.
    Taken(Taken),
    /// Why there is nothing, in a sentence.
    Refused(String),
}

/// What a FHIR file holds.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Taken {
    /// Each prescription, as findings of its day.
    pub earlier: Vec<Earlier>,
    /// What was found, and what to look at, one sentence each.
    pub report: Vec<String>,
    /// What belongs to no prescription and was not taken in.
    pub left_over: Vec<String>,
}

/// One prescription as findings of its day.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Earlier {
    /// Whose it is, as the file names them.
    pub person: Option<String>,
    /// The day of birth that the file gives.
    pub born: Option<chrono::NaiveDate>,
    /// When it was written.
    pub on: chrono::NaiveDate,
    /// The sections that keep it, with what has no place in words.
    pub sections: Vec<Section>,
    /// What of it has no place here.
    pub left_over: Vec<String>,
}

/// What the worker says.
pub enum PressAnswer {
    /// It can be asked now.
    Ready,
    /// So many parts of so many are made.
    SoFar {
        /// How many are made.
        done: usize,
        /// Of how many.
        of: usize,
    },
    /// What came of the one question.
    Made(Made),
}

impl Job {
    /// The message to post.
    pub fn to_js(&self) -> JsValue {
        message::question(&[("job", message::packed(self))])
    }

    /// Reads a message; none where it is no such question.
    pub fn from_js(message: &JsValue) -> Option<Self> {
        message::unpacked(message, "job")
    }
}

impl PressAnswer {
    /// The message to post.
    pub fn to_js(&self) -> JsValue {
        match self {
            Self::Ready => crate::ready(),
            Self::SoFar { done, of } => message::object(&[
                ("kind", "so-far".into()),
                ("done", (*done as f64).into()),
                ("of", (*of as f64).into()),
            ]),
            Self::Made(made) => {
                message::object(&[("kind", "made".into()), ("made", message::packed(made))])
            }
        }
    }

    /// Reads a message; none where it is no such answer.
    pub fn from_js(message: &JsValue) -> Option<Self> {
        match message::text(message, "kind")?.as_str() {
            READY => Some(Self::Ready),
            "so-far" => Some(Self::SoFar {
                done: message::whole(message, "done")? as usize,
                of: message::whole(message, "of")? as usize,
            }),
            "made" => message::unpacked(message, "made").map(Self::Made),
            _ => None,
        }
    }
}
