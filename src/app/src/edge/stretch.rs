//! The slow work on passphrases, in workers, so that the page never freezes.

use futures::StreamExt;
use futures::channel::mpsc;
use futures::lock::Mutex;
use std::rc::Rc;
use vault::{SlotKey, StretchParams};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{MessageEvent, Worker};
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
                return Err(
                    "the passphrase could not be worked on: close other pages and try again".into(),
                );
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
        Some(StrengthAnswer::Ready) | None => Err("the passphrase could not be judged".into()),
    }
}

/// The callbacks that a worker holds on to.
type Listeners = (Closure<dyn Fn(MessageEvent)>, Closure<dyn Fn(JsValue)>);

/// A worker and what it says; ended when dropped.
struct Helper {
    worker: Worker,
    said: mpsc::UnboundedReceiver<Result<JsValue, String>>,
    _listeners: Listeners,
}

impl Helper {
    fn start(loader: &str) -> Result<Self, String> {
        let worker = Worker::new(loader)
            .map_err(|_| "this browser lets no work run beside the page".to_owned())?;
        let (say, said) = mpsc::unbounded();
        let fail = say.clone();
        // The receiver only goes when the worker does, so a message that finds it gone is of no more use.
        let on_message = Closure::<dyn Fn(MessageEvent)>::new(move |event: MessageEvent| {
            drop(say.unbounded_send(Ok(event.data())))
        });
        let on_error = Closure::<dyn Fn(JsValue)>::new(move |_| {
            drop(fail.unbounded_send(Err("this tablet has too little free memory for it: close other pages and try again".into())));
        });
        worker.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
        worker.set_onerror(Some(on_error.as_ref().unchecked_ref()));
        Ok(Self {
            worker,
            said,
            _listeners: (on_message, on_error),
        })
    }

    /// Starts a worker and waits until it can be asked.
    async fn ready(loader: &str) -> Result<Self, String> {
        let mut worker = Self::start(loader)?;
        worker.next().await?;
        Ok(worker)
    }

    fn post(&self, message: &JsValue) -> Result<(), String> {
        self.worker
            .post_message(message)
            .map_err(|_| "the work could not be handed over".to_owned())
    }

    async fn next(&mut self) -> Result<JsValue, String> {
        self.said
            .next()
            .await
            .unwrap_or_else(|| Err("the work ended without an answer".into()))
    }
}

impl Drop for Helper {
    fn drop(&mut self) {
        self.worker.terminate();
    }
}
