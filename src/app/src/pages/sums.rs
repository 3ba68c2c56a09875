//! The sums of the back of an envelope. Nothing that is typed here is kept.

use crate::shell::TopBar;
use crate::words;
use ::words::app::pages as say;
use leptos::prelude::*;
use optics::Line;
use optics::sums::{self, Ask, Group, Sum, SumError};
use record::FarUnit;
use widgets::{Disclosure, Lines, TextField};

/// What was typed for each ask, in their order.
type Texts = RwSignal<Vec<String>>;

/// The page.
#[component]
pub fn SumsPage() -> impl IntoView {
    view! {
        <TopBar title=say::sums()><a class="pill" href="/">{say::rounds()}</a></TopBar>
        <main class="page" id="sums">
            <p class="soft">{move || words::number(say::lens_written_like())}</p>
            {sums::ALL.iter().map(|group| view! { <OneGroup group/> }).collect_view()}
        </main>
    }
}

#[component]
fn OneGroup(group: &'static Group) -> impl IntoView {
    view! {
        <section class="sheet">
            <h2>{group.name()}</h2>
            <div>{group.sums.iter().map(|sum| view! { <OneSum sum/> }).collect_view()}</div>
        </section>
    }
    .into_any()
}

#[component]
fn OneSum(sum: &'static Sum) -> impl IntoView {
    let texts = RwSignal::new(vec![String::new(); sum.asks.len()]);
    let answer = Memo::new(move |_| texts.with(|texts| sum.answer(&meant(sum, texts))));
    let id = format!("sum-{}", sum.slug);
    let called = id.clone();
    let fields = move || {
        let each = sum.asks.iter().enumerate().map(|(place, ask)| {
            let id = format!("{called}-{}", ask.slug);
            view! { <AskField id ask place texts/> }
        });
        each.collect_view()
    };
    view! {
        <Disclosure id=id.clone() summary=sum.name()>
            <div class="form">
                <p class="soft">{move || words::number(sum.about())}</p>
                <div class="two sum-asks">{fields()}</div>
                <div class="sum-answer" id=format!("{id}-answer") aria-live="polite">{move || said(answer.get())}</div>
            </div>
        </Disclosure>
    }
    .into_any()
}

/// What a good answer looks like, and what leaving it out means.
fn hint(ask: &Ask) -> String {
    let hint = match ask.left_out() {
        None => say::like(&ask.example()),
        Some(means) => say::like_left_out(&ask.example(), &means),
    };
    let far = words::manner().far;
    let hint = if ask.is_in_metres() {
        far.in_words(&hint)
    } else {
        hint
    };
    words::number(&hint)
}

#[component]
fn AskField(id: String, ask: &'static Ask, place: usize, texts: Texts) -> impl IntoView {
    let text = Memo::new(move |_| texts.with(|texts| texts[place].clone()));
    let error = Signal::derive(move || {
        let far = words::manner().far;
        let why = text.with(|text| ask.amiss(&of_ask(ask, far, text)))?;
        Some(words::number(&why.to_string()))
    });
    let hint = untrack(|| hint(ask));
    view! {
        <TextField id=id label=ask.name() hint=hint value=text error=error
            on_change=move |text| texts.update(|texts| texts[place] = text)/>
    }
}

/// The texts as their writer means them: whoever reads distances in feet writes them so.
fn meant(sum: &Sum, texts: &[String]) -> Vec<String> {
    let far = words::manner().far;
    let asked = sum.asks.iter().zip(texts);
    asked.map(|(ask, text)| of_ask(ask, far, text)).collect()
}

fn of_ask(ask: &Ask, far: FarUnit, text: &str) -> String {
    if ask.is_in_metres() {
        far.meant(text)
    } else {
        text.to_owned()
    }
}

/// The answer; or what stands in its way, unless a field says that or still waits.
fn said(answer: Result<Vec<Line>, SumError>) -> AnyView {
    match answer {
        Ok(lines) => view! { <Lines lines/> }.into_any(),
        Err(error) if error.ask().is_none() => {
            view! { <p class="field-error">{words::number(&error.to_string())}</p> }.into_any()
        }
        Err(_) => ().into_any(),
    }
}
