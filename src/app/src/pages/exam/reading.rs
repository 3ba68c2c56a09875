//! A section as it reads: both eyes side by side, nothing to touch.

use super::editors::{dots, outline};
use crate::words;
use ::words::app::exam as say;
use leptos::prelude::*;
use record::{Line, Said, Section, Sketch};
use widgets::SketchPad;

/// The section, read only.
#[component]
pub fn SectionReading(
    /// What stands in it.
    section: Section,
) -> impl IntoView {
    let lines = section.lines_in(words::manner().far);
    if lines.is_empty() {
        return view! { <p class="soft">{say::kept_empty()}</p> }.into_any();
    }
    let both = lines
        .iter()
        .any(|line| matches!(line.said, Said::Eyes(_)))
        .then(|| view! { <thead><tr><td></td><th scope="col">{say::right()}</th><th scope="col">{say::left()}</th></tr></thead> });
    let rows = lines.into_iter().map(row);
    let drawn = if let Section::Sketches(sketches) = &section {
        sketches.drawn.iter().map(sketch).collect()
    } else {
        Vec::new()
    };
    view! {
        <table class="reading">{both}<tbody>{rows.collect_view()}</tbody></table>
        {(!drawn.is_empty()).then(|| view! { <div class="sketches">{drawn}</div> })}
    }
    .into_any()
}

fn row(line: Line) -> AnyView {
    match line.said {
        Said::Eyes(eyes) => view! { <tr><th scope="row">{line.label}</th><td>{words::number(&eyes.right)}</td><td>{words::number(&eyes.left)}</td></tr> }.into_any(),
        Said::One(words) => view! { <tr><th scope="row">{line.label}</th><td colspan="2">{words::number(&words)}</td></tr> }.into_any(),
    }
}

fn sketch(sketch: &Sketch) -> AnyView {
    let strokes: Vec<_> = sketch.strokes.iter().map(dots).collect();
    view! {
        <SketchPad id="" label=sketch.heading() outline=outline(sketch.outline, sketch.eye) strokes=Signal::stored(strokes)/>
    }
    .into_any()
}
