//! A lead brings another tablet in: four codes go to and fro, and both show the same words.

use super::message::{Heard, Told};
use super::{TABLETS, roles};
use crate::session::hear_reveal;
use crate::shell::{TopBar, app};
use ::words::app::keys as say;
use leptos::prelude::*;
use vault::Role;
use vault::enrolment::{Checked, Host, Message};
use widgets::Choice;

/// How far it has got.
#[derive(Clone, PartialEq)]
enum Step {
    Ask,
    Offer { lines: Vec<String>, name: String },
    Check { words: String, name: String },
    Packet { lines: Vec<String>, name: String },
}

/// What goes on between the codes.
#[derive(Clone, Copy)]
struct Under {
    step: RwSignal<Step>,
    said: RwSignal<Option<String>>,
    host: StoredValue<Option<Host>, LocalStorage>,
    checked: StoredValue<Option<Checked>, LocalStorage>,
}

/// The page.
#[component]
pub fn EnrolPage() -> impl IntoView {
    let under = Under {
        step: RwSignal::new(Step::Ask),
        said: RwSignal::new(None),
        host: StoredValue::new_local(None),
        checked: StoredValue::new_local(None),
    };
    view! {
        <TopBar title=say::add_tablet()><a class="pill" id="back-to-tablets" href=TABLETS>{say::tablets()}</a></TopBar>
        <main class="page">
            // Each step is made anew: what was opened or typed in one is not taken over into the next.
            <For each=move || [under.step.get()] key=std::mem::discriminant let:step>
                {match step {
                    Step::Ask => view! { <Ask under/> }.into_any(),
                    Step::Offer { lines, name } => view! { <Offered under lines name/> }.into_any(),
                    Step::Check { words, name } => view! { <Check under words name/> }.into_any(),
                    Step::Packet { lines, name } => view! { <Handed lines name/> }.into_any(),
                }}
            </For>
        </main>
    }
}

#[component]
fn Ask(under: Under) -> impl IntoView {
    let door = app().door;
    let heard = move |text: String| {
        leptos::task::spawn_local(async move {
            match door.hear_request(&text).await {
                Ok(host) => {
                    let (lines, name) = (host.offer().lines(), host.name().to_owned());
                    under.host.set_value(Some(host));
                    under.step.set(Step::Offer { lines, name });
                }
                Err(sentence) => under.said.set(Some(sentence)),
            }
        });
    };
    view! {
        <section class="sheet" id="enrol-1">
            <h2>{say::enrol_1()}</h2>
            <p>{say::enrol_how()}</p>
            <Heard id="request" label=say::code_new_tablet() said=under.said on_heard=heard/>
        </section>
    }
    .into_any()
}

#[component]
fn Offered(under: Under, lines: Vec<String>, name: String) -> impl IntoView {
    let called = StoredValue::new(name.clone());
    let heard = move |text: String| {
        let checked = under
            .host
            .try_update_value(|host| hear_reveal(host, &text))
            .unwrap_or_else(|| Err(say::begin_anew().into()));
        match checked {
            Ok(checked) => {
                let words = checked.phrase();
                under.checked.set_value(Some(checked));
                let name = called.get_value();
                under.step.set(Step::Check { words, name });
            }
            Err(sentence) => under.said.set(Some(sentence)),
        }
    };
    view! {
        <section class="sheet" id="enrol-2">
            <h2>{say::enrol_2()}{name}</h2>
            <Told id="offer" lines/>
        </section>
        <section class="sheet" id="enrol-3">
            <h2>{say::enrol_3()}</h2>
            <Heard id="reveal" label=say::answer_new_tablet() said=under.said on_heard=heard/>
        </section>
    }
    .into_any()
}

#[component]
fn Check(under: Under, words: String, name: String) -> impl IntoView {
    let door = app().door;
    let role = RwSignal::new(Role::Clinician);
    let called = StoredValue::new(name.clone());
    let admit = move |_| {
        let Some(checked) = under.checked.try_update_value(Option::take).flatten() else {
            return;
        };
        leptos::task::spawn_local(async move {
            match door.let_in(checked, role.get_untracked()).await {
                Ok(lines) => {
                    let name = called.get_value();
                    under.step.set(Step::Packet { lines, name });
                }
                Err(sentence) => under.said.set(Some(sentence)),
            }
        });
    };
    let differ = move |_| {
        under.checked.set_value(None);
        under.said.set(Some(say::words_differed().into()));
        under.step.set(Step::Ask);
    };
    view! {
        <section class="sheet" id="enrol-check">
            <h2>{say::both_show()}</h2>
            <output class="offered" id="check-words">{words}</output>
            <p>{say::read_them_off()}{name}{say::itself()}</p>
            <Choice id="enrol-role" label=say::what_it_may() picks=roles() value=Signal::derive(move || Some(role.get())) on_change=move |picked| role.set(picked)/>
            <p class="field-error" role="alert">{move || under.said.get()}</p>
            <div class="row">
                <button class="pill" type="button" id="words-differ" on:click=differ>{say::they_differ()}</button>
                <button class="act" type="button" id="words-same" on:click=admit>{say::same_let()}</button>
            </div>
        </section>
    }
    .into_any()
}

#[component]
fn Handed(lines: Vec<String>, name: String) -> impl IntoView {
    let home = app().door.home;
    view! {
        <section class="sheet" id="enrol-4">
            <h2>{say::enrol_4()}{name}</h2>
            <p>{say::only_it_reads()}</p>
            <Told id="packet" lines/>
            <p class="soft">{move || if home.with(Option::is_some) {
                say::comes_by_relay()
            } else {
                say::then_carry()
            }}</p>
            <div class="row"><a class="act" id="enrolled" href=TABLETS>{say::done()}</a></div>
        </section>
    }
    .into_any()
}
