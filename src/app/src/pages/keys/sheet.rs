//! The recovery sheet: made, printed, put away.

use crate::edge::clock;
use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::keys as say;
use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use leptos_router::hooks::use_navigate;
use std::sync::Arc;
use vault::SheetLine;
use widgets::{TextField, TextKind};

type Lines = RwSignal<Option<Arc<Vec<SheetLine>>>>;

/// The page.
#[component]
pub fn SheetPage() -> impl IntoView {
    let lines: Lines = RwSignal::new(None);
    view! {
        <TopBar title=say::recovery_sheet()><a class="pill" id="back-to-vault" href="/vault">{say::vault()}</a></TopBar>
        <main class="page paper-page">
            {move || match lines.get() {
                None => view! { <Making lines/> }.into_any(),
                Some(made) => view! { <Made made/> }.into_any(),
            }}
        </main>
    }
}

#[component]
fn Making(lines: Lines) -> impl IntoView {
    let door = app().door;
    let asks = door.standing.asks_passphrase();
    let passphrase = RwSignal::new(String::new());
    let said = RwSignal::new(None::<String>);
    let making = RwSignal::new(false);
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        if making.get_untracked() {
            return;
        }
        making.set(true);
        said.set(None);
        let made_on = untrack(|| words::date(clock::today()));
        leptos::task::spawn_local(async move {
            let passphrase = passphrase.get_untracked();
            match door.make_sheet(&passphrase, &made_on).await {
                Ok(made) => lines.set(Some(Arc::new(made))),
                Err(sentence) => said.set(Some(sentence)),
            }
            making.set(false);
        });
    };
    view! {
        <form class="sheet" id="make-sheet" on:submit=submit>
            <h2>{say::make_recovery_sheet()}</h2>
            <p>{say::sheet_what()}</p>
            <p class="caution">{say::sheet_caution()}</p>
            {asks.then(|| view! {
                <TextField id="sheet-passphrase" label=say::passphrase() kind=TextKind::Secret autocomplete="current-password"
                    value=passphrase on_change=move |text| { passphrase.set(text); said.set(None); } error=said/>
            })}
            {(!asks).then(|| view! { <p class="field-error" role="alert">{move || said.get()}</p> })}
            <button class="act" type="submit" id="show-sheet" aria-disabled=move || making.get().to_string()>
                {move || if making.get() { say::making() } else { say::make_the_sheet() }}
            </button>
        </form>
    }
    .into_any()
}

#[component]
fn Made(made: Arc<Vec<SheetLine>>) -> impl IntoView {
    let door = app().door;
    let navigate = use_navigate();
    let said = RwSignal::new(None::<String>);
    let kept = move |_| {
        let navigate = navigate.clone();
        leptos::task::spawn_local(async move {
            match door.sheet_is_on_paper().await {
                Ok(()) => navigate("/vault", leptos_router::NavigateOptions::default()),
                Err(sentence) => said.set(Some(sentence)),
            }
        });
    };
    view! {
        <Paper made/>
        <section class="sheet no-print">
            <p>{say::shown_this_once()}</p>
            <p class="field-error" role="alert">{move || said.get()}</p>
            <div class="row">
                <button class="pill" type="button" id="print" on:click=move |_| { let _ = window().print(); }>{say::print()}</button>
                <button class="act" type="button" id="sheet-kept" on:click=kept>{say::paper()}</button>
            </div>
        </section>
    }
    .into_any()
}

/// The sheet as it is printed.
#[component]
fn Paper(made: Arc<Vec<SheetLine>>) -> impl IntoView {
    let heading = made.iter().filter_map(|line| match line {
        SheetLine::Heading(said) => Some(view! { <h2>{*said}</h2> }),
        _ => None,
    });
    let facts = made.iter().filter_map(|line| match line {
        SheetLine::Fact(what, said) => {
            Some(view! { <div><dt>{*what}</dt><dd>{said.clone()}</dd></div> })
        }
        _ => None,
    });
    let groups = made.iter().filter_map(|line| match line {
        SheetLine::Group(number, group) => Some(
            view! { <li><span class="soft">{*number}</span><b class="sheet-group">{group.as_str().to_owned()}</b></li> },
        ),
        _ => None,
    });
    let sentences = made.iter().filter_map(|line| match line {
        SheetLine::Sentence(said) => Some(view! { <li>{*said}</li> }),
        _ => None,
    });
    view! {
        <article class="rx recovery-sheet" id="recovery-sheet">
            {heading.collect_view()}
            <dl class="rx-facts">{facts.collect_view()}</dl>
            <ol class="sheet-groups" id="sheet-code">{groups.collect_view()}</ol>
            <ul class="rx-cautions">{sentences.collect_view()}</ul>
        </article>
    }
    .into_any()
}
