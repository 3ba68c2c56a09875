//! The figures at which the second look asks, each with its source, and the local rule that puts another in its place.

use super::set;
use crate::shell::app;
use crate::words;
use ::words::app::settings as say;
use leptos::prelude::*;
use optics::change::Threshold;
use record::{Figure, Thresholds};
use widgets::{Disclosure, Stepper, TextField};

/// Every figure.
#[component]
pub fn Figures() -> impl IntoView {
    let story = app().door.story();
    let differ = Memo::new(move |_| story.with(record::Story::settings_differ));
    let unsettled = move || {
        let names: Vec<&str> = differ.get().iter().map(|figure| figure.words()).collect();
        names.join("; ")
    };
    view! {
        <section class="sheet" id="figures">
            <h2>{say::figures()}</h2>
            <p class="soft">{say::figures_why()}</p>
            <Show when=move || differ.with(|differ| !differ.is_empty())>
                <p class="notice" id="figures-differ">{say::figures_differ()}{unsettled}{say::figures_settle()}</p>
            </Show>
            <div class="figure-list">{Figure::ALL.iter().map(|figure| view! { <OneFigure figure=*figure/> }).collect_view()}</div>
        </section>
    }
    .into_any()
}

/// "24 mmHg".
fn written(figure: Figure, value: f64) -> String {
    words::number(&figure.unit().written(value))
}

#[component]
fn OneFigure(figure: Figure) -> impl IntoView {
    let story = app().door.story();
    let local = Memo::new(move |_| story.with(|story| story.settings().local(figure).cloned()));
    let usual = StoredValue::new(figure.of(&Thresholds::default()).clone());
    let holds = move || {
        let value = local.with(|local| local.as_ref().map(Threshold::value));
        value.unwrap_or_else(|| usual.with_value(Threshold::value))
    };
    let summary = Signal::derive(move || {
        let whose = if local.with(Option::is_some) {
            say::by_local_rules()
        } else {
            ""
        };
        format!("{} {}{whose}", figure.words(), written(figure, holds()))
    });
    view! {
        <Disclosure id=format!("figure-{}", figure.slug()) summary=summary><Change figure local usual/></Disclosure>
    }
    .into_any()
}

/// The figure with its source, and what puts another in its place.
#[component]
fn Change(
    figure: Figure,
    local: Memo<Option<Threshold>>,
    usual: StoredValue<Threshold>,
) -> impl IntoView {
    let door = app().door;
    let slug = figure.slug();
    let unit = figure.unit();
    let held = local.get_untracked();
    let value = RwSignal::new(
        held.as_ref()
            .map_or_else(|| usual.with_value(Threshold::value), Threshold::value),
    );
    let source = RwSignal::new(
        held.map(|held| held.source().to_owned())
            .unwrap_or_default(),
    );
    let refused = RwSignal::new(None::<String>);
    let says = move || {
        local.with(|local| {
            let held = local.as_ref().map(|held| held.source().to_owned());
            held.unwrap_or_else(|| usual.with_value(|usual| usual.source().to_owned()))
        })
    };
    let keep = move |_| {
        let threshold = Threshold::new(
            value.get_untracked(),
            source.get_untracked().trim().to_owned(),
        );
        match threshold {
            Ok(threshold) => set(door, refused, move |settings| {
                settings.set(figure, threshold)
            }),
            Err(error) => refused.set(Some(error.to_string())),
        }
    };
    let back = move |_| {
        set(door, refused, move |settings| settings.set_back(figure));
        value.set(usual.with_value(Threshold::value));
        source.set(String::new());
    };
    let back_words =
        move || say::back_to_usual(&written(figure, usual.with_value(Threshold::value)));
    view! {
        <div class="figure-change">
            <p class="soft">{say::who_says_so()}{says}</p>
            <div class="writes as-if-not-there">
            <Stepper id=format!("value-{slug}") label=unit.word() value=Signal::derive(move || Some(value.get())) step=unit.step() min=0.0 max=unit.most()
                decimals=unit.decimals() on_change=move |new| value.set(new)/>
            <TextField id=format!("rule-{slug}") label=say::which_rule() value=source on_change=move |text| source.set(text) error=refused/>
            <div class="pills">
                <button type="button" class="pill" id=format!("set-{slug}") on:click=keep>{say::let_hold_here()}</button>
                <Show when=move || local.with(Option::is_some)>
                    <button type="button" class="pill" id=format!("back-{slug}") on:click=back>{back_words}</button>
                </Show>
            </div>
            </div>
        </div>
    }
    .into_any()
}
