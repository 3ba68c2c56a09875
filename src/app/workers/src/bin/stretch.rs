//! The worker that turns a passphrase into a slot key.

use said::InWords;
use vault::stretch;
use wasm_bindgen::prelude::{Closure, JsCast};
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};
use workers::{StretchAnswer, StretchRequest};

fn main() {
    let worker: DedicatedWorkerGlobalScope = js_sys::global().unchecked_into();
    let answering = worker.clone();
    let on_message = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        workers::speak_as_asked(&event.data());
        let answer = answer(StretchRequest::from_js(&event.data()));
        // Posting fails only for what can't be copied, and a plain object can.
        let _ = answering.post_message(&answer.to_js());
    });
    worker.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
    // It answers for as long as the worker lives.
    on_message.forget();
    let _ = worker.post_message(&StretchAnswer::Ready.to_js());
}

fn answer(request: Option<StretchRequest>) -> StretchAnswer {
    let Some(request) = request else {
        return StretchAnswer::Failed(words::app::workers::phrase_in_part().into());
    };
    match stretch(&request.passphrase, &request.params) {
        Ok(key) => StretchAnswer::Key(key),
        Err(error) => StretchAnswer::Failed(error.in_words()),
    }
}
