//! What the lenses come to: at neutral, with the distance off, what the hand does, and the whole working.

use crate::shell::app;
use crate::words;
use ::words::app::exam as say;
use leptos::prelude::*;
use optics::retinoscopy::Retinoscopy;
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
    /// The section, for its distances.
    value: Signal<record::Retinoscopy>,
    /// Last time's net, with its date.
    before: Signal<Option<(String, SphereCyl)>>,
) -> impl IntoView {
    let word = eye.word();
    view! {
        <div class="net" id=format!("net-{word}")>
            {move || net.get().map(|net| view! { <NetOf eye=word net cm=value.get().setup.distance.cm() at=value.with(|section| section.held_at(eye))/> })}
            {move || before.get().map(|(when, lens)| view! {
                <div class="last-line"><span>{when}</span><b>{words::lens(&lens.rounded(Step::Quarter).value)}</b></div>
            })}
        </div>
    }
}

#[component]
fn NetOf(eye: &'static str, net: Retinoscopy, cm: f64, at: Option<String>) -> impl IntoView {
    let at_neutral = words::number(&net.in_path.rounded(Step::Quarter).value.to_string());
    let off = net.net.with_cylinder(app().written.get());
    let off = words::number(&off.rounded(Step::Quarter).value.to_string());
    let cautions = net
        .cautions
        .iter()
        .map(|caution| view! { <p class="caution">{words::number(&caution.sentence())}</p> })
        .collect_view();
    let lines = net.working;
    view! {
        <p class="soft">{words::number(&say::at_neutral_still_in(&optics::format::plain(cm, 1)))}</p>
        <p class="lens-value">{at_neutral}</p>
        <div class="last-line"><span>{say::with_distance_off()}</span><b id=format!("net-off-{eye}")>{off}</b></div>
        {at.map(|at| view! { <p class="soft" id=format!("held-at-{eye}")>{at}</p> })}
        <p class="hand" id=format!("hand-{eye}")>{words::number(&say::next(&net.hand.sentence()))}</p>
        {cautions}
        <Disclosure id=format!("working-{eye}") summary=say::show_working()><Lines lines=lines.clone()/></Disclosure>
    }
    .into_any()
}
