//! What sweeping starts from: last time, another lens, or nothing.

use super::desk::Desk;
use ::words::app::exam_sweeps as say;
use leptos::prelude::*;
use optics::retinoscopy::bracket::{Source, Start};
use optics::{SphereCyl, Step};
use record::{Eye, OneOf};
use widgets::{Choice, ChoiceLook, LensField, Pick, Pill, Sheet};

/// What the eye being worked on starts from.
#[component]
pub fn StartPill(desk: Desk) -> impl IntoView {
    let open = RwSignal::new(false);
    let shown = Signal::derive(move || {
        let start = desk.start(desk.working.get()).get();
        let from = start.map_or(say::nothing(), |start| start.from.in_words());
        from.to_owned()
    });
    view! {
        <Pill id="start" label=say::starts() value=shown on_press=move |()| open.set(true)/>
        <Sheet id="start-sheet" title=say::what_does_start() open=open on_close=move |()| open.set(false)>
            <StartChoice desk eye=desk.working.get_untracked()/>
        </Sheet>
    }
    .into_any()
}

/// A source, and the lens that it gave where nobody knows it yet.
#[component]
fn StartChoice(desk: Desk, eye: Eye) -> impl IntoView {
    let start = move || desk.start(eye).get();
    let from = RwSignal::new(untrack(start).map(|start| start.from));
    let known = move |source| match source {
        Source::LastTime => desk.last(eye),
        Source::FellowEye => desk
            .value
            .with(|section| Some(section.net(fellow(eye))?.net)),
        Source::Worn | Source::Machine => None,
    };
    let put = move |lens: Option<SphereCyl>| {
        let from = from.get_untracked();
        let start = from.zip(lens).map(|(from, lens)| Start { lens, from });
        desk.put_start(eye, start);
    };
    let choose = move |source: Option<Source>| {
        from.set(source);
        let lens = source.and_then(|source| untrack(|| known(source)));
        put(lens.map(|lens| lens.rounded(Step::Quarter).value));
    };
    let mut picks = vec![Pick::new(None, say::nothing).slug("nothing")];
    if untrack(|| desk.last(eye)).is_some() {
        picks.push(Pick::new(Some(Source::LastTime), say::last_time).slug("last"));
    }
    picks.push(Pick::new(Some(Source::Worn), say::glasses_worn).slug("worn"));
    picks.push(Pick::new(Some(Source::Machine), say::machines_reading).slug("machine"));
    picks.push(Pick::new(Some(Source::FellowEye), say::fellow_eye).slug("fellow"));
    let typed = move || from.get().is_some_and(|from| from != Source::LastTime);
    let lens = Signal::derive(move || start().map(|start| start.lens));
    view! {
        <Choice id="start-from" label=say::what_starts() unseen_label=true look=ChoiceLook::Squares picks=picks
            value=Signal::derive(move || Some(from.get())) on_change=choose/>
        <Show when=typed>
            <LensField id="start-lens" eye=eye.said() value=lens on_change=put/>
        </Show>
    }
    .into_any()
}

const fn fellow(eye: Eye) -> Eye {
    match eye {
        Eye::Right => Eye::Left,
        Eye::Left => Eye::Right,
    }
}
