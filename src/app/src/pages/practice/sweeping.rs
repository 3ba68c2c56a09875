//! The streak going to and fro by itself.

use crate::edge::motion;
use leptos::prelude::*;
use std::f64::consts::TAU;

/// Seconds for once to and fro.
const SECONDS: f64 = 3.0;

/// Where the streak is, in millimetres. It moves while `by_itself`, and from where it was left.
pub fn streak(by_itself: RwSignal<bool>, reach_mm: Signal<f64>) -> RwSignal<f64> {
    let at = RwSignal::new(0.0_f64);
    let phase = StoredValue::new(0.0);
    Effect::new(move |_| {
        if by_itself.get() {
            let share = (at.get_untracked() / reach_mm.get_untracked()).clamp(-1.0, 1.0);
            phase.set_value(share.asin());
        }
    });
    motion::each_frame(by_itself.into(), move |seconds| {
        let Some(now) = phase.try_update_value(|phase| {
            *phase = (*phase + TAU * seconds / SECONDS) % TAU;
            *phase
        }) else {
            return;
        };
        at.set(reach_mm.get_untracked() * now.sin());
    });
    at
}
