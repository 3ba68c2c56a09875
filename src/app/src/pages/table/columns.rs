//! Which column holds what, with the first rows beside.

use super::Opened;
use ::words::app::round as say;
use leptos::prelude::*;
use record::OneOf;
use record::home_list::{DateOrder, Encoding, Table};
use widgets::{Choice, Pick};

/// So many values of a column are shown.
const SHOWN: usize = 3;

/// The columns, each with what it holds; below them what keeps the file from being read so, and whatever else is asked of it.
#[component]
pub fn Columns<F>(
    /// The id of the whole.
    id: &'static str,
    /// The file.
    #[prop(into)]
    table: Signal<Opened>,
    /// What each column holds.
    held: Signal<Vec<Option<F>>>,
    /// Called with a column and what it is to hold.
    on_change: Callback<(usize, Option<F>)>,
    /// What keeps the file from being read so.
    #[prop(into)]
    said: Signal<String>,
    /// What else is asked.
    children: Children,
) -> impl IntoView
where
    F: OneOf + Copy + Send + Sync,
{
    let read = move || table.with(|table| table.as_deref().map(as_read));
    let columns = Memo::new(move |_| {
        table.with(|table| {
            let table = table.as_deref();
            table.map_or_else(Vec::new, |table| {
                let all = 0..table.heading.len();
                all.map(|at| (at, table.column_name(at), sample(table, at)))
                    .collect()
            })
        })
    });
    let rows = move || {
        let columns = columns.get().into_iter();
        columns
            .map(|(at, name, sample)| view! { <Column at name sample held on_change/> })
            .collect_view()
    };
    view! {
        <section class="sheet" id=id>
            <h2>{say::what_columns_hold()}</h2>
            <p class="soft">{read}</p>
            <ul class="columns">{rows}</ul>
            <p class="field-error" role="alert" id="columns-said">{said}</p>
            {children()}
        </section>
    }
    .into_any()
}

fn as_read(table: &Table) -> String {
    let encoding = match table.encoding {
        Encoding::Utf8 => "UTF-8",
        Encoding::Windows1252 => say::older_encoding(),
    };
    say::rows_read(table.rows.len(), &table.separator.word(), &encoding)
}

fn sample(table: &Table, column: usize) -> String {
    let cells = table.rows.iter().map(|row| table.cell(row, column));
    let said: Vec<&str> = cells.filter(|cell| !cell.is_empty()).take(SHOWN).collect();
    said.join(" \u{b7} ")
}

#[component]
fn Column<F>(
    at: usize,
    name: String,
    sample: String,
    held: Signal<Vec<Option<F>>>,
    on_change: Callback<(usize, Option<F>)>,
) -> impl IntoView
where
    F: OneOf + Copy + Send + Sync,
{
    let id = format!("column-{at}");
    let holds = Memo::new(move |_| held.with(|held| held.get(at).copied().flatten()));
    let choose = move |value: String| {
        let place: Option<usize> = value.parse().ok();
        let field = place.and_then(|place| F::all().get(place).copied());
        on_change.run((at, field));
    };
    let offered = F::all().into_iter().enumerate().map(|(place, field)| {
        view! { <option value=place.to_string() prop:selected=move || holds.get() == Some(field)>{field.in_words()}</option> }
    });
    view! {
        <li class="column-row">
            <label class="column-name" for=id.clone()><b>{name}</b><span class="soft">{sample}</span></label>
            <select class="text-input" id=id on:change:target=move |event| choose(event.target().value())>
                <option value="" prop:selected=move || holds.get().is_none()>{say::left_alone()}</option>
                {offered.collect_view()}
            </select>
        </li>
    }
    .into_any()
}

/// In which order dates stand, and a word where the file itself can't tell.
#[component]
pub fn Dates(
    /// The order.
    #[prop(into)]
    value: Signal<Option<DateOrder>>,
    /// Called with another.
    #[prop(into)]
    on_change: Callback<DateOrder>,
    /// Whether they could be read either way.
    open: Memo<bool>,
    /// Whom to ask then.
    ask: &'static str,
) -> impl IntoView {
    let orders = DateOrder::all().into_iter();
    let picks = orders
        .map(|order| Pick::new(order, || order.in_words()))
        .collect();
    view! {
        <Choice id="date-order" label=say::dates_written() picks value on_change=move |order| on_change.run(order)/>
        <Show when=move || open.get()>
            <p class="caution" id="dates-open">{say::dates_open(&ask)}</p>
        </Show>
    }
    .into_any()
}
