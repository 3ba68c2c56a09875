//! The pad: what a thumb does in the dark. It lies at the foot and never moves.

use super::desk::Desk;
use super::keys;
use super::words;
use crate::words::number;
use ::words::app::exam_sweeps as say;
use leptos::prelude::*;
use optics::format::power;
use optics::retinoscopy::{Beam, Motion, NextMove};
use record::{Eye, MovedIn};
use widgets::{Choice, HoldButton, Pick, Sheet, StreakIcon};

/// The pad of the eye being worked on.
#[component]
pub fn Pad(
    /// Both eyes' sweeping.
    desk: Desk,
    /// Called where the lens is to be entered as it stands in the frame.
    #[prop(into)]
    on_frame: Callback<Eye>,
) -> impl IntoView {
    let asking = RwSignal::new(false);
    keys::listen(desk, on_frame, asking);
    let undone = Memo::new(move |_| !desk.has_swept(desk.working.get()));
    view! {
        <section class="pad" id="pad" aria-label=say::sweep_pad()>
            <div class="pad-row pad-way"><BeamChoice desk/><MeridianChoice desk/></div>
            <LensInPlace desk/>
            <div class="pad-row pad-seen">
                <Seen id="seen-with" key="w" seen=Motion::With desk/>
                <Seen id="seen-neutral" key="n" seen=Motion::Neutral desk/>
                <Seen id="seen-against" key="a" seen=Motion::Against desk/>
            </div>
            <div class="pad-row pad-more">
                <button type="button" class="pill" id="undo-sweep" title=say::undo_title() aria-keyshortcuts="u" disabled=undone
                    on:click=move |_| desk.undo()>{say::undo()}</button>
                <button type="button" class="pill pad-still" id="seen-cannot-tell" title=say::cannot_tell_title() aria-keyshortcuts="t"
                    on:click=move |_| desk.sweep(Motion::CannotTell)>{say::cannot_tell()}</button>
                <button type="button" class="pill" id="to-frame" title=say::in_frame_title() aria-keyshortcuts="f"
                    on:click=move |_| on_frame.run(desk.working.get_untracked())>{say::in_frame()}</button>
                <button type="button" class="pill" id="move-in" title=say::moved_in_title() aria-keyshortcuts="i" disabled=undone
                    on:click=move |_| asking.set(true)>{say::moved_in()}</button>
            </div>
            <p class="unseen" id="sweep-said" aria-live="polite">{move || number(&desk.said.get())}</p>
        </section>
        <MovedInSheet desk asking/>
    }
    .into_any()
}

/// A word before a choice where there is room for words in full.
fn in_full(word: &'static str) -> impl IntoView {
    view! { <span class="in-full">{word}</span> }
}

#[component]
fn BeamChoice(desk: Desk) -> impl IntoView {
    let picks = vec![
        Pick::new(Beam::Normal, say::normal)
            .slug("normal")
            .picture(in_full(say::beam())),
        Pick::new(Beam::Reversed, say::reversed).slug("reversed"),
    ];
    let beam = Memo::new(move |_| Some(desk.hand(desk.working.get()).beam));
    view! {
        <Choice id="beam" label=say::beam_b() unseen_label=true picks=picks value=beam
            on_change=move |beam| desk.take_in_hand(desk.working.get_untracked(), |hand| hand.beam = beam)/>
    }
}

/// The streak as it stands, and the meridian that it tests.
#[component]
fn MeridianChoice(desk: Desk) -> impl IntoView {
    let cross = Memo::new(move |_| desk.hand(desk.working.get()).cross());
    let tested = Memo::new(move |_| Some(desk.hand(desk.working.get()).meridian));
    let choice = move || {
        let each = cross.get().into_iter().zip(["first", "second"]);
        let pick = |(meridian, slug): (optics::Meridian, &str)| {
            let streak =
                view! { <StreakIcon stands_at=meridian.streak_degrees()/>{in_full(say::tests())} };
            let tests = || number(&words::degrees(meridian));
            Pick::new(meridian, tests).slug(slug).picture(streak)
        };
        view! {
            <Choice id="tests" label=say::tests_meridian_m() unseen_label=true picks=each.map(pick).collect() value=tested
                on_change=move |meridian| desk.take_in_hand(desk.working.get_untracked(), |hand| hand.meridian = meridian)/>
        }
    };
    view! { <div class="pad-tests">{choice}</div> }
}

#[component]
fn LensInPlace(desk: Desk) -> impl IntoView {
    let lens = move || number(&power(desk.hand(desk.working.get()).lens));
    let step = move |steps| desk.step(desk.working.get_untracked(), steps);
    let next = move || desk.next(desk.working.get()).with(NextMove::take);
    let said = move || next().map_or_else(String::new, |take| number(&words::take(&take)));
    view! {
        <div class="pad-row pad-lens">
            <HoldButton id="lens-less" label=say::lens_less() on_step=move |()| step(-1)>"\u{2212}"</HoldButton>
            <button type="button" class="pad-place" id="take-next" title=say::take_next_title() aria-keyshortcuts="x"
                aria-disabled=move || next().is_none().then_some("true") on:click=move |_| desk.follow(desk.working.get_untracked())>
                <span class="soft">{say::lens_place()}</span><output class="pad-power" id="lens-in-place">{lens}</output>
                <b class="pad-next"><span class="in-place">{said}</span></b>
            </button>
            <HoldButton id="lens-more" label=say::lens_more() on_step=move |()| step(1)>"+"</HoldButton>
        </div>
    }
}

/// One of the three motions. The word below says which way the lens is to go: reversed, the ways change places.
#[component]
fn Seen(id: &'static str, key: &'static str, seen: Motion, desk: Desk) -> impl IntoView {
    let word = words::motion(seen).word();
    let reversed = Memo::new(move |_| desk.hand(desk.working.get()).beam == Beam::Reversed);
    let hint = move || match words::motion(seen).with_normal_beam(reversed.get()) {
        widgets::Motion::With => say::more_plus(),
        widgets::Motion::Against => say::less_plus(),
        widgets::Motion::Neutral | widgets::Motion::Unsure => "",
    };
    view! {
        <button type="button" class="pad-motion" id=id title=format!("{word} ({key})") aria-keyshortcuts=key on:click=move |_| desk.sweep(seen)>
            <b>{capital(word)}</b><small>{hint}</small>
        </button>
    }
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    let first = letters.next().map(|first| first.to_uppercase().to_string());
    first.unwrap_or_default() + letters.as_str()
}

#[component]
fn MovedInSheet(desk: Desk, asking: RwSignal<bool>) -> impl IntoView {
    let answer = move |answer| {
        desk.moved_in(desk.working.get_untracked(), answer);
        asking.set(false);
    };
    view! {
        <Sheet id="moved-in" title=say::both_when_you_moved() open=asking on_close=move |()| asking.set(false)>
            <p class="soft">{say::moving_in_shows()}</p>
            <div class="pad-row pad-answers">
                <button type="button" class="pad-motion" id="moved-in-yes" on:click=move |_| answer(MovedIn::WithInBoth)><b>{say::yes()}</b></button>
                <button type="button" class="pad-motion" id="moved-in-no" on:click=move |_| answer(MovedIn::NotInBoth)><b>{say::no()}</b></button>
            </div>
        </Sheet>
    }
    .into_any()
}
