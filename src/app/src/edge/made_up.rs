//! Made-up people, from the worker that thinks them up.

use super::clock::today;
use super::helper::Helper;
use ::words::app::session as say;
use workers::{Life, MADE_UP_LOADER, MadeUpAnswer, MadeUpRequest};

/// An island whose people come one after the other; the worker ends with it.
pub struct Island {
    worker: Helper,
    /// How many people there will be.
    pub people: usize,
    /// Who signed what is written about them.
    pub examiner: String,
}

impl Island {
    /// Has one thought up whose exams lie before today.
    ///
    /// # Errors
    /// One sentence where the worker can’t do it.
    pub async fn thought_up() -> Result<Self, String> {
        let mut worker = Helper::ready(MADE_UP_LOADER).await?;
        let today = today().to_string();
        worker.post(&MadeUpRequest { today }.to_js())?;
        match MadeUpAnswer::from_js(&worker.next().await?) {
            Some(MadeUpAnswer::Island { people, examiner }) => Ok(Self {
                worker,
                people,
                examiner,
            }),
            _ => Err(garbled()),
        }
    }

    /// The next person’s life.
    ///
    /// # Errors
    /// One sentence where the worker can’t do it, or nobody is left.
    pub async fn next(&mut self) -> Result<Life, String> {
        match MadeUpAnswer::from_js(&self.worker.next().await?) {
            Some(MadeUpAnswer::Life(life)) => Ok(life),
            _ => Err(garbled()),
        }
    }
}

fn garbled() -> String {
    say::nobody_made_up().to_owned()
}
