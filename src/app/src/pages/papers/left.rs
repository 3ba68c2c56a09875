//! Papers that left, as they stood then.

use crate::edge::clock::local;
use crate::shell::app;
use crate::words;
use ::words::app::papers as say;
use leptos::prelude::*;
use papers::PaperKind;
use record::{ExamId, SentPaper};
use widgets::Disclosure;

/// A paper that left: what it was, and everything on it.
type Left = (String, Vec<String>);

/// Every paper that left, the last one first; nothing where none has.
#[component]
pub fn WhatLeft(exam: ExamId) -> impl IntoView {
    let story = app().door.story();
    let left = Memo::new(move |_| {
        story.with(|story| {
            let sent = story
                .exam(&exam)
                .map(record::Exam::sent)
                .unwrap_or_default();
            sent.into_iter().rev().map(told).collect::<Vec<Left>>()
        })
    });
    let each = move || {
        let all = left.get().into_iter().enumerate();
        all.map(|(at, left)| view! { <OnePaper at left/> })
            .collect_view()
    };
    view! {
        <Show when=move || !left.with(Vec::is_empty)>
            <section class="sheet" id="papers-left"><h2>{say::as_they_left()}</h2>{each}</section>
        </Show>
    }
    .into_any()
}

fn told(paper: SentPaper<'_>) -> Left {
    let SentPaper { entry, sent } = paper;
    let title = match PaperKind::from_slug(&sent.paper) {
        Some(kind) => kind.title(),
        None => sent.paper.as_str(),
    };
    let on = words::moment(local(entry.stamp));
    let summary = say::left_by(&title, &on, &entry.author);
    (summary, sent.text.clone())
}

#[component]
fn OnePaper(at: usize, left: Left) -> impl IntoView {
    let (summary, text) = left;
    let lines = move || {
        let each = text.clone().into_iter().map(|line| view! { <p>{line}</p> });
        each.collect_view()
    };
    view! { <Disclosure id=format!("left-{at}") summary><div class="paper-left">{lines.clone()}</div></Disclosure> }
        .into_any()
}
