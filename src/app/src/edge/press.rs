//! Files are made in a worker of their own, so that the page carries neither fonts nor formats.

use super::helper::Helper;
use ::words::app::session as say;
use workers::{Job, Made, PRESS_LOADER, PressAnswer, Taken};

/// A file as it was made.
pub struct Pressed {
    /// Its bytes.
    pub bytes: Vec<u8>,
    /// Letters that stand in it as question marks.
    pub lacking: String,
}

/// Makes a file; says how many of its parts are made, and of how many, where it has several.
///
/// # Errors
/// One sentence on why there is none.
pub async fn file(job: &Job, so_far: impl Fn(usize, usize)) -> Result<Pressed, String> {
    match made(job, so_far).await? {
        Made::File { bytes, lacking } => Ok(Pressed {
            bytes: bytes.into_vec(),
            lacking,
        }),
        Made::Refused(sentence) => Err(sentence),
        Made::Taken(_) => Err(say::made_something_else().to_owned()),
    }
}

/// Reads a FHIR file.
///
/// # Errors
/// One sentence on why nothing could be read.
pub async fn read(text: String) -> Result<Taken, String> {
    match made(&Job::Read { text }, |_, _| ()).await? {
        Made::Taken(taken) => Ok(taken),
        Made::Refused(sentence) => Err(sentence),
        Made::File { .. } => Err(say::made_something_else().to_owned()),
    }
}

/// The worker is ended afterwards, so that its memory goes back.
async fn made(job: &Job, so_far: impl Fn(usize, usize)) -> Result<Made, String> {
    let mut worker = Helper::start(PRESS_LOADER)?;
    loop {
        match PressAnswer::from_js(&worker.next().await?) {
            Some(PressAnswer::Ready) => worker.post(&job.to_js())?,
            Some(PressAnswer::SoFar { done, of }) => so_far(done, of),
            Some(PressAnswer::Made(made)) => return Ok(made),
            None => return Err(say::made_in_part().to_owned()),
        }
    }
}
