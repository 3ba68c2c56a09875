//! Below the cards: more on the last sweep, what is worth a second thought, and every sweep made.

use super::desk::Desk;
use super::words;
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
    let said =
        move || last(desk).map_or_else(|| "no sweep yet".to_owned(), |sweep| words::sweep(&sweep));
    let describe = move |change: fn(&mut Sweep, bool), on: bool| {
        let Some(mut sweep) = untrack(|| last(desk)) else {
            return;
        };
        change(&mut sweep, on);
        desk.change(desk.working.get_untracked(), |swept| {
            swept.describe_last(sweep.speed, sweep.brightness)
        });
    };
    let toggle = move |id: &'static str,
                       word: &'static str,
                       is: fn(&Sweep) -> bool,
                       change: fn(&mut Sweep, bool)| {
        let on = move || last(desk).is_some_and(|sweep| is(&sweep));
        view! {
            <button type="button" class="pill toggle" id=id aria-pressed=move || on().to_string() disabled=move || last(desk).is_none()
                on:click=move |_| describe(change, !untrack(on))>{word}</button>
        }
    };
    view! {
        <div class="last-sweep" role="group" aria-label="the last sweep">
            <p class="soft" id="last-sweep">{said}</p>
            <div class="toggles">
                {toggle("last-slow", "slow", |s| s.speed == Some(Speed::Slow), |s, on| s.speed = on.then_some(Speed::Slow))}
                {toggle("last-fast", "fast", |s| s.speed == Some(Speed::Fast), |s, on| s.speed = on.then_some(Speed::Fast))}
                {toggle("last-bright", "bright", |s| s.brightness == Some(Brightness::Bright), |s, on| s.brightness = on.then_some(Brightness::Bright))}
                {toggle("last-dim", "dim", |s| s.brightness == Some(Brightness::Dim), |s, on| s.brightness = on.then_some(Brightness::Dim))}
            </div>
        </div>
    }
    .into_any()
}

/// A finding that was entered otherwise stays until the sweeps' own is taken.
#[component]
fn EnteredOtherwise(desk: Desk) -> impl IntoView {
    let proposed = move || {
        let eye = desk.working.get();
        let follows = desk.follows(eye);
        let bracket = desk.bracket(eye);
        desk.value.with(|section| {
            let proposed = bracket.with(|bracket| section.proposed_by(bracket))?;
            (!follows).then(|| proposed.lens().to_string())
        })
    };
    view! {
        <div id="entered-otherwise">
            {move || proposed().map(|lens| view! {
                <p class="notice">
                    <span>{format!("What stands was entered, and does not follow the sweeps. They say {lens}.")}</span>
                    <button type="button" class="pill" id="take-sweeps" on:click=move |_| desk.take_proposed(desk.working.get_untracked())>"take it"</button>
                </p>
            })}
        </div>
    }
}

/// What the circumstances call for, what moving in showed, what the hand does, and the cautions of the net.
#[component]
fn Asides(desk: Desk, age: Signal<Option<Age>>) -> impl IntoView {
    let lines = move || {
        let eye = desk.working.get();
        let follows = desk.follows(eye);
        desk.value.with(|section| {
            let mut lines = section.cautions(eye, age.get());
            lines.extend(
                section
                    .swept
                    .of(eye)
                    .moved_in
                    .map(|answer| answer.sentence().to_owned()),
            );
            if section.net(eye).is_some() && follows {
                let fit = desk.bracket(eye).with(EyeBracket::fit);
                lines.extend(fit.ok().map(|fit| fit.in_words()));
            }
            lines.extend(section.held_at(eye));
            if let Some(net) = section.net(eye) {
                // Where the sweeps are enough, the next line says it.
                if !desk.next(eye).with(NextMove::is_enough) {
                    lines.push(format!(
                        "to leave the net in the frame: {}",
                        net.hand.sentence()
                    ));
                }
                lines.extend(
                    net.cautions
                        .iter()
                        .map(optics::retinoscopy::Caution::sentence),
                );
            }
            lines
        })
    };
    view! {
        <div class="asides" id="sweep-asides">
            {move || lines().into_iter().map(|line| view! { <p class="caution">{line}</p> }).collect_view()}
        </div>
    }
}

/// Every sweep of an eye, and the working of its net.
#[component]
fn Everything(eye: Eye, desk: Desk) -> impl IntoView {
    let sweeps = move || {
        desk.value
            .with(|section| section.swept.of(eye).sweeping.sweeps.clone())
    };
    let summary = Signal::derive(move || format!("{} sweeps", sweeps().len()));
    let working = move || {
        let net = desk.value.with(|section| section.net(eye));
        let lines = net.map(|net| net.working).unwrap_or_default().into_iter();
        lines.map(|line| view! { <div class="working-line"><dt>{line.label}</dt><dd>{line.value}</dd></div> }).collect_view()
    };
    view! {
        <Disclosure id="all-sweeps" summary=summary>
            <ol class="sweep-list">{move || sweeps().iter().map(|sweep| view! { <li>{words::sweep(sweep)}</li> }).collect_view()}</ol>
        </Disclosure>
        <Disclosure id=format!("working-{}", eye.word()) summary="show the working"><dl class="working">{working}</dl></Disclosure>
    }
    .into_any()
}
