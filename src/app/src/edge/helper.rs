//! A worker beside the page: asked, listened to, and ended when it is let go of.

use ::words::app::session as say;
use futures::StreamExt;
use futures::channel::mpsc;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{MessageEvent, Worker};

/// The callbacks that a worker holds on to.
type Listeners = (Closure<dyn Fn(MessageEvent)>, Closure<dyn Fn(JsValue)>);

/// A worker and what it says; ended when dropped.
pub struct Helper {
    worker: Worker,
    said: mpsc::UnboundedReceiver<Result<JsValue, String>>,
    _listeners: Listeners,
}

impl Helper {
    /// Starts a worker; what it says first is that it can be asked.
    ///
    /// # Errors
    /// One sentence where the browser has none.
    pub fn start(loader: &str) -> Result<Self, String> {
        let worker = Worker::new(loader).map_err(|_| say::no_helper().to_owned())?;
        let (say, said) = mpsc::unbounded();
        let fail = say.clone();
        // The receiver only goes when the worker does, so a message that finds it gone is of no more use.
        let on_message = Closure::<dyn Fn(MessageEvent)>::new(move |event: MessageEvent| {
            drop(say.unbounded_send(Ok(event.data())))
        });
        let on_error = Closure::<dyn Fn(JsValue)>::new(move |_| {
            drop(fail.unbounded_send(Err(say::too_little_memory().into())));
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
    ///
    /// # Errors
    /// One sentence where it can’t be started.
    pub async fn ready(loader: &str) -> Result<Self, String> {
        let mut worker = Self::start(loader)?;
        worker.next().await?;
        Ok(worker)
    }

    /// Asks it something.
    ///
    /// # Errors
    /// One sentence where the question can’t be copied.
    pub fn post(&self, message: &JsValue) -> Result<(), String> {
        self.worker
            .post_message(message)
            .map_err(|_| say::work_not_handed_over().to_owned())
    }

    /// What it says next.
    ///
    /// # Errors
    /// One sentence where it failed or ended.
    pub async fn next(&mut self) -> Result<JsValue, String> {
        self.said
            .next()
            .await
            .unwrap_or_else(|| Err(say::work_without_answer().into()))
    }
}

impl Drop for Helper {
    fn drop(&mut self) {
        self.worker.terminate();
    }
}
