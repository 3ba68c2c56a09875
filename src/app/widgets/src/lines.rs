//! A working or an answer, line by line.

use crate::mark::marked;
use leptos::prelude::*;
use optics::Line;

/// Each line's words beside its value.
#[component]
pub fn Lines(
    /// The lines, in the order in which they are read.
    lines: Vec<Line>,
) -> impl IntoView {
    let line = |Line { label, value }| {
        view! { <div class="working-line"><dt>{move || marked(label.clone())}</dt><dd>{move || marked(value.clone())}</dd></div> }
    };
    view! { <dl class="working" data-part="lines">{lines.into_iter().map(line).collect_view()}</dl> }
}
