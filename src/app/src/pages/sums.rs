//! The sums of the back of an envelope. Nothing that is typed here is kept.

use crate::shell::TopBar;
use leptos::prelude::*;
use optics::Line;
use optics::sums::{self, Ask, Group, Sum, SumError};
use widgets::{Disclosure, Lines, TextField};

/// What was typed for each ask, in their order.
type Texts = RwSignal<Vec<String>>;

/// The page.
#[component]
pub fn SumsPage() -> impl IntoView {
    view! {
        <TopBar title="Sums"><a class="pill" href="/">"Rounds"</a></TopBar>
        <main class="page" id="sums">
            <p class="soft">"A lens is written like +2.00 / \u{2212}1.00 \u{d7} 30. Nothing that you write here is kept."</p>
            {sums::ALL.iter().map(|group| view! { <OneGroup group/> }).collect_view()}
        </main>
    }
}

#[component]
fn OneGroup(group: &'static Group) -> impl IntoView {
    view! {
        <section class="sheet">
            <h2>{group.name}</h2>
            <div>{group.sums.iter().map(|sum| view! { <OneSum sum/> }).collect_view()}</div>
        </section>
    }
    .into_any()
}

#[component]
fn OneSum(sum: &'static Sum) -> impl IntoView {
    let texts = RwSignal::new(vec![String::new(); sum.asks.len()]);
    let answer = Memo::new(move |_| texts.with(|texts| sum.answer(texts)));
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
        <Disclosure id=id.clone() summary=sum.name>
            <div class="form">
                <p class="soft">{sum.about}</p>
                <div class="two sum-asks">{fields()}</div>
                <div class="sum-answer" id=format!("{id}-answer") aria-live="polite">{move || said(answer.get())}</div>
            </div>
        </Disclosure>
    }
    .into_any()
}

#[component]
fn AskField(id: String, ask: &'static Ask, place: usize, texts: Texts) -> impl IntoView {
    let text = Memo::new(move |_| texts.with(|texts| texts[place].clone()));
    let error =
        Signal::derive(move || text.with(|text| ask.amiss(text)).map(|why| why.to_string()));
    let hint = match ask.left_out {
        None => format!("like {}", ask.example),
        Some(means) => format!("like {}; left out, {means}", ask.example),
    };
    view! {
        <TextField id=id label=ask.name hint=hint value=text error=error
            on_change=move |text| texts.update(|texts| texts[place] = text)/>
    }
}

/// The answer; or what stands in its way, unless a field says that or still waits.
fn said(answer: Result<Vec<Line>, SumError>) -> AnyView {
    match answer {
        Ok(lines) => view! { <Lines lines/> }.into_any(),
        Err(error) if error.ask().is_none() => {
            view! { <p class="field-error">{error.to_string()}</p> }.into_any()
        }
        Err(_) => ().into_any(),
    }
}
