//! One thing that is asked: its name, what stood there last time, and the control.

use super::part::Part;
use super::why::Why;
use crate::words::number;
use ::words::app::exam_fields as say;
use leptos::prelude::*;
use record::{Eye, Finding};

/// What is asked.
#[derive(Clone)]
pub struct Asked {
    /// The id of the control.
    pub id: String,
    /// What is asked, in the trade's words.
    pub label: String,
    /// What stood there last time.
    pub before: Signal<Option<String>>,
    /// Whether one tap filled it in.
    pub tapped: Signal<bool>,
    /// Why it is missing, where that can be said.
    pub why: Option<Why>,
}

impl Asked {
    /// Something of which nothing is known beside its name.
    pub fn new(id: impl Into<String>, label: impl Into<String>) -> Self {
        Self {
            id: id.into(),
            label: label.into(),
            before: Signal::stored(None),
            tapped: Signal::stored(false),
            why: None,
        }
    }

    /// With what stood there last time.
    #[must_use]
    pub fn before(mut self, before: Signal<Option<String>>) -> Self {
        self.before = before;
        self
    }
}

impl<T: PartialEq> Part<Finding<T>> {
    /// What is asked of a finding: with last time's, the mark of the tap, and why it may be missing.
    pub fn asked(
        &self,
        id: impl Into<String>,
        label: impl Into<String>,
        words: impl Fn(&T) -> String + Send + Sync + 'static,
    ) -> Asked {
        let (id, label) = (id.into(), label.into());
        let eye = Eye::BOTH
            .into_iter()
            .find(|eye| id.ends_with(&format!("-{}", eye.word())));
        let what = eye.map_or_else(|| label.clone(), |eye| say::label_eye(&label, &eye.said()));
        Asked {
            before: self.before(move |found| found.in_words(&words)),
            tapped: self.tapped(),
            why: Some(self.why(what)),
            id,
            label,
        }
    }
}

/// The button that asks why it is missing, in these words; nothing where that can't be said.
pub fn missing(asked: &Asked, words: &'static str) -> Option<AnyView> {
    let (why, id) = (asked.why.clone()?, format!("{}-why", asked.id));
    let button = view! { <button type="button" class="pill" id=id on:click=move |_| why.ask()>{words}</button> };
    Some(button.into_any())
}

/// The row. What one tap filled in says so until it is changed.
pub fn row(asked: &Asked, control: AnyView) -> AnyView {
    let Asked {
        label,
        before,
        tapped,
        why,
        ..
    } = asked.clone();
    let missing = why.map(|why| {
        let value = why.spot.value;
        move || {
            value
                .get()
                .map(|why| view! { <p class="asked-missing">{why.in_words()}</p> })
        }
    });
    view! {
        <div class="asked" class:tapped=tapped>
            <div class="asked-head">
                <span class="asked-label" aria-hidden="true">{label}</span>
                {move || tapped.get().then(|| view! { <span class="asked-tapped">{say::tap()}</span> })}
                {move || before.get().map(|words| view! { <span class="asked-last">{say::last_time()}<b>{number(&words)}</b></span> })}
            </div>
            {control}
            {missing}
        </div>
    }
    .into_any()
}
