//! Slow, heavy work that runs beside the page: the messages that go to and fro.
//!
//! Three workers, each a wasm module of its own, started by the page from its loader script:
//!
//! - [`STRETCH_LOADER`]: a passphrase to a slot key. One question to a worker; end it (`Worker::terminate`) when it has
//!   answered, so that its memory goes back. A worker that is short of memory may also just fail with an `error` event.
//! - [`STRENGTH_LOADER`]: how hard a passphrase is to guess. Any number of questions, answered in the order in which they
//!   were asked.
//! - [`MADE_UP_LOADER`]: made-up people, for looking around. One question to a worker; after the answer that tells how many
//!   there are, each of them comes by itself.
//! - [`PRESS_LOADER`]: papers to PDF, the log to CSV or a workbook, exams to FHIR and back. Fonts and formats are in its module
//!   alone. One question to a worker, as with stretching.
//!
//! A worker first says that it is ready; what is posted to it earlier may be lost. Every message is a plain object; a question tells in which language (BCP 47) to say what goes wrong:
//!
//! ```text
//! page to stretch:   { language: string, passphrase: string, salt: Uint8Array(16), memory: KiB, passes: number, lanes: number }
//! stretch to page:   { kind: "ready" } | { kind: "key", key: Uint8Array(32) } | { kind: "failed", sentence: string }
//!
//! page to strength:  { language: string, passphrase: string }
//! strength to page:  { kind: "ready" } | { kind: "strength", guesses_log10: number, score: 0..=4, hint: string }
//!
//! page to made_up:   { today: "year-month-day" }
//! made_up to page:   { kind: "ready" } | { kind: "island", people: number, examiner: string }
//!                  | { kind: "life", person: Uint8Array(16), entries: [Uint8Array] }
//! page to press:     { language: string, job: Uint8Array }, the CBOR of a [`Job`]
//! press to page:     { kind: "ready" } | { kind: "made", made: Uint8Array }, the CBOR of what was [`Made`]
//! ```
//!
//! A passphrase is never written to a console or kept. Rust's copies are wiped; the browser's own copies of a message
//! can't be, and go when the worker does.
//!
//! This crate holds the shapes alone, so that the page which uses it stays small; the work is in `src/bin`.

mod made_up;
mod message;
mod press;
mod strength;
mod stretch;

pub use made_up::{Life, MadeUpAnswer, MadeUpRequest};
pub use message::{field, object, speak_as_asked};
pub use press::{Earlier, Job, Log, Made, PaperSize, PressAnswer, Taken};
pub use strength::{Strength, StrengthAnswer};
pub use stretch::{StretchAnswer, StretchRequest};

/// The script that starts the worker which stretches, as the bundler names it.
pub const STRETCH_LOADER: &str = "/stretch_loader.js";
/// The script that starts the worker which scores, as the bundler names it.
pub const STRENGTH_LOADER: &str = "/strength_loader.js";
/// The script that starts the worker which makes people up, as the bundler names it.
pub const MADE_UP_LOADER: &str = "/made_up_loader.js";
/// The script that starts the worker which makes files, as the bundler names it.
pub const PRESS_LOADER: &str = "/press_loader.js";

/// What every worker says first.
pub const READY: &str = "ready";

/// The message that says so.
pub fn ready() -> wasm_bindgen::JsValue {
    message::object(&[("kind", READY.into())])
}
