//! The commands over a clinic's records: from a carry file, and the key file or the recovery code that opens it.

mod by_family;
mod fhir;
mod log;
mod open;
pub mod options;
mod papers;
mod secret;
mod verify;
pub mod write;

use crate::ended::{Ended, Failure};
use options::RecordsAsked;

/// Does what is asked.
pub fn answer(asked: &RecordsAsked) -> Result<Ended, Failure> {
    match asked {
        RecordsAsked::Log(asked) => log::answer(asked),
        RecordsAsked::Papers(asked) => papers::answer(asked),
        RecordsAsked::Fhir(asked) => fhir::answer(asked),
        RecordsAsked::Verify(asked) => verify::answer(asked),
    }
}
