//! Lists of a few words each, line by line.

use ::words::app::person_form as say;
use leptos::prelude::*;
use widgets::TextField;

/// One line: as many words as the list has fields.
#[derive(Clone)]
pub struct Row {
    key: u64,
    parts: Vec<RwSignal<String>>,
}

/// A list while it is typed.
#[derive(Clone, Copy)]
pub struct Rows {
    rows: RwSignal<Vec<Row>>,
    next: StoredValue<u64>,
}

impl Rows {
    /// A list of these lines.
    pub fn of(lines: impl IntoIterator<Item = Vec<String>>) -> Self {
        let rows = Self {
            rows: RwSignal::new(Vec::new()),
            next: StoredValue::new(0),
        };
        lines.into_iter().for_each(|line| rows.add(line));
        rows
    }

    /// Adds a line.
    pub fn add(self, line: Vec<String>) {
        let key = self.next.get_value();
        self.next.set_value(key + 1);
        let parts = line.into_iter().map(RwSignal::new).collect();
        self.rows.update(|rows| rows.push(Row { key, parts }));
    }

    fn take_out(self, key: u64) {
        self.rows.update(|rows| rows.retain(|row| row.key != key));
    }

    /// How many lines there are.
    pub fn count(self) -> usize {
        self.rows.with(Vec::len)
    }

    /// What stands in them now.
    pub fn lines(self) -> Vec<Vec<String>> {
        let text = |part: &RwSignal<String>| part.get_untracked().trim().to_owned();
        self.rows.with_untracked(|rows| {
            let lines = rows.iter();
            lines
                .map(|row| row.parts.iter().map(text).collect())
                .collect()
        })
    }
}

/// The lines, each with a way to take it out. The fields of the line that was put in as the first are `{id}-0-0`, `{id}-0-1` ….
#[component]
pub fn RowFields(id: &'static str, labels: Vec<&'static str>, rows: Rows) -> impl IntoView {
    let each = move |row: Row| {
        let key = row.key;
        let fields = row.parts.into_iter().zip(labels.clone()).enumerate();
        let fields = fields.map(|(place, (part, label))| {
            view! { <TextField id=format!("{id}-{key}-{place}") label=label value=part on_change=move |text| part.set(text)/> }
        });
        view! {
            <div class="line-of-list">
                <div class="two">{fields.collect_view()}</div>
                <button class="pill" type="button" id=format!("{id}-{key}-out") on:click=move |_| rows.take_out(key)>{say::take_out()}</button>
            </div>
        }
        .into_any()
    };
    view! { <For each=move || rows.rows.get() key=|row| row.key children=each/> }.into_any()
}
