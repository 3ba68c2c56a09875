//! One eye's card while it is swept: the rulers, what the sweeps come to, and what to do next.

use super::desk::Desk;
use super::picture::{Picture, picture, scale};
use super::words;
use crate::shell::app;
use crate::words::{NOTHING, number};
use ::words::app::exam_sweeps as say;
use leptos::prelude::*;
use optics::format::plain;
use optics::retinoscopy::{EyeBracket, NextMove};
use optics::{CylinderSign, SphereCyl, Step};
use record::{Eye, OneOf};
use widgets::Ruler;

/// What stands in an eye's card; the eye that waits shows one ruler.
#[component]
pub fn SweepLane(
    /// Which eye.
    eye: Eye,
    /// Both eyes' sweeping.
    desk: Desk,
) -> impl IntoView {
    let pictures = [0, 1].map(|which| picture(desk, eye, which));
    let rulers = move || {
        let shown = if desk.working.get() == eye { 2 } else { 1 };
        let each = pictures.into_iter().enumerate().take(shown);
        each.map(|(which, picture)| view! { <RulerOf eye which picture desk/> })
            .collect_view()
    };
    view! {
        <div class="sweep-rulers">{rulers}</div>
        <FoundLines eye desk/>
        <Show when=move || desk.working.get() == eye>
            <NextLine eye next=desk.next(eye) desk/>
        </Show>
    }
    .into_any()
}

#[component]
fn RulerOf(eye: Eye, which: usize, picture: Memo<Picture>, desk: Desk) -> impl IntoView {
    let label =
        Signal::derive(move || number(&picture.with(|picture| words::degrees(picture.meridian))));
    let part = ["first", "second"][which];
    view! {
        <div class="sweep-ruler">
            <Ruler id=format!("ruler-{}-{part}", eye.word()) label=label fills=true
                scale=scale(desk, eye, picture)
                marks=Signal::derive(move || picture.with(|picture| picture.marks.clone()))
                band=Signal::derive(move || Some(picture.with(|picture| picture.band)))
                at=Signal::derive(move || picture.with(|picture| picture.at))
                last=Signal::derive(move || picture.with(|picture| picture.last))/>
        </div>
    }
}

/// What the sweeps of an eye come to, in words.
#[derive(Clone, PartialEq)]
struct Found {
    nothing: bool,
    caption: String,
    lens: String,
    off: String,
}

fn found(desk: Desk, eye: Eye, written: CylinderSign) -> Found {
    let start = desk.sweeping(eye).with(|sweeping| sweeping.start);
    let shown = |lens: SphereCyl| number(&lens.rounded(Step::Quarter).value.to_string());
    desk.net(eye).with(|net| {
        let Some(net) = net else {
            let caption = start.map_or_else(
                || say::starts_nothing().to_owned(),
                |start| say::starts_from(&start.from.in_words()),
            );
            let lens = start.map_or_else(|| NOTHING.to_owned(), |start| shown(start.lens));
            return Found {
                nothing: true,
                caption,
                lens,
                off: NOTHING.to_owned(),
            };
        };
        let cm = desk.value.with(|section| section.setup.distance.cm());
        let fit = desk.bracket(eye).with(EyeBracket::fit);
        let within = fit
            .ok()
            .filter(|_| desk.follows(eye))
            .map(|fit| number(&format!(" \u{b1}{:.2}", fit.mean_sphere_half_width())));
        Found {
            nothing: false,
            caption: number(&say::at_neutral_still_in(&plain(cm, 1))),
            lens: shown(net.in_path),
            off: shown(net.net.with_cylinder(written)) + &within.unwrap_or_default(),
        }
    })
}

/// What the sweeps come to so far, or what they start from: it stands a frame after the answer.
#[component]
fn FoundLines(eye: Eye, desk: Desk) -> impl IntoView {
    let habits = app().habits;
    let found = desk.beside(move || found(desk, eye, habits.get().written));
    let [caption, lens, off] = [
        |found: &Found| found.caption.clone(),
        |found: &Found| found.lens.clone(),
        |found: &Found| found.off.clone(),
    ]
    .map(|part| move || found.with(part));
    let word = eye.word();
    view! {
        <div class="sweep-found" id=format!("net-{word}") class:nothing-yet=move || found.with(|found| found.nothing)>
            <p class="soft">{caption}</p>
            <p class="lens-value">{lens}</p>
            <div class="last-line"><span>{say::with_distance_off()}</span><b id=format!("net-off-{word}")>{off}</b></div>
        </div>
    }
    .into_any()
}

/// The line that a tap takes up.
#[component]
fn NextLine(eye: Eye, next: Memo<NextMove>, desk: Desk) -> impl IntoView {
    let hand = move || {
        desk.net(eye)
            .with(|net| net.as_ref().map(|net| net.hand.sentence()))
    };
    // The net is reckoned for the answer only where it is the answer.
    let sentence = move || {
        let hand = next.with(NextMove::is_enough).then(hand).flatten();
        number(&hand.map_or_else(
            || next.with(NextMove::sentence),
            |hand| say::enough_next(&hand),
        ))
    };
    view! {
        <button type="button" class="sweep-next" id=format!("advice-{}", eye.word()) aria-keyshortcuts="x" title=say::take_up_advice()
            class:doubt=move || next.with(NextMove::doubts)
            aria-disabled=move || next.with(|next| next.take().is_none().then_some("true"))
            on:click=move |_| desk.follow(eye)>
            <span class="in-place">{sentence}</span>
        </button>
    }
}
