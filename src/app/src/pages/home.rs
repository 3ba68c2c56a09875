//! How things stand with the clinic's relay: a word in the bar at the top, and all of it on the vault's page.

use crate::edge::clock;
use crate::session::{Gate, Home};
use crate::shell::app;
use crate::words;
use ::words::app::pages as say;
use leptos::prelude::*;
use said::InWords;
use sync::exchange::Status;
use vault::Role;
use widgets::TextField;

/// In a few words.
fn in_short(home: &Home) -> String {
    match (home.underway, home.waiting) {
        (Some(progress), _) if progress.done < progress.total => progress.in_words(),
        (_, 0) => say::all_home().into(),
        (_, waiting) => say::waiting(&waiting),
    }
}

/// In a sentence.
fn in_full(home: &Home) -> String {
    let waiting = say::waits_to_go_home(usize::try_from(home.waiting).unwrap_or(usize::MAX));
    match home.last {
        Some(last) => say::last_exchanged(&waiting, &words::moment(clock::at(last))),
        None => waiting,
    }
}

/// What a relay is no help against, as long as no other tablet has the keys.
#[component]
fn OneKey() -> impl IntoView {
    let standing = app().door.standing;
    let alone = move || standing.tablets.with(|tablets| tablets.len() < 2);
    view! {
        <Show when=alone>
            <p class="caution">{say::keys_here_only()}</p>
        </Show>
    }
    .into_any()
}

/// A word that a style or a test can rely on.
fn slug(home: &Home) -> &'static str {
    match (home.underway, home.waiting) {
        (Some(_), _) => "underway",
        (None, 0) => "all",
        (None, _) => "waiting",
    }
}

/// The state in the bar at the top, where this vault has a relay; the way to the whole of it.
#[component]
pub fn HomePill() -> impl IntoView {
    let door = app().door;
    let shown = Memo::new(move |_| {
        let open = door.gate.get() == Gate::Open;
        let home = door.home.get().filter(|_| open)?;
        Some((slug(&home), in_short(&home), in_full(&home)))
    });
    let part = move |pick: fn(&(&'static str, String, String)) -> String| {
        move || shown.with(|shown| shown.as_ref().map(pick))
    };
    view! {
        <Show when=move || shown.with(Option::is_some)>
            <a class="pill home-pill" id="home-state" href="/vault" data-home=part(|shown| shown.0.to_owned()) aria-label=part(|shown| shown.2.clone())>{part(|shown| shown.1.clone())}</a>
        </Show>
    }
    .into_any()
}

/// The vault's page: opening it on the relay, or how things stand there.
#[component]
pub fn HomeSheet() -> impl IntoView {
    let door = app().door;
    let joined = Memo::new(move |_| door.home.with(Option::is_some));
    // A vault that was alone so far has no list of tablets yet, and this one begins it.
    let may_join = Memo::new(move |_| matches!(door.standing.role.get(), None | Some(Role::Lead)));
    view! {
        <section class="sheet" id="home">
            <h2>{say::home()}</h2>
            {move || match (joined.get(), may_join.get()) {
                (true, _) => view! { <Standing/> }.into_any(),
                (false, true) => view! { <Joining/> }.into_any(),
                (false, false) => view! { <p class="soft" id="not-joined">{say::not_on_relay()}</p> }.into_any(),
            }}
        </section>
    }
    .into_any()
}

#[component]
fn Standing() -> impl IntoView {
    let door = app().door;
    let home = Memo::new(move |_| door.home.get());
    let full = move || home.with(|home| home.as_ref().map(in_full));
    let status = move || {
        home.with(|home| {
            let status = &home.as_ref()?.status;
            Some(match status {
                Status::Online => say::relay_answers().to_owned(),
                Status::Trying => say::asking_relay().to_owned(),
                Status::Offline(None) => say::relay_not_asked().to_owned(),
                Status::Offline(Some(why)) => say::tried_again(&why.in_words()),
            })
        })
    };
    let progress = Memo::new(move |_| home.with(|home| home.as_ref()?.underway));
    let said = Memo::new(move |_| {
        home.with(|home| {
            home.as_ref()
                .map(|home| home.said.clone())
                .unwrap_or_default()
        })
    });
    view! {
        <p id="home-full">{full}</p>
        <p class="soft" id="home-status" aria-live="polite">{status}</p>
        {move || progress.get().map(|progress| view! {
            <progress id="home-progress" max=progress.total.to_string() value=progress.done.to_string() aria-label=say::entries_exchanged()></progress>
            <p class="soft">{progress.in_words()}</p>
        })}
        {move || said.get().into_iter().map(|sentence| view! { <p class="caution home-said" role="alert">{sentence}</p> }).collect_view()}
        <button class="act" type="button" id="go-home" on:click=move |_| door.go_home()>{say::exchange_now()}</button>
        <p class="soft">{say::leaves_encrypted()}</p>
        <OneKey/>
    }
    .into_any()
}

#[component]
fn Joining() -> impl IntoView {
    let door = app().door;
    let code = RwSignal::new(String::new());
    let trouble = RwSignal::new(None::<String>);
    let asking = RwSignal::new(false);
    let open = move |_| {
        if asking.get_untracked() {
            return;
        }
        asking.set(true);
        leptos::task::spawn_local(async move {
            trouble.set(door.open_at_relay(&code.get_untracked()).await.err());
            asking.set(false);
        });
    };
    view! {
        <p>{say::relay_offered()}</p>
        <OneKey/>
        <TextField id="invitation" label=say::invitation() value=code on_change=move |text| code.set(text) error=trouble/>
        <button class="act" type="button" id="open-at-relay" on:click=open>{move || if asking.get() { say::asking_relay() } else { say::open_vault_there() }}</button>
    }
    .into_any()
}
