//! A [`Document`] as PDF bytes, made offline where it is read.
//!
//! Tagged for screen readers (PDF/UA-1, checked by the writer), with its fonts embedded as subsets, its text to be selected
//! and searched, and a number on every page. This is a crate of its own because it weighs as much as the rest of the app:
//! there it belongs into a second download.
//!
//! Right to left: runs are ordered by the Unicode bidirectional algorithm, Arabic letters joined by the font, a paragraph that
//! begins so is set from the right, and a screen reader gets each such line in the order in which it is read. The built-in fonts
//! have Latin with all its European accents, Cyrillic, Greek, Hebrew and Arabic. What they lack becomes a question mark, and
//! [`Made::lacking`] says so.
//!
//! ```
//! use papers::{Block, Document, Print, Standing};
//! use pdf::{Paper, pdf};
//!
//! let note = Document {
//!     title: "About your eyes".into(),
//!     standing: Standing::Unsigned,
//!     print: Print::Large,
//!     who: vec![],
//!     blocks: vec![Block::Paragraph("We looked at your eyes on 4 March 2026.".into())],
//!     foot: "Orla Pennyquick".into(),
//! };
//! let made = pdf(&note, Paper::A4)?;
//! assert!(made.bytes.starts_with(b"%PDF-1.7"));
//! assert!(made.lacking.is_empty());
//! # Ok::<(), pdf::PdfError>(())
//! ```

mod blocks;
mod flow;
mod fonts;
mod head;
mod lines;
mod look;
mod shape;
mod tree;
mod write;

pub use flow::Paper;

use papers::Document;
use thiserror::Error;

/// A paper as PDF.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Made {
    /// The file.
    pub bytes: Vec<u8>,
    /// Letters that no built-in font has; each stands as a question mark.
    pub lacking: Vec<char>,
}

/// Why no PDF could be made.
#[derive(Debug, Error)]
pub enum PdfError {
    /// The writer refused it.
    #[error("{}", words::papers::pages::no_pdf(.0))]
    Refused(String),
}

/// Sets a document on pages of this size.
///
/// # Errors
/// [`PdfError::Refused`] where what was set would break the rules of tagged PDF.
pub fn pdf(document: &Document, paper: Paper) -> Result<Made, PdfError> {
    let fonts = fonts::Fonts::built_in();
    let mut flow = flow::Flow::new(&fonts, paper, look::Look::of(document.print));
    head::set(&mut flow, document);
    let mut rest = document.blocks.as_slice();
    while let [block, after @ ..] = rest {
        blocks::set(&mut flow, block, after);
        rest = after;
    }
    let set = flow.finish();
    let lacking = fonts.lacking();
    Ok(Made {
        bytes: write::write(&fonts, document, paper, set)?,
        lacking,
    })
}
