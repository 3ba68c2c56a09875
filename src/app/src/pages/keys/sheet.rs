//! The recovery sheet: made, printed, put away.

use crate::edge::clock;
use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::keys as say;
use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use leptos_router::hooks::use_navigate;
use std::sync::Arc;
use vault::RecoverySheet;
use widgets::{TextField, TextKind};

type Sheet = RwSignal<Option<Arc<RecoverySheet>>>;

/// The page.
#[component]
pub fn SheetPage() -> impl IntoView {
    let sheet: Sheet = RwSignal::new(None);
    view! {
        <TopBar title=say::recovery_sheet()><a class="pill" id="back-to-vault" href="/vault">{say::vault()}</a></TopBar>
        <main class="page paper-page">
            {move || match sheet.get() {
                None => view! { <Making sheet/> }.into_any(),
                Some(made) => view! { <Made made/> }.into_any(),
            }}
        </main>
    }
}

#[component]
fn Making(sheet: Sheet) -> impl IntoView {
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
                Ok(made) => sheet.set(Some(Arc::new(made))),
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
fn Made(made: Arc<RecoverySheet>) -> impl IntoView {
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
fn Paper(made: Arc<RecoverySheet>) -> impl IntoView {
    let facts = [
        (say::sheet_made_on(), &made.made_on),
        (say::sheet_made_with(), &made.made_with),
        (say::sheet_records(), &made.records),
    ]
    .map(|(what, said)| view! { <div><dt>{what}</dt><dd>{said.clone()}</dd></div> });
    let groups = (1..).zip(&made.groups).map(|(number, group)| {
        view! { <li><span class="soft">{number}</span><b class="sheet-group">{group.as_str().to_owned()}</b></li> }
    });
    let sentences = [
        say::sheet_opens_all(),
        say::sheet_try_once(),
        say::sheet_later_one(),
    ]
    .map(|sentence| view! { <li>{sentence}</li> });
    view! {
        <article class="rx recovery-sheet" id="recovery-sheet">
            <h2>{say::sheet_heading()}</h2>
            <dl class="rx-facts">{facts.into_iter().collect_view()}</dl>
            <ol class="sheet-groups" id="sheet-code">{groups.collect_view()}</ol>
            <ul class="rx-cautions">{sentences.into_iter().collect_view()}</ul>
        </article>
    }
    .into_any()
}
