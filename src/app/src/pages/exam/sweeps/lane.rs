//! One eye's card while it is swept: the rulers, what the sweeps come to, and what to do next.

use super::desk::Desk;
use super::picture::{Picture, picture};
use super::words;
use crate::shell::app;
use leptos::prelude::*;
use optics::Step;
use optics::format::plain;
use optics::retinoscopy::NextMove;
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
        each.map(|(which, picture)| view! { <RulerOf eye which picture/> })
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
fn RulerOf(eye: Eye, which: usize, picture: Memo<Picture>) -> impl IntoView {
    let label = Signal::derive(move || picture.with(|picture| words::degrees(picture.meridian)));
    let part = ["first", "second"][which];
    view! {
        <div class="sweep-ruler">
            <Ruler id=format!("ruler-{}-{part}", eye.word()) label=label fills=true
                scale=Signal::derive(move || picture.with(|picture| picture.scale))
                marks=Signal::derive(move || picture.with(|picture| picture.marks.clone()))
                band=Signal::derive(move || Some(picture.with(|picture| picture.band)))
                at=Signal::derive(move || picture.with(|picture| picture.at))
                last=Signal::derive(move || picture.with(|picture| picture.last))/>
        </div>
    }
}

/// What the sweeps come to so far, or what they start from.
#[component]
fn FoundLines(eye: Eye, desk: Desk) -> impl IntoView {
    let net = Memo::new(move |_| desk.value.with(|section| section.net(eye)));
    let cm = move || {
        let cm = desk.value.with(|section| section.setup.distance.cm());
        plain(cm, 1)
    };
    let start = move || desk.sweeping(eye).with(|sweeping| sweeping.start);
    let caption = move || match (net.with(Option::is_some), start()) {
        (true, _) => format!("at neutral, {} cm still in", cm()),
        (false, Some(start)) => format!("starts from {}", start.from.in_words()),
        (false, None) => "starts from nothing".to_owned(),
    };
    let lens = move || {
        let in_path = net.with(|net| net.as_ref().map(|net| net.in_path));
        let shown = in_path.or_else(|| start().map(|start| start.lens));
        shown.map_or_else(
            || crate::words::NOTHING.to_owned(),
            |lens| lens.rounded(Step::Quarter).value.to_string(),
        )
    };
    let habits = app().habits;
    let off = move || {
        net.with(|net| {
            net.as_ref().map_or_else(
                || crate::words::NOTHING.to_owned(),
                |net| {
                    let lens = net.net.with_cylinder(habits.get().written);
                    lens.rounded(Step::Quarter).value.to_string()
                },
            )
        })
    };
    let within = move || {
        let follows = desk.follows(eye);
        let fit = desk.bracket(eye).with(optics::retinoscopy::EyeBracket::fit);
        let known = net.with(Option::is_some) && follows;
        fit.ok()
            .filter(|_| known)
            .map(|fit| format!(" \u{b1}{:.2}", fit.mean_sphere_half_width()))
    };
    let word = eye.word();
    view! {
        <div class="sweep-found" id=format!("net-{word}") class:nothing-yet=move || net.with(Option::is_none)>
            <p class="soft">{caption}</p>
            <p class="lens-value">{lens}</p>
            <div class="last-line"><span>"with the distance off"</span><b id=format!("net-off-{word}")>{off}{within}</b></div>
        </div>
    }
    .into_any()
}

/// The line that a tap takes up.
#[component]
fn NextLine(eye: Eye, next: Memo<NextMove>, desk: Desk) -> impl IntoView {
    let hand = move || {
        let net = desk.value.with(|section| section.net(eye));
        net.map(|net| net.hand.sentence())
    };
    let sentence = move || {
        next.with(|next| match hand() {
            Some(hand) if next.is_enough() => format!("Enough. Next: {hand}"),
            _ => next.sentence(),
        })
    };
    view! {
        <button type="button" class="sweep-next" id=format!("advice-{}", eye.word()) aria-keyshortcuts="x" title="take this up (x)"
            class:doubt=move || next.with(NextMove::doubts)
            aria-disabled=move || next.with(|next| next.take().is_none().then_some("true"))
            on:click=move |_| desk.follow(eye)>
            {sentence}
        </button>
    }
}
