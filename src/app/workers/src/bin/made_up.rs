//! The worker that makes people up, for looking around: they need not be in the page’s own code.

use demo::{Demo, EXAMINER, PEOPLE};
use wasm_bindgen::prelude::{Closure, JsCast};
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};
use workers::{Life, MadeUpAnswer, MadeUpRequest};

/// The same people every time.
const SEED: u64 = 20_260_304;

fn main() {
    let worker: DedicatedWorkerGlobalScope = js_sys::global().unchecked_into();
    let answering = worker.clone();
    let on_message = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        for answer in answers(MadeUpRequest::from_js(&event.data())) {
            // Posting fails only for what can't be copied, and a plain object can.
            let _ = answering.post_message(&answer.to_js());
        }
    });
    worker.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
    // It answers for as long as the worker lives.
    on_message.forget();
    let _ = worker.post_message(&MadeUpAnswer::Ready.to_js());
}

/// Nobody, where the day can't be read: the page is told an island without people.
fn answers(request: Option<MadeUpRequest>) -> impl Iterator<Item = MadeUpAnswer> {
    let today = request.and_then(|request| request.today.parse().ok());
    let island = MadeUpAnswer::Island {
        people: today.map_or(0, |_| PEOPLE),
        examiner: EXAMINER.to_owned(),
    };
    let lives = today.into_iter().flat_map(|today| Demo::new(SEED, today));
    std::iter::once(island).chain(lives.map(life))
}

fn life(life: demo::Life) -> MadeUpAnswer {
    MadeUpAnswer::Life(Life {
        person: *life.person.as_uuid().as_bytes(),
        entries: life.entries.iter().map(record::Entry::to_cbor).collect(),
    })
}
