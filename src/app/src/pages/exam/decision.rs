//! Decision: glasses or not, a referral, what was said, and when to come back.

use ::words::app::exam as say;
use leptos::prelude::*;
use record::{Decision, Glasses, Recall, Referral, Urgency};
use widgets::{Choice, Pick, Stepper, TextField, TextKind, Unit};

/// The section's page.
#[component]
pub fn DecisionEditor(
    /// What stands now.
    value: Signal<Decision>,
    /// Called with every change.
    on_change: Callback<Decision>,
) -> impl IntoView {
    let put = move |with: &dyn Fn(&mut Decision)| {
        let mut next = value.get_untracked();
        with(&mut next);
        on_change.run(next);
    };
    let glasses = vec![
        Pick::new(Glasses::Prescribe, say::prescribe).below(say::these_lenses()),
        Pick::new(Glasses::LeaveAlone, say::leave_alone).below(say::better_off_now()),
    ];
    view! {
        <section class="sheet">
            <Choice id="glasses" label=say::glasses_2() look=widgets::ChoiceLook::Squares picks=glasses
                value=Signal::derive(move || value.get().glasses) on_change=move |picked| put(&|now| now.glasses = Some(picked))/>
            <TextField id="advice" label=say::what_said_whom() kind=TextKind::Lines value=Signal::derive(move || value.get().advice)
                on_change=move |text: String| put(&|now| now.advice.clone_from(&text))/>
            <Refer value on_change/>
            <Again value on_change/>
            <TextField id="decision-note" label=say::note_record_only() kind=TextKind::Lines value=Signal::derive(move || value.get().note)
                on_change=move |text: String| put(&|now| now.note.clone_from(&text))/>
        </section>
    }
    .into_any()
}

#[component]
fn Refer(value: Signal<Decision>, on_change: Callback<Decision>) -> impl IntoView {
    let put = move |refer| {
        on_change.run(Decision {
            refer,
            ..value.get_untracked()
        })
    };
    let referral = Signal::derive(move || value.get().refer);
    let soon = move |picked: Option<Urgency>| {
        let to = referral
            .get_untracked()
            .map(|referral| referral.to)
            .unwrap_or_default();
        put(picked.map(|urgency| Referral { urgency, to }));
    };
    let whom = move |to: String| {
        if let Some(referral) = referral.get_untracked() {
            put(Some(Referral { to, ..referral }));
        }
    };
    let picks = std::iter::once(Pick::new(None, say::no_referral).slug("none"))
        .chain(Urgency::ALL.map(|urgency| Pick::new(Some(urgency), || urgency.word())))
        .collect();
    view! {
        <Choice id="refer" label=say::refer() look=widgets::ChoiceLook::Squares picks=picks
            value=Signal::derive(move || Some(referral.get().map(|referral| referral.urgency))) on_change=soon/>
        <Show when=move || referral.get().is_some()>
            <TextField id="refer-to" label=say::whom() value=Signal::derive(move || referral.get().map(|referral| referral.to).unwrap_or_default()) on_change=whom/>
            <p class="caution">{say::how_soon()}</p>
        </Show>
    }
}

#[component]
fn Again(value: Signal<Decision>, on_change: Callback<Decision>) -> impl IntoView {
    let put = move |recall| {
        on_change.run(Decision {
            recall,
            ..value.get_untracked()
        })
    };
    let recall = Signal::derive(move || value.get().recall);
    let months = move |months: f64| {
        let reason = recall
            .get_untracked()
            .map(|recall| recall.reason)
            .unwrap_or_default();
        put(Some(Recall {
            months: months as u16,
            reason,
        }));
    };
    let why = move |reason: String| {
        if let Some(recall) = recall.get_untracked() {
            put(Some(Recall { reason, ..recall }));
        }
    };
    view! {
        <Stepper id="recall" label=say::see_again() value=Signal::derive(move || recall.get().map(|recall| f64::from(recall.months)))
            step=1.0 decimals=0 start=12.0 min=1.0 max=60.0 page=6.0 unit=Unit::Months on_change=months on_clear=move |()| put(None)/>
        <Show when=move || recall.get().is_some()>
            <TextField id="recall-why" label=say::why_then() value=Signal::derive(move || recall.get().map(|recall| recall.reason).unwrap_or_default()) on_change=why/>
        </Show>
    }
}
