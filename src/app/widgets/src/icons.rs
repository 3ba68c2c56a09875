//! Small drawings that stand beside a word, never in its place.

use leptos::prelude::*;

/// The mark of a question.
#[component]
pub fn AskIcon() -> impl IntoView {
    view! {
        <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
            <circle cx="12" cy="12" r="10" class="icon-line"/>
            <line x1="12" y1="7" x2="12" y2="13.2" class="icon-line"/>
            <circle cx="12" cy="16.8" r="1.5" class="icon-dot"/>
        </svg>
    }
}

/// The streak as it looks in the pupil, standing at an angle. It tests the meridian 90 degrees from that.
#[component]
pub fn StreakIcon(
    /// The angle that the streak stands at, degrees; 90 is upright.
    stands_at: f64,
) -> impl IntoView {
    view! {
        <svg class="icon icon-streak" viewBox="0 0 32 32" aria-hidden="true">
            <circle cx="16" cy="16" r="13" class="icon-line"/>
            <line x1="1" y1="16" x2="31" y2="16" class="icon-streak-line" transform=format!("rotate({:.1} 16 16)", -stands_at)/>
        </svg>
    }
}
