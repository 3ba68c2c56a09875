//! The rows as they would be taken.

use super::Looking;
use crate::pages::table::{SHOWN, more};
use crate::shell::app;
use crate::words;
use ::words::app::papers::right_left;
use ::words::app::round::can_be_taken;
use leptos::prelude::*;
use record::earlier_list::Earlier;
use record::{Line, Said, Story};

/// What can be taken.
#[component]
pub fn Rows(looking: Looking) -> impl IntoView {
    let story = app().door.story();
    let good = Memo::new(move |_| looking.good());
    let lines = move || {
        good.with(|good| {
            let rows = good.iter().take(SHOWN);
            story.with_untracked(|story| rows.map(|row| line(story, row)).collect_view())
        })
    };
    view! {
        <section class="sheet" id="earlier-good">
            <h2>{move || can_be_taken(&good.with(Vec::len))}</h2>
            <ul class="people">{lines}</ul>
            <p class="soft">{move || more(good.with(Vec::len))}</p>
        </section>
    }
    .into_any()
}

fn line(story: &Story, row: &Earlier) -> AnyView {
    let who = story.person(&row.person).map(words::name);
    let each = row.sections.iter().map(|section| {
        let lines: Vec<String> = section.lines().into_iter().map(said).collect();
        let title = section.kind().title();
        view! { <span class="soft"><b>{title}</b>" "{lines.join(" \u{b7} ")}</span> }
    });
    view! {
        <li class="other-row earlier-row">
            <span>{words::date(row.on)}</span>
            <span class="person-who"><b>{who}</b>{each.collect_view()}</span>
        </li>
    }
    .into_any()
}

fn said(line: Line) -> String {
    let words = match line.said {
        Said::One(words) => words,
        Said::Eyes(eyes) => right_left(&eyes.right, &eyes.left),
    };
    format!("{}: {}", line.label, words::number(&words))
}
