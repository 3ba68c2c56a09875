//! Signs for what happened, each with its own shape.

use leptos::prelude::*;

/// What a sign stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EventSign {
    /// Glasses, as asked for.
    Glasses,
    /// Glasses, as worn.
    Worn,
    /// Sent to somebody else.
    Sent,
    /// A drop.
    Drop,
    /// A clouded lens.
    Clouded,
    /// An implant.
    Implant,
    /// Changed afterwards.
    Changed,
}

impl EventSign {
    /// The drawing, on a square of 20.
    pub fn drawing(self) -> AnyView {
        let line = |d: &'static str| view! { <path class="sign-line" d=d/> }.into_any();
        match self {
            Self::Glasses => line("M2 11 a4 4 0 1 0 8 0 a4 4 0 1 0 -8 0 m8 0 a4 4 0 1 1 8 0 a4 4 0 1 1 -8 0"),
            Self::Worn => view! {
                <circle class="sign-full" cx="5.5" cy="11" r="4.5"/>
                <circle class="sign-full" cx="14.5" cy="11" r="4.5"/>
                <path class="sign-line" d="M8 8 h4"/>
            }
            .into_any(),
            Self::Sent => line("M2 10 h15 m-6 -6 l6 6 l-6 6"),
            Self::Drop => view! { <path class="sign-full" d="M10 2 c4 6 5.5 8 5.5 10.5 a5.5 5.5 0 0 1 -11 0 c0 -2.5 1.5 -4.5 5.5 -10.5 Z"/> }.into_any(),
            Self::Clouded => view! {
                <circle class="sign-line" cx="10" cy="10" r="7.5"/>
                <circle class="sign-full" cx="10" cy="10" r="4"/>
            }
            .into_any(),
            Self::Implant => view! {
                <circle class="sign-line" cx="10" cy="10" r="4.5"/>
                <path class="sign-line" d="M10 5.5 c4 -4 7 -2 8 1 M10 14.5 c-4 4 -7 2 -8 -1"/>
            }
            .into_any(),
            Self::Changed => line("M3 7.5 h14 M3 13 h14 M14 3 l-8 14"),
        }
    }
}

/// A sign beside its words.
#[component]
pub fn EventMark(
    /// Which.
    sign: EventSign,
) -> impl IntoView {
    view! { <svg class="event-mark" viewBox="0 0 20 20" aria-hidden="true">{sign.drawing()}</svg> }
}
