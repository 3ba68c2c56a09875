//! Two readings beside one another, line by line. What differs has a sign and stands heavier; colour says nothing.

use crate::words;
use leptos::prelude::*;
use record::{Change, Difference, Eye, Said};

/// What stood and what stands: beside one another on a tablet, below one another on a phone.
#[component]
pub fn Differences(
    /// The lines.
    lines: Vec<Difference>,
    /// What stands above each.
    columns: [String; 2],
) -> impl IntoView {
    let [before, now] = columns.clone();
    let rows = lines.iter().map(|line| row(line, &columns));
    view! {
        <table class="differences">
            <thead><tr><td></td><th scope="col">{before}</th><th scope="col">{now}</th></tr></thead>
            <tbody>{rows.collect_view()}</tbody>
        </table>
    }
    .into_any()
}

fn row(line: &Difference, columns: &[String; 2]) -> AnyView {
    let change = line.change();
    let differs = change != Change::Same;
    let mark = differs.then(|| {
        view! { <span class="change" aria-hidden="true">{change.sign()}</span><span class="change-word">{change.word()}</span> }
    });
    let cells = [&line.before, &line.now].into_iter().zip(columns);
    let cells = cells.map(|(said, column)| {
        view! { <td><span class="column-word">{column.clone()}</span>{said_of(line, said.as_ref())}</td> }
    });
    view! {
        <tr class:differs=differs><th scope="row">{line.label.clone()}" "{mark}</th>{cells.collect_view()}</tr>
    }
    .into_any()
}

fn said_of(line: &Difference, said: Option<&Said>) -> AnyView {
    match said {
        None => view! { <span>{words::NOTHING}</span> }.into_any(),
        Some(Said::One(told)) => {
            let heavy = line.change() != Change::Same;
            view! { <span class:heavy=heavy>{words::number(told)}</span> }.into_any()
        }
        Some(Said::Eyes(eyes)) => {
            let each = Eye::BOTH.map(|eye| {
                let heavy = line.differs_for(eye);
                let letter = if eye == Eye::Right { "R" } else { "L" };
                view! { <span class="of-eye"><span class="soft">{letter}</span>" "<span class:heavy=heavy>{words::number(eyes.of(eye))}</span></span> }
            });
            each.into_iter().collect_view().into_any()
        }
    }
}
