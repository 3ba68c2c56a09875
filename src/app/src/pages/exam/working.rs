//! What the lenses come to: at neutral, with the distance off, what the hand does, and the whole working.

use crate::shell::app;
use leptos::prelude::*;
use optics::retinoscopy::{Retinoscopy, Setup};
use optics::{SphereCyl, Step};
use record::Eye;
use widgets::{Disclosure, Lines};

/// One eye's result, from the lenses in the light's path to the hand's next move.
#[component]
pub fn NetLines(
    /// Which eye.
    eye: Eye,
    /// The result; none while the finding is not whole.
    net: Signal<Option<Retinoscopy>>,
    /// The set-up that it was found with.
    setup: Signal<Setup>,
    /// Last time's net, with its date.
    before: Signal<Option<(String, SphereCyl)>>,
) -> impl IntoView {
    let eye = eye.word();
    view! {
        <div class="net" id=format!("net-{eye}")>
            {move || net.get().map(|net| view! { <NetOf eye net cm=setup.get().distance.cm()/> })}
            {move || before.get().map(|(when, lens)| view! {
                <div class="last-line"><span>{when}</span><b>{lens.rounded(Step::Quarter).value.to_string()}</b></div>
            })}
        </div>
    }
}

#[component]
fn NetOf(eye: &'static str, net: Retinoscopy, cm: f64) -> impl IntoView {
    let written = app().habits.get().written;
    let at_neutral = net.in_path.rounded(Step::Quarter).value.to_string();
    let off = net
        .net
        .with_cylinder(written)
        .rounded(Step::Quarter)
        .value
        .to_string();
    let cautions = net
        .cautions
        .iter()
        .map(|caution| view! { <p class="caution">{caution.sentence()}</p> })
        .collect_view();
    let lines = net.working;
    view! {
        <p class="soft">{format!("at neutral, {} cm still in", optics::format::plain(cm, 1))}</p>
        <p class="lens-value">{at_neutral}</p>
        <div class="last-line"><span>"with the distance off"</span><b id=format!("net-off-{eye}")>{off}</b></div>
        <p class="hand" id=format!("hand-{eye}")>{format!("Next: {}", net.hand.sentence())}</p>
        {cautions}
        <Disclosure id=format!("working-{eye}") summary="show the working"><Lines lines/></Disclosure>
    }
    .into_any()
}
