//! Notices that nobody has touched the tablet for a while.

use super::clock::now_ms;
use leptos::prelude::*;
use std::time::Duration;

const LOOK_EVERY: Duration = Duration::from_secs(1);

/// Calls `then` once the screen has gone untouched for `seconds`; measured by the clock, so that a tablet that slept
/// locks as soon as it wakes.
pub fn watch(seconds: impl Fn() -> u32 + 'static, then: impl Fn() + 'static) {
    let touched = StoredValue::new(now_ms());
    for event in ["pointerdown", "keydown", "wheel"] {
        let handle = window_event_listener_untyped(event, move |_| touched.set_value(now_ms()));
        on_cleanup(move || handle.remove());
    }
    let look = set_interval_with_handle(
        move || {
            let still = now_ms().saturating_sub(touched.get_value());
            if still >= u64::from(seconds()) * 1000 {
                touched.set_value(now_ms());
                then();
            }
        },
        LOOK_EVERY,
    );
    if let Ok(look) = look {
        on_cleanup(move || look.clear());
    }
}
