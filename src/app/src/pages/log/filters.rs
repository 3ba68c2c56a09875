//! Which visits: from when to when, where, by whom, with what outcome.

use super::Looking;
use crate::shell::app;
use ::words::app::log as say;
use chrono::NaiveDate;
use leptos::prelude::*;
use papers::log::{Filter, Outcome, Totals, visits};
use widgets::{Field, TextField, TextKind};

/// The questions.
#[component]
pub fn Filters(looking: Looking) -> impl IntoView {
    let story = app().door.story();
    // What may be asked for is what there is, whatever is asked for now.
    let all = Memo::new(move |_| {
        story.with(|story| Totals::of(visits(story, &Filter::default()).iter()))
    });
    let names = |totals: &[papers::log::Total]| -> Vec<String> {
        totals.iter().map(|total| total.name.clone()).collect()
    };
    let places = Memo::new(move |_| all.with(|totals| names(&totals.places)));
    let clinicians = Memo::new(move |_| all.with(|totals| names(&totals.clinicians)));
    let outcomes = Signal::stored(
        Outcome::ALL
            .map(|outcome| outcome.words().to_owned())
            .to_vec(),
    );
    let filter = looking.filter;
    let outcome = move |words: Option<String>| {
        let mut each = Outcome::ALL.into_iter();
        each.find(|outcome| Some(outcome.words()) == words.as_deref())
    };
    view! {
        <section class="sheet log-filters" id="log-filters">
            <Day id="log-from" label=say::from() filter day={|filter| &mut filter.from}/>
            <Day id="log-through" label=say::up() filter day={|filter| &mut filter.through}/>
            <One id="log-place" label=say::home() all=say::every_home() offered=places.into() on_change=move |place| filter.update(|filter| filter.place = place)/>
            <One id="log-clinician" label=say::clinician() all=say::every_clinician() offered=clinicians.into() on_change=move |who| filter.update(|filter| filter.clinician = who)/>
            <One id="log-outcome" label=say::outcome() all=say::every_outcome() offered=outcomes on_change=move |words| filter.update(|filter| filter.outcome = outcome(words))/>
        </section>
    }
    .into_any()
}

#[component]
fn Day(
    id: &'static str,
    label: &'static str,
    day: fn(&mut Filter) -> &mut Option<NaiveDate>,
    filter: RwSignal<Filter>,
) -> impl IntoView {
    let value = Signal::derive(move || {
        let mut filter = filter.get();
        day(&mut filter)
            .map(|day| day.to_string())
            .unwrap_or_default()
    });
    let put = move |text: String| filter.update(|filter| *day(filter) = text.parse().ok());
    view! { <TextField id label value on_change=put kind=TextKind::Date/> }
}

/// One of what there is, or all.
#[component]
fn One(
    id: &'static str,
    label: &'static str,
    all: &'static str,
    offered: Signal<Vec<String>>,
    #[prop(into)] on_change: Callback<Option<String>>,
) -> impl IntoView {
    let choose = move |value: String| {
        let place: Option<usize> = value.parse().ok();
        on_change.run(place.and_then(|place| offered.with(|offered| offered.get(place).cloned())));
    };
    let options = move || {
        let offered = offered.get().into_iter().enumerate();
        offered
            .map(|(place, words)| {
                let words = if words.trim().is_empty() {
                    say::not_written_down().to_owned()
                } else {
                    words
                };
                view! { <option value=place.to_string()>{words}</option> }
            })
            .collect_view()
    };
    view! {
        <Field id label>
            <select class="text-input" id=id on:change:target=move |event| choose(event.target().value())>
                <option value="">{all}</option>
                {options}
            </select>
        </Field>
    }
    .into_any()
}
