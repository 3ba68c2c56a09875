//! How many of what, over all that is looked at.

use super::Looking;
use crate::words;
use ::words::app::log as say;
use leptos::prelude::*;
use optics::format::plain;
use papers::log::{Total, Totals};

/// The totals.
#[component]
pub fn TotalsOf(looking: Looking) -> impl IntoView {
    move || looking.totals.with(shown)
}

fn shown(totals: &Totals) -> AnyView {
    let minutes = totals.minutes_a_visit().map_or_else(
        || words::NOTHING.to_owned(),
        |minutes| plain(minutes.round(), 0),
    );
    let referred: u32 = totals.referrals.iter().map(|total| total.count).sum();
    let glance = [
        (say::visits(), "total-visits", totals.visits.to_string()),
        (
            say::pairs_ordered(),
            "total-pairs",
            totals.pairs.to_string(),
        ),
        (say::referred(), "total-referred", referred.to_string()),
        (say::minutes_visit(), "total-minutes", minutes),
    ];
    let glance = glance
        .map(|(label, id, value)| view! { <div><dt>{label}</dt><dd id=id>{value}</dd></div> });
    view! {
        <dl class="readiness" id="log-totals">{glance.into_iter().collect_view()}</dl>
        <div class="log-parts">
            {part(say::outcome_2(), &totals.outcomes)}
            {part(say::clinician_2(), &totals.clinicians)}
            {part(say::referred(), &totals.referrals)}
        </div>
    }
    .into_any()
}

fn part(title: &'static str, totals: &[Total]) -> AnyView {
    let rows = totals.iter().map(|total| {
        let name = if total.name.trim().is_empty() {
            say::not_written_down()
        } else {
            &total.name
        };
        view! { <tr><th scope="row">{name.to_owned()}</th><td>{total.count}</td></tr> }
    });
    view! { <table class="log-part"><caption>{title}</caption><tbody>{rows.collect_view()}</tbody></table> }
        .into_any()
}
