//! The log to look at: visits and outcomes by home and week, who waits to be seen again, how long visits take.

use super::Looking;
use crate::shell::app;
use crate::words;
use ::words::app::log as say;
use chrono::NaiveDate;
use leptos::prelude::*;
use papers::log::{Length, Outcome, Waiting, Week, WeeksAt, lengths, waiting, weeks};

/// So many homes are drawn before somebody asks for all.
const AT_FIRST: usize = 6;

/// The three plots.
#[component]
pub fn Plots(looking: Looking, today: NaiveDate) -> impl IntoView {
    let story = app().door.story();
    let homes = Memo::new(move |_| looking.visits.with(|visits| weeks(visits)));
    let due = Memo::new(move |_| {
        story.with(|story| looking.visits.with(|visits| waiting(story, visits, today)))
    });
    let long = Memo::new(move |_| looking.visits.with(|visits| lengths(visits)));
    view! {
        <section class="sheet" id="plot-weeks">
            <h2>{say::visits_home_week()}</h2>
            <Key/>
            <Homes homes/>
        </section>
        <div class="log-two">
            <section class="sheet" id="plot-waiting"><h2>{say::waiting_seen_again()}</h2>{move || due.with(waiting_bars)}</section>
            <section class="sheet" id="plot-lengths"><h2>{say::time_visit_took()}</h2>{move || long.with(|long| length_bars(long))}</section>
        </div>
    }
    .into_any()
}

/// The four ways in which an outcome is drawn, each beside its words.
#[component]
fn Key() -> impl IntoView {
    let each = Outcome::ALL.iter().enumerate().map(|(at, outcome)| {
        view! { <li><svg class="log-swatch" viewBox="0 0 10 10" aria-hidden="true"><rect class=format!("log-bar log-bar-{at}") x="0.5" y="0.5" width="9" height="9"/></svg>{outcome.words()}</li> }
    });
    view! { <ul class="log-key">{each.collect_view()}</ul> }
}

#[component]
fn Homes(homes: Memo<Vec<WeeksAt>>) -> impl IntoView {
    let all = RwSignal::new(false);
    // One scale for every home, so that they can be held against one another.
    let most =
        Memo::new(move |_| homes.with(|homes| homes.iter().map(WeeksAt::most).max().unwrap_or(1)));
    let drawn = move || {
        let shown = if all.get() { usize::MAX } else { AT_FIRST };
        let most = most.get();
        homes.with(|homes| {
            let drawn = homes.iter().take(shown).map(|home| at_home(home, most));
            drawn.collect_view().into_any()
        })
    };
    let more = move || homes.with(|homes| homes.len() > AT_FIRST) && !all.get();
    view! {
        {drawn}
        <Show when=more><button class="pill log-more" type="button" id="log-homes" on:click=move |_| all.set(true)>{say::show_every_home()}</button></Show>
    }
    .into_any()
}

/// A week's width and the most visits' height, in the drawing's own units.
const WEEK: f64 = 10.0;
const TALL: f64 = 40.0;

fn at_home(home: &WeeksAt, most: u32) -> AnyView {
    let place = if home.place.trim().is_empty() {
        say::no_home_written_down()
    } else {
        &home.place
    };
    let (first, last) = (home.weeks.first(), home.weeks.last());
    let between =
        |week: Option<&Week>| week.map_or_else(String::new, |week| words::date(week.monday));
    let wide = home.weeks.len() as f64 * WEEK;
    let bars = home
        .weeks
        .iter()
        .enumerate()
        .map(|(at, week)| stack(at, week, most));
    let said = format!("{place}: {}", home.in_words());
    view! {
        <figure class="log-home">
            <figcaption><b>{place.to_owned()}</b><span class="soft">{home.in_words()}</span></figcaption>
            <svg class="log-weeks" viewBox=format!("0 0 {wide} {TALL}") preserveAspectRatio="none" role="img" aria-label=said>{bars.collect_view()}</svg>
            <div class="log-ends soft"><span>{between(first)}</span><span>{between(last)}</span></div>
        </figure>
    }
    .into_any()
}

/// One week's bar, outcome upon outcome.
fn stack(at: usize, week: &Week, most: u32) -> AnyView {
    let each = f64::from(most.max(1)).recip() * TALL;
    let mut top = TALL;
    let parts = week
        .outcomes
        .iter()
        .enumerate()
        .filter(|(_, count)| **count != 0);
    let bars = parts.map(|(outcome, count)| {
        let tall = f64::from(*count) * each;
        top -= tall;
        view! { <rect class=format!("log-bar log-bar-{outcome}") x=at as f64 * WEEK + 1.0 y=top width=WEEK - 2.0 height=tall/> }
    });
    bars.collect_view().into_any()
}

/// A bar for each row, with its words before it and its number behind.
fn rows(rows: Vec<(String, u32, bool)>) -> AnyView {
    let most = rows
        .iter()
        .map(|(_, count, _)| *count)
        .max()
        .unwrap_or(0)
        .max(1);
    let each = rows.into_iter().map(|(label, count, pressing)| {
        let wide = f64::from(count) / f64::from(most) * 100.0;
        view! {
            <tr>
                <th scope="row">{label}</th>
                <td class="log-way"><svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true"><rect class="log-bar" class:log-bar-1=pressing x="0" y="0" width=wide height="10"/></svg></td>
                <td>{count}</td>
            </tr>
        }
    });
    view! { <table class="log-bars"><tbody>{each.collect_view()}</tbody></table> }.into_any()
}

fn waiting_bars(waiting: &Waiting) -> AnyView {
    if waiting.people() == 0 {
        return view! { <p class="empty">{say::nobody_waits()}</p> }.into_any();
    }
    let overdue = (say::overdue().to_owned(), waiting.overdue, true);
    let months = waiting
        .months
        .iter()
        .map(|month| (words::month(month.first), month.people, false));
    let later = (say::later().to_owned(), waiting.later, false);
    let all = std::iter::once(overdue).chain(months).chain([later]);
    rows(all.collect())
}

fn length_bars(lengths: &[Length]) -> AnyView {
    if lengths.is_empty() {
        return view! { <p class="empty">{say::no_time_known()}</p> }.into_any();
    }
    let each = lengths.iter().map(|length| {
        let said = match length.below_min {
            Some(below) => say::minutes_to(&length.from_min, &below),
            None => say::minutes_more(&length.from_min),
        };
        (said, length.visits, false)
    });
    rows(each.collect())
}
