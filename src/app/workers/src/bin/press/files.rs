//! Files of papers and of the log.

use papers::Document;
use papers::log::csv as write_csv;
use serde_bytes::ByteBuf;
use workers::{Log, Made, PaperSize};

/// By which spreadsheets know UTF-8.
const BYTE_ORDER_MARK: &[u8] = "\u{feff}".as_bytes();

pub fn pdf(document: &Document, size: PaperSize) -> Result<Made, String> {
    let paper = match size {
        PaperSize::A4 => pdf::Paper::A4,
        PaperSize::Letter => pdf::Paper::Letter,
    };
    let made = pdf::pdf(document, paper).map_err(|error| error.to_string())?;
    Ok(Made::File {
        bytes: ByteBuf::from(made.bytes),
        lacking: made.lacking.into_iter().collect(),
    })
}

pub fn csv(log: &Log) -> Result<Made, String> {
    let mut bytes = BYTE_ORDER_MARK.to_vec();
    write_csv(&mut bytes, &log.columns, &log.visits)
        .map_err(|error| ::words::app::workers::log_not_written(&error))?;
    Ok(file(bytes))
}

pub fn workbook(log: &Log) -> Result<Made, String> {
    let made = sheets::workbook(&log.columns, &log.visits);
    made.map(file).map_err(|error| error.to_string())
}

/// A file that lacks no letter.
pub fn file(bytes: Vec<u8>) -> Made {
    Made::File {
        bytes: ByteBuf::from(bytes),
        lacking: String::new(),
    }
}
