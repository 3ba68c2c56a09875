//! Joining a vault that is on another tablet: four codes, the same words on both, a passphrase of its own.

use super::coming::{Named, Who};
use super::new_passphrase::{NewPassphrase, Passphrase, Written};
use crate::pages::keys::{Heard, Told};
use crate::session::{Coming, hear_offer, hear_packet};
use crate::shell::app;
use ::words::app::gate as say;
use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use said::InWords;
use vault::enrolment::{Acquainted, Arrival, Message, Newcomer};

/// How far it has got.
#[derive(Clone, PartialEq)]
enum Step {
    Name,
    Ask(Vec<String>),
    Answer { lines: Vec<String>, words: String },
    Keep,
}

/// What goes on between the codes.
#[derive(Clone, Copy)]
struct Under {
    step: RwSignal<Step>,
    said: RwSignal<Option<String>>,
    who: Named,
    newcomer: StoredValue<Option<Newcomer>, LocalStorage>,
    waiting: StoredValue<Option<Acquainted>, LocalStorage>,
    arrival: StoredValue<Option<Arrival>, LocalStorage>,
}

/// The new tablet's side.
#[component]
pub fn Join() -> impl IntoView {
    let under = Under {
        step: RwSignal::new(Step::Name),
        said: RwSignal::new(None),
        who: Named::new(),
        newcomer: StoredValue::new_local(None),
        waiting: StoredValue::new_local(None),
        arrival: StoredValue::new_local(None),
    };
    view! {
        <section class="sheet gate-sheet" id="join">
            <h1>{say::join_heading()}</h1>
            // Each step is made anew: what was opened or typed in one is not taken over into the next.
            <For each=move || [under.step.get()] key=std::mem::discriminant let:step>
                {match step {
                    Step::Name => view! { <Begin under/> }.into_any(),
                    Step::Ask(lines) => view! { <Ask under lines/> }.into_any(),
                    Step::Answer { lines, words } => view! { <Answer under lines words/> }.into_any(),
                    Step::Keep => view! { <Keep under/> }.into_any(),
                }}
            </For>
        </section>
    }
    .into_any()
}

#[component]
fn Begin(under: Under) -> impl IntoView {
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        let begun = under
            .who
            .given()
            .and_then(|(_, tablet)| Newcomer::new(&tablet).map_err(|error| error.in_words()));
        match begun {
            Ok(newcomer) => {
                let lines = newcomer.request().lines();
                under.newcomer.set_value(Some(newcomer));
                under.said.set(None);
                under.step.set(Step::Ask(lines));
            }
            Err(sentence) => under.said.set(Some(sentence)),
        }
    };
    view! {
        <form class="form" on:submit=submit>
            <p>{say::join_how()}</p>
            <Who named=under.who/>
            <p class="field-error" role="alert">{move || under.said.get()}</p>
            <button class="act" type="submit" id="begin-join">{say::go()}</button>
        </form>
    }
    .into_any()
}

#[component]
fn Ask(under: Under, lines: Vec<String>) -> impl IntoView {
    let heard = move |text: String| {
        let met = under
            .newcomer
            .try_update_value(|newcomer| hear_offer(newcomer, &text))
            .unwrap_or_else(|| Err(say::begin_anew().into()));
        match met {
            Ok(acquainted) => {
                let (lines, words) = (acquainted.reveal().lines(), acquainted.phrase());
                under.waiting.set_value(Some(acquainted));
                under.said.set(None);
                under.step.set(Step::Answer { lines, words });
            }
            Err(sentence) => under.said.set(Some(sentence)),
        }
    };
    view! {
        <h2>{say::join_1()}</h2>
        <Told id="request" lines/>
        <h2>{say::join_2()}</h2>
        <Heard id="offer" label=say::code_on_other() said=under.said on_heard=heard/>
    }
    .into_any()
}

#[component]
fn Answer(under: Under, lines: Vec<String>, words: String) -> impl IntoView {
    let heard = move |text: String| {
        let taken = under
            .waiting
            .try_update_value(|waiting| hear_packet(waiting, &text))
            .unwrap_or_else(|| Err(say::begin_anew().into()));
        match taken {
            Ok(arrival) => {
                under.arrival.set_value(Some(arrival));
                under.said.set(None);
                under.step.set(Step::Keep);
            }
            Err(sentence) => under.said.set(Some(sentence)),
        }
    };
    view! {
        <h2>{say::join_3()}</h2>
        <Told id="reveal" lines/>
        <p>{say::same_words()}</p>
        <output class="offered" id="check-words">{words}</output>
        <h2>{say::join_4()}</h2>
        <Heard id="packet" label=say::last_code() said=under.said on_heard=heard/>
    }
    .into_any()
}

#[component]
fn Keep(under: Under) -> impl IntoView {
    let door = app().door;
    let passphrase = Passphrase::offered();
    let keeping = RwSignal::new(false);
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        if keeping.get_untracked() {
            return;
        }
        let given = passphrase.written_down().and_then(|passphrase| {
            let (examiner, tablet) = under.who.given()?;
            Ok(Coming {
                examiner,
                tablet,
                passphrase,
            })
        });
        let coming = match given {
            Ok(coming) => coming,
            Err(sentence) => return under.said.set(Some(sentence)),
        };
        // An own passphrase that is too weak must not cost the arrival.
        if let Err(weak) = vault::phrase::check(&coming.passphrase) {
            return under.said.set(Some(weak.to_string()));
        }
        let Some(arrival) = under.arrival.try_update_value(Option::take).flatten() else {
            return under.said.set(Some(say::nothing_given().into()));
        };
        keeping.set(true);
        under.said.set(None);
        leptos::task::spawn_local(async move {
            if let Err(sentence) = door.arrive(arrival, coming).await {
                under.said.set(Some(sentence));
                keeping.set(false);
            }
        });
    };
    view! {
        <form class="form" on:submit=submit>
            <h2>{say::phrase_for_tablet()}</h2>
            <p>{say::opens_here_only()}</p>
            <NewPassphrase passphrase/>
            <Written passphrase/>
            <p class="field-error" id="join-said" role="alert">{move || under.said.get()}</p>
            <button class="act" type="submit" id="finish-join" aria-disabled=move || keeping.get().to_string()>
                {move || if keeping.get() { say::opening() } else { say::open_here() }}
            </button>
        </form>
    }
    .into_any()
}
