//! Which columns stand in the table and in the files, and the one switch that leaves out who anybody is.

use super::Looking;
use ::words::app::log as say;
use leptos::prelude::*;
use papers::log::Column;
use widgets::Disclosure;

/// The switch, and the columns behind a line.
#[component]
pub fn Columns(looking: Looking) -> impl IntoView {
    let habits = looking.habits;
    let leave = move |nobody: bool| habits.update(|habits| habits.nobody = nobody);
    let summary = Signal::derive(move || {
        let shown = looking.columns.with(Vec::len);
        say::columns_shown(&shown, &Column::ALL.len())
    });
    view! {
        <section class="sheet">
            <label class="tick" for="log-nobody"><input type="checkbox" id="log-nobody" prop:checked=move || !looking.names()
                on:change:target=move |event| leave(event.target().checked())/>
                <span>{say::leave_out_who()}</span></label>
            <Disclosure id="log-columns" summary>
                <div class="log-ticks">{Column::ALL.iter().map(|column| view! { <Tick looking column=*column/> }).collect_view()}</div>
            </Disclosure>
        </section>
    }
    .into_any()
}

#[component]
fn Tick(looking: Looking, column: Column) -> impl IntoView {
    let habits = looking.habits;
    let heading = column.heading();
    let chosen = move || habits.with(|habits| habits.columns.iter().any(|name| name == heading));
    let choose = move |wanted: bool| {
        habits.update(|habits| {
            // In the usual order, whatever was ticked first.
            let kept = Column::ALL.iter().map(|column| column.heading());
            let kept = kept.filter(|name| {
                if *name == heading {
                    wanted
                } else {
                    habits.columns.iter().any(|chosen| chosen == name)
                }
            });
            habits.columns = kept.map(str::to_owned).collect();
        })
    };
    let off = move || column.is_personal() && !looking.names();
    let id = format!("column-{}", heading.replace(' ', "-"));
    view! {
        <label class="tick" for=id.clone()><input type="checkbox" id=id.clone() prop:checked=chosen prop:disabled=off
            on:change:target=move |event| choose(event.target().checked())/><span>{column.said()}</span></label>
    }
    .into_any()
}
