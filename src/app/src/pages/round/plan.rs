//! The plan of a round: its day, what to know, the notice that local rules may want, and calling it off.

use super::undo::Doing;
use crate::shell::app;
use crate::words;
use ::words::app::round as say;
use chrono::NaiveDate;
use leptos::prelude::*;
use record::{Notice, Round, RoundDetails, RoundId};
use widgets::{Disclosure, TextField, TextKind};

/// The part of the page.
#[component]
pub fn PlanOfRound(round: RoundId) -> impl IntoView {
    let details = details(round);
    // A change from elsewhere must not take what is being typed.
    let has = Memo::new(move |_| details.with(Option::is_some));
    let summary = Signal::derive(move || {
        let notice = details.with(|details| {
            details
                .as_ref()
                .and_then(|details| details.notice.as_ref().map(told))
        });
        match notice {
            Some(told) => say::plan_told(&told),
            None => say::plan().to_owned(),
        }
    });
    view! {
        <Disclosure id="round-plan" summary>
            {move || has.get().then(|| view! { <Fields round details/> })}
        </Disclosure>
    }
}

fn details(round: RoundId) -> Memo<Option<RoundDetails>> {
    let story = app().door.story();
    Memo::new(move |_| story.with(|story| story.round(&round).map(Round::details).cloned()))
}

fn told(notice: &Notice) -> String {
    match notice.given_on {
        Some(day) => say::notice_given(&words::date(day)),
        None => say::notice_not_given().to_owned(),
    }
}

fn typed(date: Option<NaiveDate>) -> RwSignal<String> {
    RwSignal::new(date.map(|date| date.to_string()).unwrap_or_default())
}

/// The day in a field; none where it is blank.
fn day_of(field: RwSignal<String>) -> Option<NaiveDate> {
    NaiveDate::parse_from_str(field.get_untracked().trim(), "%Y-%m-%d").ok()
}

/// The fields as typed; they are kept together.
#[component]
fn Fields(round: RoundId, details: Memo<Option<RoundDetails>>) -> impl IntoView {
    let (door, doing) = (app().door, Doing::here());
    let before = details
        .get_untracked()
        .unwrap_or_else(|| RoundDetails::new(NaiveDate::default(), None));
    let notice = before.notice.clone().unwrap_or_default();
    let date = typed(Some(before.date));
    let note = RwSignal::new(before.note);
    let (to, said) = (RwSignal::new(notice.to), RwSignal::new(notice.words));
    let (given, remind) = (typed(notice.given_on), typed(notice.remind_on));
    let off = Memo::new(move |_| {
        details.with(|details| details.as_ref().is_some_and(|details| details.called_off))
    });
    let refused = RwSignal::new(None::<String>);
    let kept = RwSignal::new(false);
    let keep = move |_| {
        kept.set(false);
        let Some(date) = day_of(date) else {
            return refused.set(Some(say::needs_day().to_owned()));
        };
        let text = |field: RwSignal<String>| field.get_untracked().trim().to_owned();
        let notice = Notice {
            to: text(to),
            words: text(said),
            given_on: day_of(given),
            remind_on: day_of(remind),
        };
        let notice = (notice != Notice::default()).then_some(notice);
        let mut wanted = RoundDetails::new(date, None);
        wanted.notice.clone_from(&notice);
        refused.set(
            wanted
                .check()
                .into_iter()
                .next()
                .map(|error| error.sentence),
        );
        if refused.with_untracked(Option::is_none) {
            let note = text(note);
            let write = door.change_round(round, move |_, details| {
                details.date = date;
                details.note = note;
                details.notice = notice;
            });
            doing.run_then(write, move || {
                kept.try_set(true);
            });
        }
    };
    let call_off = move |_| {
        doing.run(door.change_round(round, |_, details| details.called_off = !details.called_off))
    };
    view! {
        <div class="form">
            <TextField id="round-date" label=say::day() kind=TextKind::Date value=date on_change=move |text| date.set(text)/>
            <TextField id="round-note" label=say::know_day() kind=TextKind::Lines value=note on_change=move |text| note.set(text)/>
            <h3>{say::notice_heading()}</h3>
            <div class="two"><TextField id="notice-to" label=say::whom() value=to error=refused on_change=move |text| to.set(text)/>
            <TextField id="notice-words" label=say::notice_words() value=said on_change=move |text| said.set(text)/></div>
            <div class="two"><TextField id="notice-remind" label=say::remind_me() kind=TextKind::Date value=remind on_change=move |text| remind.set(text)/>
            <TextField id="notice-given" label=say::given() kind=TextKind::Date value=given on_change=move |text| given.set(text)/></div>
            <div class="row">
                <button type="button" class="pill" id="call-off" on:click=call_off>{move || if off.get() { say::takes_place_after_all() } else { say::call_round_off() }}</button>
                <span role="status" class="soft">{move || kept.get().then_some(say::kept())}</span>
                <button type="button" class="act" id="keep-plan" on:click=keep>{say::keep()}</button>
            </div>
        </div>
    }
    .into_any()
}
