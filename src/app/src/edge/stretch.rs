//! The slow work on passphrases, in workers, so that the page never freezes.

use super::helper::Helper;
use ::words::app::session as say;
use futures::lock::Mutex;
use std::rc::Rc;
use vault::{SlotKey, StretchParams};
use workers::{
    STRENGTH_LOADER, STRETCH_LOADER, Strength, StrengthAnswer, StretchAnswer, StretchRequest,
};

/// Stretches a passphrase in a worker of its own, which is ended afterwards so that its memory goes back.
///
/// # Errors
/// One sentence, such as that there is not enough memory.
pub async fn stretch(passphrase: &str, params: &StretchParams) -> Result<SlotKey, String> {
    let request = StretchRequest {
        passphrase: passphrase.to_owned().into(),
        params: *params,
    };
    let mut worker = Helper::start(STRETCH_LOADER)?;
    loop {
        match StretchAnswer::from_js(&worker.next().await?) {
            Some(StretchAnswer::Ready) => worker.post(&request.to_js())?,
            Some(StretchAnswer::Key(key)) => return Ok(key),
            Some(StretchAnswer::Failed(sentence)) => return Err(sentence),
            None => {
                return Err(say::passphrase_not_worked_on().into());
            }
        }
    }
}

thread_local! {
    /// Scoring is asked at every key, so its worker stays.
    static SCORER: Rc<Mutex<Option<Helper>>> = Rc::default();
}

/// Judges how hard a passphrase is to guess.
///
/// # Errors
/// One sentence where the worker can't answer.
pub async fn strength(passphrase: &str) -> Result<Strength, String> {
    let scorer = SCORER.with(Rc::clone);
    let mut scorer = scorer.lock().await;
    let mut worker = match scorer.take() {
        Some(worker) => worker,
        None => Helper::ready(STRENGTH_LOADER).await?,
    };
    worker.post(&Strength::question(passphrase))?;
    let answer = StrengthAnswer::from_js(&worker.next().await?);
    *scorer = Some(worker);
    match answer {
        Some(StrengthAnswer::Scored(strength)) => Ok(strength),
        Some(StrengthAnswer::Ready) | None => Err(say::passphrase_not_judged().into()),
    }
}
