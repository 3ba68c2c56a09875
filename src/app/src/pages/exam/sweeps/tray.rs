//! Below the cards: more on the last sweep, what is worth a second thought, and every sweep made.

use super::desk::Desk;
use super::words;
use crate::words::number;
use ::words::app::exam_sweeps as say;
use leptos::prelude::*;
use optics::retinoscopy::{Brightness, EyeBracket, NextMove, Speed, Sweep};
use record::{Age, Eye};
use widgets::Disclosure;

/// The tray of the eye being worked on.
#[component]
pub fn Tray(
    /// Both eyes' sweeping.
    desk: Desk,
    /// The person's age.
    age: Signal<Option<Age>>,
) -> impl IntoView {
    view! {
        <div class="sweep-tray" id="sweep-tray">
            <LastSweep desk/>
            <EnteredOtherwise desk/>
            <Asides desk age/>
            {move || view! { <Everything eye=desk.working.get() desk/> }}
        </div>
    }
    .into_any()
}

fn last(desk: Desk) -> Option<Sweep> {
    let eye = desk.working.get();
    desk.value
        .with(|section| section.swept.of(eye).sweeping.sweeps.last().copied())
}

/// How fast and how bright the last sweep was: never asked for, one tap if it is to be said.
#[component]
fn LastSweep(desk: Desk) -> impl IntoView {
    let said = desk.beside(move || {
        last(desk).map_or_else(
            || say::no_sweep_yet().to_owned(),
            |sweep| words::sweep(&sweep),
        )
    });
    let describe = move |change: fn(&mut Sweep, bool), on: bool| {
        let Some(mut sweep) = untrack(|| last(desk)) else {
            return;
        };
        change(&mut sweep, on);
        desk.change(desk.working.get_untracked(), |swept| {
            swept.describe_last(sweep.speed, sweep.brightness)
        });
    };
    let now = Memo::new(move |_| last(desk));
    let none = Memo::new(move |_| now.with(Option::is_none));
    let toggle = move |id: &'static str,
                       word: &'static str,
                       is: fn(&Sweep) -> bool,
                       change: fn(&mut Sweep, bool)| {
        let on = Memo::new(move |_| now.with(|sweep| sweep.as_ref().is_some_and(is)));
        view! {
            <button type="button" class="pill toggle" id=id aria-pressed=move || on.get().to_string() disabled=none
                on:click=move |_| describe(change, !on.get_untracked())>{word}</button>
        }
    };
    view! {
        <div class="last-sweep" role="group" aria-label=say::last_sweep()>
            <p class="soft" id="last-sweep">{move || number(&said.get())}</p>
            <div class="toggles">
                {toggle("last-slow", say::slow(), |s| s.speed == Some(Speed::Slow), |s, on| s.speed = on.then_some(Speed::Slow))}
                {toggle("last-fast", say::fast(), |s| s.speed == Some(Speed::Fast), |s, on| s.speed = on.then_some(Speed::Fast))}
                {toggle("last-bright", say::bright(), |s| s.brightness == Some(Brightness::Bright), |s, on| s.brightness = on.then_some(Brightness::Bright))}
                {toggle("last-dim", say::dim(), |s| s.brightness == Some(Brightness::Dim), |s, on| s.brightness = on.then_some(Brightness::Dim))}
            </div>
        </div>
    }
    .into_any()
}

/// A finding that was entered otherwise stays until the sweeps' own is taken.
#[component]
fn EnteredOtherwise(desk: Desk) -> impl IntoView {
    let proposed = desk.beside(move || {
        let eye = desk.working.get();
        let follows = desk.follows(eye);
        let bracket = desk.bracket(eye);
        desk.value.with(|section| {
            let proposed = bracket.with(|bracket| section.proposed_by(bracket))?;
            (!follows).then(|| proposed.lens().to_string())
        })
    });
    view! {
        <div id="entered-otherwise">
            {move || proposed.get().map(|lens| view! {
                <p class="notice">
                    <span>{number(&say::entered_stands(&lens))}</span>
                    <button type="button" class="pill" id="take-sweeps" on:click=move |_| desk.take_proposed(desk.working.get_untracked())>{say::take()}</button>
                </p>
            })}
        </div>
    }
}

/// What the circumstances call for, what moving in showed, what the hand does, and the cautions of the net.
#[component]
fn Asides(desk: Desk, age: Signal<Option<Age>>) -> impl IntoView {
    let lines = desk.beside(move || {
        let eye = desk.working.get();
        let follows = desk.follows(eye);
        let net = desk.net(eye).get();
        desk.value.with(|section| {
            let mut lines = section.cautions(eye, age.get());
            lines.extend(
                section
                    .swept
                    .of(eye)
                    .moved_in
                    .map(|answer| answer.sentence().to_owned()),
            );
            if net.is_some() && follows {
                let fit = desk.bracket(eye).with(EyeBracket::fit);
                lines.extend(fit.ok().map(|fit| fit.in_words()));
            }
            lines.extend(section.held_at(eye));
            if let Some(net) = net {
                // Where the sweeps are enough, the next line says it.
                if !desk.next(eye).with(NextMove::is_enough) {
                    lines.push(say::leave_in_frame(&net.hand.sentence()));
                }
                lines.extend(
                    net.cautions
                        .iter()
                        .map(optics::retinoscopy::Caution::sentence),
                );
            }
            lines
        })
    });
    view! {
        <div class="asides" id="sweep-asides">
            {move || lines.get().into_iter().map(|line| view! { <p class="caution">{number(&line)}</p> }).collect_view()}
        </div>
    }
}

/// Every sweep of an eye, and the working of its net.
#[component]
fn Everything(eye: Eye, desk: Desk) -> impl IntoView {
    let sweeps = desk.beside(move || {
        desk.value
            .with(|section| section.swept.of(eye).sweeping.sweeps.clone())
    });
    let summary = Signal::derive(move || say::sweeps(sweeps.with(Vec::len)));
    let net = desk.beside(move || desk.net(eye).get());
    let working = move || {
        let lines = net
            .get()
            .map(|net| net.working)
            .unwrap_or_default()
            .into_iter();
        lines.map(|line| view! { <div class="working-line"><dt>{number(&line.label)}</dt><dd>{number(&line.value)}</dd></div> }).collect_view()
    };
    view! {
        <Disclosure id="all-sweeps" summary=summary>
            <ol class="sweep-list">{move || sweeps.get().iter().map(|sweep| view! { <li>{number(&words::sweep(sweep))}</li> }).collect_view()}</ol>
        </Disclosure>
        <Disclosure id=format!("working-{}", eye.word()) summary=say::show_working()><dl class="working">{working}</dl></Disclosure>
    }
    .into_any()
}
