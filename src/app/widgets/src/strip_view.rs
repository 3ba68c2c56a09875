//! The strip as a picture that can be walked through: one column is picked, and every lane says what stands there.

use crate::event_sign::EventSign;
use crate::strip::{Dot, Lane, Place, Spot, Years, apart, rows};
use ::words::app::widgets as say;
use leptos::ev::{KeyboardEvent, PointerEvent};
use leptos::prelude::*;

/// One day on which something was found.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// The day in years, such as 2026.5.
    pub day: f64,
    /// The day in words.
    pub words: String,
}

/// Something that happened.
#[derive(Clone, Debug, PartialEq)]
pub struct Flag {
    /// The day in years.
    pub day: f64,
    /// Its sign.
    pub sign: EventSign,
    /// In words.
    pub words: String,
}

/// What a strip shows.
#[derive(Clone, Default)]
pub struct Shown {
    /// The days, oldest first.
    pub columns: Vec<Column>,
    /// A lane for each measure.
    pub lanes: Vec<Lane>,
    /// What happened.
    pub flags: Vec<Flag>,
}

/// A lane's height, and what is kept free above and below, in rem.
const TALL: f64 = 4.0;
const EDGE: f64 = 0.55;
/// As many years have a figure on the narrowest screen.
const YEARS: u32 = 6;
/// A sign's width in percent of the narrowest plot, and its height in rem.
const SIGN: (f64, f64) = (8.0, 1.5);

impl Shown {
    fn years(&self) -> Years {
        let flags = self.flags.iter().map(|flag| flag.day);
        Years::holding(self.columns.iter().map(|column| column.day).chain(flags))
    }

    fn across(&self) -> Vec<f64> {
        let years = self.years();
        let columns = self.columns.iter();
        columns.map(|column| years.along(column.day)).collect()
    }

    /// Everything that stands in a column, for the ear.
    fn said(&self, at: usize) -> String {
        let lanes = self.lanes.iter().map(|lane| {
            let [right, left] = [0, 1].map(|eye| said(lane, eye, at));
            say::strip_column(&lane.title, &right, &left)
        });
        let day = self.columns.get(at).map(|column| column.words.clone());
        day.into_iter().chain(lanes).collect::<Vec<_>>().join("; ")
    }
}

fn said(lane: &Lane, eye: usize, at: usize) -> String {
    let words = lane.eyes[eye].get(at).map(|spot| spot.words.as_str());
    words
        .filter(|words| !words.is_empty())
        .unwrap_or("\u{2014}")
        .to_owned()
}

/// Years from left to right, a lane for each measure, a sign for each event.
///
/// It is one slider: a tap, a drag or an arrow picks a day, and each lane's head says what stands there.
#[component]
pub fn Strip(
    /// The slider's id.
    #[prop(into)]
    id: String,
    /// What it is, for a screen reader.
    #[prop(into)]
    label: String,
    /// What it shows.
    shown: Signal<Shown>,
    /// The picked column.
    picked: Signal<usize>,
    /// Called with the column that is picked.
    #[prop(into)]
    on_pick: Callback<usize>,
) -> impl IntoView {
    let held = RwSignal::new(false);
    let last = move || shown.with(|shown| shown.columns.len().saturating_sub(1));
    let point = move |ev: &PointerEvent| {
        let near = shown.with_untracked(|shown| {
            let days: Vec<f64> = shown.columns.iter().map(|column| column.day).collect();
            shown.years().nearest(&days, percent(ev)?)
        });
        if let Some(near) = near {
            on_pick.run(near);
        }
    };
    let lanes = move || {
        shown.with(|shown| {
            let across = shown.across();
            let years = shown.years();
            let lanes = shown.lanes.iter().cloned();
            lanes
                .map(|lane| lane_view(lane, &across, years, picked))
                .collect_view()
        })
    };
    view! {
        <div class="strip" data-part="strip" id=id tabindex="0" role="slider" aria-label=label aria-orientation="horizontal"
            aria-valuemin="0" aria-valuemax=last aria-valuenow=move || picked.get()
            aria-valuetext=move || shown.with(|shown| shown.said(picked.get()))
            on:pointerdown=move |ev| if ev.is_primary() && ev.button() == 0 {
                held.set(true);
                point(&ev);
            }
            on:pointermove=move |ev| if held.get_untracked() { point(&ev) }
            on:pointerup=move |_| held.set(false)
            on:pointerleave=move |_| held.set(false)
            on:pointercancel=move |_| held.set(false)
            on:keydown=move |ev| if let Some(to) = walked(&ev, picked.get_untracked(), untrack(last)) {
                ev.prevent_default();
                on_pick.run(to);
            }>
            {lanes}
            {move || shown.with(|shown| flags_view(shown, picked))}
            {move || shown.with(|shown| years_view(shown.years()))}
        </div>
    }
    .into_any()
}

/// Where a key leads to.
fn walked(ev: &KeyboardEvent, at: usize, last: usize) -> Option<usize> {
    match ev.key().as_str() {
        "ArrowLeft" | "ArrowDown" => Some(at.saturating_sub(1)),
        "ArrowRight" | "ArrowUp" => Some((at + 1).min(last)),
        "Home" => Some(0),
        "End" => Some(last),
        _ => None,
    }
}

/// How far along the plots a pointer is, in percent.
fn percent(ev: &PointerEvent) -> Option<f64> {
    use wasm_bindgen::JsCast;
    let strip = ev.current_target()?.dyn_into::<web_sys::Element>().ok()?;
    let plot = strip.query_selector(".strip-plot").ok()??;
    let shown = plot.get_bounding_client_rect();
    Some((f64::from(ev.client_x()) - shown.left()) / shown.width() * 100.0)
}

fn rem(length: f64) -> String {
    format!("{length:.3}rem")
}

fn pct(across: f64) -> String {
    format!("{across:.3}%")
}

/// How far down a part of a lane's height lies.
fn down(part: f64) -> f64 {
    EDGE + part * (TALL - 2.0 * EDGE)
}

fn lane_view(lane: Lane, across: &[f64], years: Years, picked: Signal<usize>) -> AnyView {
    let heads = [0, 1].map(|eye| {
        let lane = lane.clone();
        let words = move || said(&lane, eye, picked.get());
        view! { <span class="strip-value"><EyeKey eye/><b>{words}</b></span> }
    });
    let columns = across.to_vec();
    let figures = lane.stretch().figures();
    let grid = figures.into_iter().map(|value| {
        let at = down(lane.stretch().down(value, lane.grows_downwards));
        view! {
            <line class="strip-grid" x1="0" x2="100%" y1=rem(at) y2=rem(at)/>
            <text class="strip-figure" x="0" y=rem(at) dx="-0.5em" dy="0.35em">{(lane.figure)(value)}</text>
        }
    });
    view! {
        <div class="strip-lane" id=format!("lane-{}", lane.name)>
            <p class="strip-head"><span class="strip-title">{lane.title.clone()}</span>{heads.into_iter().collect_view()}</p>
            <svg class="strip-plot" height=rem(TALL) aria-hidden="true">
                {grid.collect_view()}
                {year_lines(years)}
                {guide(columns, picked)}
                {drawn(&lane, across)}
            </svg>
        </div>
    }
    .into_any()
}

/// The column that is picked.
fn guide(columns: Vec<f64>, picked: Signal<usize>) -> impl IntoView {
    let at = move || columns.get(picked.get()).copied().map(pct);
    let at = Memo::new(move |_| at());
    view! { <line class="strip-guide" x1=move || at.get() x2=move || at.get() y1="0" y2="100%"/> }
}

fn year_lines(years: Years) -> impl IntoView {
    let lines = years.figures(YEARS).into_iter().map(|year| {
        let at = pct(years.along(year));
        view! { <line class="strip-year" x1=at.clone() x2=at y1="0" y2="100%"/> }
    });
    lines.collect_view()
}

/// Both eyes' lines and findings; the right eye's on top, for a square leaves room for the disc within.
fn drawn(lane: &Lane, across: &[f64]) -> impl IntoView + use<> {
    let eyes = [1, 0].map(|eye| {
        let class = ["strip-line strip-right", "strip-line strip-left"][eye];
        let lines = lane.lines(eye, across).into_iter().map(move |(from, to)| {
            view! { <line class=class x1=pct(from.0) y1=rem(down(from.1)) x2=pct(to.0) y2=rem(down(to.1))/> }
        });
        let dots = lane.dots(eye, across);
        let spots = lane.eyes[eye].iter().zip(dots);
        let spots = spots.filter_map(|(spot, dot)| Some(spot_view(eye, spot, dot?)));
        view! { {lines.collect_view()}{spots.collect_view()} }
    });
    let ends = [0, 1].map(|eye| lane.dots(eye, across).into_iter().flatten().next_back());
    view! { {eyes.into_iter().collect_view()}{names(ends)} }
}

fn spot_view(eye: usize, spot: &Spot, (across, part): Dot) -> AnyView {
    let (x, y) = (pct(across), rem(down(part)));
    let title = say::strip_spot(&[say::right(), say::left()][eye], &spot.words);
    let shape = match (spot.place, eye) {
        (Place::Beyond, _) => beyond(eye),
        (_, 0) => view! { <circle class="strip-disc" r="4.5"/> }.into_any(),
        _ => view! { <rect class="strip-square" x="-5.5" y="-5.5" width="11" height="11"/> }
            .into_any(),
    };
    view! { <svg class="strip-spot" x=x y=y><title>{title}</title>{shape}</svg> }.into_any()
}

/// A wedge that points off the scale.
fn beyond(eye: usize) -> AnyView {
    let class = ["strip-disc", "strip-square"][eye];
    view! { <path class=class d="M-5.5 -4 h11 l-5.5 9 Z"/> }.into_any()
}

/// R and L beside each eye's last finding.
fn names(ends: [Option<Dot>; 2]) -> impl IntoView {
    let mut places = ends;
    if let [Some(right), Some(left)] = &mut places
        && (right.0 - left.0).abs() < SIGN.0
    {
        (right.1, left.1) = apart(right.1, left.1, 0.36);
    }
    let each = places.into_iter().zip(["R", "L"]);
    let named = each.filter_map(|(place, name)| {
        let (across, part) = place?;
        Some(view! { <text class="strip-name" x=pct(across) y=rem(down(part)) dx="0.7em" dy="0.35em">{name}</text> })
    });
    named.collect_view()
}

/// A lane of signs.
fn flags_view(shown: &Shown, picked: Signal<usize>) -> Option<AnyView> {
    if shown.flags.is_empty() {
        return None;
    }
    let years = shown.years();
    let across: Vec<f64> = shown
        .flags
        .iter()
        .map(|flag| years.along(flag.day))
        .collect();
    let rows = rows(&across, SIGN.0);
    let tall = (rows.iter().max().map_or(0, |row| row + 1)) as f64 * SIGN.1 + 0.5;
    let signs = shown.flags.iter().zip(across.iter().zip(rows));
    let signs = signs.map(|(flag, (at, row))| {
        let y = rem(0.25 + row as f64 * SIGN.1);
        view! {
            <svg class="strip-sign" x=pct(*at) y=y width="1.25rem" height="1.25rem" viewBox="0 0 20 20"><title>{flag.words.clone()}</title>{flag.sign.drawing()}</svg>
        }
    });
    let view = view! {
        <div class="strip-lane" id="lane-events">
            <p class="strip-head"><span class="strip-title">{say::what_happened()}</span></p>
            <svg class="strip-plot" height=rem(tall) aria-hidden="true">
                {year_lines(years)}
                {guide(shown.across(), picked)}
                {signs.collect_view()}
            </svg>
        </div>
    };
    Some(view.into_any())
}

fn years_view(years: Years) -> AnyView {
    let figures = years.figures(YEARS).into_iter().map(|year| {
        view! { <text class="strip-figure strip-year-figure" x=pct(years.along(year)) y="1rem">{year.to_string()}</text> }
    });
    view! { <svg class="strip-plot strip-years" height="1.5rem" aria-hidden="true">{figures.collect_view()}</svg> }.into_any()
}

/// The shape of an eye's findings, with its letter.
#[component]
pub fn EyeKey(
    /// 0 the right, 1 the left.
    eye: usize,
) -> impl IntoView {
    let shape = if eye == 0 {
        view! { <circle class="strip-disc" cx="8" cy="8" r="4.5"/> }.into_any()
    } else {
        view! { <rect class="strip-square" x="2.5" y="2.5" width="11" height="11"/> }.into_any()
    };
    let name = ["R", "L"][eye];
    view! { <svg class="eye-key" viewBox="0 0 16 16" aria-hidden="true">{shape}</svg><span class="soft">{name}</span> }
}
