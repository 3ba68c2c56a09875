//! The worker that says how hard a passphrase is to guess.

mod score;

use wasm_bindgen::prelude::{Closure, JsCast};
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};
use workers::{Strength, StrengthAnswer};

fn main() {
    let worker: DedicatedWorkerGlobalScope = js_sys::global().unchecked_into();
    let answering = worker.clone();
    let on_message = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        workers::speak_as_asked(&event.data());
        let asked = Strength::asked(&event.data()).unwrap_or_default();
        let answer = StrengthAnswer::Scored(score::score(&asked));
        // Posting fails only for what can't be copied, and a plain object can.
        let _ = answering.post_message(&answer.to_js());
    });
    worker.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
    // It answers for as long as the worker lives.
    on_message.forget();
    let _ = worker.post_message(&StrengthAnswer::Ready.to_js());
}
