//! The worker that makes files: PDF, CSV, workbooks and FHIR bundles; and reads FHIR.

mod bundle;
mod files;
mod read;

use wasm_bindgen::prelude::{Closure, JsCast};
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};
use workers::{Job, Made, PressAnswer};

fn main() {
    let worker: DedicatedWorkerGlobalScope = js_sys::global().unchecked_into();
    let answering = worker.clone();
    let on_message = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        workers::speak_as_asked(&event.data());
        // Posting fails only for what can't be copied, and a plain object can.
        let say = |answer: PressAnswer| drop(answering.post_message(&answer.to_js()));
        let so_far = |done, of| say(PressAnswer::SoFar { done, of });
        say(PressAnswer::Made(answer(
            Job::from_js(&event.data()),
            so_far,
        )));
    });
    worker.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
    // It answers for as long as the worker lives.
    on_message.forget();
    let _ = worker.post_message(&PressAnswer::Ready.to_js());
}

fn answer(job: Option<Job>, so_far: impl Fn(usize, usize)) -> Made {
    let made = match job {
        Some(Job::Pdf { document, size }) => files::pdf(&document, size),
        Some(Job::Csv(log)) => files::csv(&log),
        Some(Job::Workbook(log)) => files::workbook(&log),
        Some(Job::Bundle { entries, exams }) => bundle::bundle(&entries, &exams, so_far),
        Some(Job::Whole { entries, person }) => bundle::whole(&entries, &person, so_far),
        Some(Job::Read { text }) => read::read(&text),
        None => Err(words::app::workers::job_in_part().to_owned()),
    };
    made.unwrap_or_else(Made::Refused)
}
