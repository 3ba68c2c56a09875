//! Frames of the screen, and whether whoever looks at it wants things to move.

use js_sys::Promise;
use leptos::leptos_dom::helpers::{
    AnimationFrameRequestHandle, request_animation_frame, request_animation_frame_with_handle,
    set_timeout,
};
use leptos::prelude::*;
use std::time::Duration;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;

/// Whether the system asks for as little motion as may be.
pub fn as_little_as_may_be() -> bool {
    let asked = window().match_media("(prefers-reduced-motion: reduce)");
    asked.ok().flatten().is_some_and(|asked| asked.matches())
}

/// A page that lies behind another is not drawn at all: it is not waited for longer than this.
const DRAWN_BY: Duration = Duration::from_millis(100);

/// Waits until the screen shows what has changed.
pub async fn drawn() {
    let drawn = Promise::new(&mut |resolve, _| {
        let behind = resolve.clone();
        // A frame is asked for before it is drawn; the task after it finds it drawn. Not a frame later: a draft waits for this, and
        // whoever leaves the page at once must find it kept.
        let after =
            move || set_timeout(move || drop(resolve.call0(&JsValue::NULL)), Duration::ZERO);
        request_animation_frame(after);
        set_timeout(move || drop(behind.call0(&JsValue::NULL)), DRAWN_BY);
    });
    // It is never refused.
    drop(JsFuture::from(drawn).await);
}

/// What `now` gives: at once, and anew after each change that `follow` follows, once the screen shows that change. So a tap is
/// answered before anything is reckoned that nobody looks at first.
pub fn once_drawn<T: Clone + PartialEq + Send + Sync + 'static>(
    follow: impl Fn() + 'static,
    now: impl Fn() -> T + Clone + 'static,
) -> Signal<T> {
    let (told, due) = (RwSignal::new(untrack(&now)), StoredValue::new(false));
    let owner = Owner::current();
    let tell = move |now: &dyn Fn() -> T, owner: Option<&Owner>| {
        due.try_set_value(false);
        // Whoever asked may be gone by now.
        let Some(before) = told.try_get_untracked() else {
            return;
        };
        // What the page provides to those who ask within it is found here too.
        let now = owner.map_or_else(|| untrack(now), |owner| owner.with(|| untrack(now)));
        if now != before {
            told.set(now);
        }
    };
    Effect::new(move |first: Option<()>| {
        follow();
        if first.is_some() && !due.get_value() {
            due.set_value(true);
            let (now, owner) = (now.clone(), owner.clone());
            leptos::task::spawn_local(async move {
                drawn().await;
                tell(&now, owner.as_ref());
            });
        }
    });
    told.into()
}

/// Calls with the seconds since the last frame, frame by frame, while `runs` says so. It ends with whoever called it.
pub fn each_frame(runs: Signal<bool>, step: impl Fn(f64) + Copy + Send + Sync + 'static) {
    let next = StoredValue::new_local(None::<AnimationFrameRequestHandle>);
    let cancel = move || {
        next.try_update_value(|next| next.take().map(|next| next.cancel()));
    };
    Effect::new(move |_| {
        cancel();
        if runs.get() {
            ask(next, js_sys::Date::now(), step);
        }
    });
    on_cleanup(cancel);
}

/// Nothing moves on for longer than this at once, in seconds: a page that was away goes on where it was.
const LONGEST: f64 = 0.1;

fn ask(
    next: StoredValue<Option<AnimationFrameRequestHandle>, LocalStorage>,
    before: f64,
    step: impl Fn(f64) + Copy + Send + Sync + 'static,
) {
    let frame = move || {
        let now = js_sys::Date::now();
        ask(next, now, step);
        step(((now - before) / 1000.0).clamp(0.0, LONGEST));
    };
    let asked = request_animation_frame_with_handle(frame).ok();
    next.try_update_value(|next| *next = asked);
}
