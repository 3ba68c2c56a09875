//! A document as a page that can be printed: the same blocks, in the same order, as in its PDF.

use leptos::prelude::*;
use papers::{
    Block, Callout, Document, Fact, LensCells, LensRow, LensTable, Measure, Print, Sign, Standing,
    Table, Weight,
};
use workers::PaperSize;

/// The page.
#[component]
pub fn DocumentSheet(document: Document, size: Memo<PaperSize>) -> impl IntoView {
    let mark = document.standing.mark();
    let standing = match document.standing {
        Standing::Unsigned => Some("not-signed"),
        Standing::Signed | Standing::Gathered => None,
        Standing::Amended => Some("amended"),
    };
    let across = mark.map(|mark| view! { <p class="doc-mark" id="doc-mark">{mark}</p> });
    view! {
        <article class="doc" id="document" class:doc-letter=move || size.get() == PaperSize::Letter class:doc-large=document.print == Print::Large
            data-standing=standing>
            <h2>{document.title}</h2>
            {across}
            {facts(document.who)}
            {document.blocks.into_iter().map(block).collect_view()}
            <p class="doc-foot">{document.foot}</p>
        </article>
    }
    .into_any()
}

fn block(block: Block) -> AnyView {
    match block {
        Block::Heading(words) => view! { <h3>{words}</h3> }.into_any(),
        Block::Paragraph(words) => view! { <p>{words}</p> }.into_any(),
        Block::List(points) => points_of(points),
        Block::Facts(each) => facts(each),
        Block::Table(told) => table(told),
        Block::Lenses(told) => lenses(told),
        Block::Callout(told) => callout(told),
        Block::Measure(told) => measure(told),
        Block::Sign(told) => sign(told),
    }
}

fn points_of(points: Vec<String>) -> AnyView {
    let each = points.into_iter().map(|said| view! { <li>{said}</li> });
    view! { <ul>{each.collect_view()}</ul> }.into_any()
}

fn facts(facts: Vec<Fact>) -> AnyView {
    let each = facts
        .into_iter()
        .map(|fact| view! { <div><dt>{fact.label}</dt><dd>{fact.value}</dd></div> });
    view! { <dl class="doc-facts">{each.collect_view()}</dl> }.into_any()
}

fn heads(first: Option<String>, head: Vec<String>) -> AnyView {
    let each = head
        .into_iter()
        .map(|name| view! { <th scope="col">{name}</th> });
    view! { <thead><tr><td>{first}</td>{each.collect_view()}</tr></thead> }.into_any()
}

fn table(table: Table) -> AnyView {
    let mut head = table.head.into_iter();
    let first = head.next();
    let rows = table.rows.into_iter().map(|row| {
        let mut cells = row.into_iter();
        let named = cells.next();
        let cells = cells.map(|cell| view! { <td>{cell}</td> }).collect_view();
        view! { <tr><th scope="row">{named}</th>{cells}</tr> }
    });
    view! { <table class="doc-table">{heads(first, head.collect())}<tbody>{rows.collect_view()}</tbody></table> }
        .into_any()
}

fn lenses(lenses: LensTable) -> AnyView {
    let columns = lenses.head.len().to_string();
    let row = |row: LensRow| {
        let cells = match row.lens {
            LensCells::Figures(cells) => cells
                .into_iter()
                .map(|cell| view! { <td>{cell}</td> })
                .collect_view()
                .into_any(),
            LensCells::Note(note) => view! { <td colspan=columns.clone()>{note}</td> }.into_any(),
        };
        view! { <tr><th scope="row">{row.eye}</th>{cells}</tr> }
    };
    let rows = lenses.rows.into_iter().map(row).collect_view();
    view! { <table class="doc-lenses">{heads(None, lenses.head)}<tbody>{rows}</tbody></table> }
        .into_any()
}

fn callout(callout: Callout) -> AnyView {
    let act = callout.weight == Weight::Act;
    view! {
        <div class="doc-callout" class:doc-act=act><b>{callout.title}</b>{points_of(callout.lines)}</div>
    }
    .into_any()
}

/// How much of the line stands beyond the limit, so that what is outside can be seen.
const BEYOND: f64 = 1.5;

/// A line with its limit, and how far off the measure is.
fn measure(measure: Measure) -> AnyView {
    let line = measure.part.map(|part| {
        let off = (part / BEYOND * 100.0).clamp(0.0, 100.0);
        let limit = 100.0 / BEYOND;
        view! {
            <svg class="doc-line" viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
                <rect class="doc-way" x="0" y="2" width="100" height="2"/>
                <rect class="doc-off" x="0" y="1" width=off height="4"/>
                <rect class="doc-limit" x=limit y="0" width="0.6" height="6"/>
            </svg>
        }
    });
    view! {
        <div class="doc-measure" data-stands=measure.against.slug()>
            <p><b>{measure.label}</b>" "<span>{measure.stands}</span></p>
            {line}
            <p>{measure.sentence}</p>
        </div>
    }
    .into_any()
}

fn sign(sign: Sign) -> AnyView {
    match sign {
        Sign::Signed { by, on } => {
            view! { <p class="doc-signed" id="doc-signed">{format!("{by}, {on}")}</p> }.into_any()
        }
        Sign::Open { whom } => view! { <p class="doc-signed doc-unsigned">{whom}</p> }.into_any(),
    }
}
