//! The eye to be found: hidden until it is asked for, or set by hand.

use super::Practice;
use crate::words;
use ::words::app::practice as say;
use leptos::prelude::*;
use optics::SphereCyl;
use optics::format::{plain, power};
use optics::retinoscopy::reflex::Look;
use widgets::{LensField, Pill, Sheet};

/// The eye on its pill; one tap sets it by hand.
#[component]
pub fn EyePill(
    /// What is set up.
    practice: RwSignal<Practice>,
    /// Whether the eye is shown.
    shown: RwSignal<bool>,
) -> impl IntoView {
    let open = RwSignal::new(false);
    let eye = Signal::derive(move || Some(practice.get().eye));
    let word = Signal::derive(move || {
        if shown.get() {
            words::lens(&practice.get().eye)
        } else {
            say::hidden().into()
        }
    });
    let press = move |()| {
        shown.set(true);
        open.set(true);
    };
    let put = move |eye: Option<SphereCyl>| {
        if let Some(eye) = eye {
            practice.update(|now| now.eye = eye);
        }
    };
    view! {
        <Pill id="eye" label=say::eye() value=word on_press=press/>
        <Sheet id="eye-sheet" title=say::eye_itself() open=open on_close=move |()| open.set(false)>
            <LensField id="own" eye=say::drawn() value=eye on_change=put/>
        </Sheet>
    }
    .into_any()
}

/// The eye, and how far from neutral it is along the meridian that the streak tests.
#[component]
pub fn Shown(
    /// What is set up.
    practice: RwSignal<Practice>,
    /// What is seen.
    look: Memo<Option<Look>>,
    /// Whether the eye is shown.
    shown: RwSignal<bool>,
) -> impl IntoView {
    let lacks = move || {
        let more = look.get()?.along().from_neutral();
        let meridian = plain(practice.get().tests.degrees(), 1);
        let said = say::neutral_with_more(&meridian, &power(more));
        Some(words::number(&said))
    };
    view! {
        <div id="shown" role="status">
            <Show when=move || shown.get()>
                <div class="last-line"><span>{say::the_eye()}</span><b id="shown-eye">{move || words::lens(&practice.get().eye)}</b></div>
                <p class="soft" id="shown-lacks">{lacks}</p>
            </Show>
        </div>
    }
}
