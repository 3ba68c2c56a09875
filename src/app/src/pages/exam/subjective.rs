//! Subjective: the lens that each eye chose, at which chart distance, and what is added for near.

use super::eyes::EyeCard;
use super::halves::{self, Halves};
use super::setup::{Metres, VertexPill};
use crate::words;
use ::words::app::exam as say;
use leptos::prelude::*;
use optics::{SphereCyl, limits};
use record::{Chart, Eye, Finding, NearAdd, Seen, Subjective, SubjectiveEye};
use widgets::{Choice, LensField, Pick, Pill, Sheet, Stepper, TextField, Unit};

/// Where a lens can start from: a few words and the lens of each eye.
pub type Starts = Signal<Vec<(String, record::Eyes<Option<SphereCyl>>)>>;

/// An eye's finding, as the record names it.
const PART: &str = "lens";

/// The section's page.
#[component]
pub fn SubjectiveEditor(
    /// What stands now.
    value: Signal<Subjective>,
    /// Called with every change.
    on_change: Callback<Subjective>,
    /// What was found last time, with its date.
    last: Signal<Option<(String, Subjective)>>,
    /// What a lens may start from.
    starts: Starts,
    /// What is half entered.
    halves: Halves,
) -> impl IntoView {
    let working = RwSignal::new(Eye::Right);
    let change = Callback::new(move |with: Callback<Subjective, Subjective>| {
        on_change.run(with.run(value.get_untracked()))
    });
    let chart = move |used_at_m| {
        change.run(Callback::new(move |now: Subjective| Subjective {
            chart: Chart {
                used_at_m,
                ..now.chart
            },
            ..now
        }))
    };
    let vertex = move |mm| {
        change.run(Callback::new(move |now: Subjective| Subjective {
            vertex_mm: Some(mm),
            ..now
        }))
    };
    view! {
        <div class="pills">
            <Metres id="chart" label=say::chart() value=Signal::derive(move || value.get().chart.used_at_m) check=limits::chart_m on_change=chart/>
            <RoomPill value on_change=change/>
            <VertexPill stated=Signal::derive(move || value.get().vertex_mm) on_change=vertex/>
            <AddPill value on_change/>
        </div>
        <div class="eyes eyes-working" data-working=move || working.get().word()>
            {Eye::BOTH.map(|eye| view! { <EyeLens eye working value on_change last starts halves/> }).into_iter().collect_view()}
        </div>
    }
}

/// What the lenses are for, where the chart stood nearer than far. One tap changes it.
#[component]
fn RoomPill(
    value: Signal<Subjective>,
    on_change: Callback<Callback<Subjective, Subjective>>,
) -> impl IntoView {
    let near = move || value.with(Subjective::chart_is_near);
    let shown = Signal::derive(move || {
        let room = value.with(|section| section.for_the_room);
        if room { say::room() } else { say::far() }.to_owned()
    });
    let turn = move |()| {
        on_change.run(Callback::new(|now: Subjective| Subjective {
            for_the_room: !now.for_the_room,
            ..now
        }))
    };
    view! { <Show when=near><Pill id="for-the-room" label=say::lenses() value=shown on_press=turn/></Show> }
}

#[component]
fn AddPill(value: Signal<Subjective>, on_change: Callback<Subjective>) -> impl IntoView {
    let open = RwSignal::new(false);
    let add = Signal::derive(move || value.get().add);
    let put = move |add| {
        on_change.run(Subjective {
            add,
            ..value.get_untracked()
        })
    };
    let now = move || {
        add.get_untracked().unwrap_or(NearAdd {
            power: 2.0,
            at_cm: 40.0,
        })
    };
    let shown = Signal::derive(move || {
        add.get()
            .map_or_else(|| say::none().into(), |add| add.in_words())
    });
    let check_power = Callback::new(|power| limits::add(power).map_err(|error| error.to_string()));
    let check_cm = Callback::new(|cm| limits::near_cm(cm).map_err(|error| error.to_string()));
    view! {
        <Pill id="add" label=say::near_addition() value=shown on_press=move |()| open.set(true)/>
        <Sheet id="add-sheet" title=say::add_both_eyes() open=open on_close=move |()| open.set(false)>
            <Stepper id="add-power" label=say::addition() value=Signal::derive(move || add.get().map(|add| add.power)) step=0.25 start=2.0
                min=limits::ADD.low max=limits::ADD.high signed=true unit=Unit::Dioptres check=check_power
                on_change=move |power| put(Some(NearAdd { power, ..now() })) on_clear=move |()| put(None)/>
            <Stepper id="add-cm" label=say::at() value=Signal::derive(move || add.get().map(|add| add.at_cm)) step=1.0 decimals=0 start=40.0
                min=limits::NEAR_CM.low max=limits::NEAR_CM.high unit=Unit::Centimetres check=check_cm
                on_change=move |at_cm| put(Some(NearAdd { at_cm, ..now() }))/>
            <button class="pill" type="button" id="add-none" on:click=move |_| put(None)>{say::no_addition()}</button>
        </Sheet>
    }
    .into_any()
}

#[component]
fn EyeLens(
    eye: Eye,
    working: RwSignal<Eye>,
    value: Signal<Subjective>,
    on_change: Callback<Subjective>,
    last: Signal<Option<(String, Subjective)>>,
    starts: Starts,
    halves: Halves,
) -> impl IntoView {
    let finding = Memo::new(move |_| value.with(|section| section.eyes.of(eye).clone()));
    let put = Callback::new(move |found: Finding<SubjectiveEye>| {
        let mut next = value.get_untracked();
        *next.eyes.of_mut(eye) = found;
        on_change.run(next);
    });
    let lens =
        Signal::derive(move || finding.with(|finding| finding.done().map(|found| found.lens)));
    let before = Signal::derive(move || {
        last.get()
            .and_then(|(when, section)| Some((when, section.eyes.of(eye).done()?.clone())))
    });
    let before_lens = Signal::derive(move || before.get().map(|before| before.1.lens));
    let put_lens = Callback::new(move |lens: Option<SphereCyl>| {
        let acuity =
            finding.with_untracked(|finding| finding.done().and_then(|found| found.acuity));
        put.run(lens.map_or(Finding::Blank, |lens| {
            Finding::Done(SubjectiveEye { lens, acuity })
        }));
    });
    let shown = move || {
        lens.get()
            .map_or_else(|| "\u{2014}".into(), |lens| words::lens(&lens))
    };
    view! {
        <EyeCard eye working>
            <Show when=move || working.get() == eye
                fallback=move || view! { <p class="lens-value" id=format!("lens-{}", eye.word())>{shown}</p> }>
                <StartFrom eye lens starts put_lens/>
                {move || value.with(|section| section.started.of(eye).as_ref().map(record::Started::sentence)).map(|sentence| view! {
                    <p class="soft" id=format!("started-{}", eye.word())>{sentence}</p>
                })}
                <LensField id=format!("subjective-{}", eye.word()) eye=eye.said() value=lens on_change=put_lens last=before_lens
                    begun=halves::to_lens(untrack(|| halves.of(eye, PART))) on_half=move |now| halves.keep(eye, PART, halves::of_lens(now))/>
                <Reached eye finding put/>
                <NotChosen eye finding put/>
            </Show>
            {move || before.get().map(|(when, found)| view! {
                <div class="last-line"><span>{when}</span><b>{words::lens(&found.lens)}</b></div>
            })}
        </EyeCard>
    }
    .into_any()
}

/// One tap takes a lens over, with what it is said beside it; offered while the eye has none.
#[component]
fn StartFrom(
    eye: Eye,
    lens: Signal<Option<SphereCyl>>,
    starts: Starts,
    put_lens: Callback<Option<SphereCyl>>,
) -> impl IntoView {
    move || {
        if lens.get().is_some() {
            return ().into_any();
        }
        let offered = starts.get().into_iter().enumerate().filter_map(|(at, (from, eyes))| {
            let start = (*eyes.of(eye))?;
            let id = format!("start-{}-{at}", eye.word());
            Some(view! {
                <button class="start" type="button" id=id on:click=move |_| put_lens.run(Some(start))>
                    <span class="soft">{words::number(&say::start_from(&from))}</span><b>{words::lens(&start)}</b>
                </button>
            })
        });
        view! { <div class="starts">{offered.collect_view()}</div> }.into_any()
    }
}

/// The line reached with the lens, as the chart labels it.
#[component]
fn Reached(
    eye: Eye,
    finding: Memo<Finding<SubjectiveEye>>,
    put: Callback<Finding<SubjectiveEye>>,
) -> impl IntoView {
    let line = Signal::derive(move || {
        finding.with(|finding| match finding.done()?.acuity? {
            Seen::Line { line, .. } => Some(line),
            _ => None,
        })
    });
    let reach = move |line| {
        if let Finding::Done(found) = finding.get_untracked() {
            put.run(Finding::Done(SubjectiveEye {
                acuity: Some(Seen::Line { line, letters: 0 }),
                ..found
            }));
        }
    };
    view! {
        <Show when=move || finding.with(|finding| finding.done().is_some())>
            <Choice id=format!("reached-{}", eye.word()) label=say::reads_with_it() look=widgets::ChoiceLook::Squares
                picks=optics::acuity::ChartLine::ALL.map(|line| Pick::new(line, || line.to_string())).into() value=line on_change=reach/>
        </Show>
    }
}

#[component]
fn NotChosen(
    eye: Eye,
    finding: Memo<Finding<SubjectiveEye>>,
    put: Callback<Finding<SubjectiveEye>>,
) -> impl IntoView {
    let why_not = Signal::derive(move || match finding.get() {
        Finding::NotDone { reason } | Finding::Unable { reason } => Some(reason),
        Finding::Blank | Finding::Done(_) => None,
    });
    let word = eye.word();
    view! {
        <Show when=move || finding.with(Finding::is_blank)>
            <button class="pill" type="button" id=format!("unable-{word}") on:click=move |_| put.run(Finding::Unable { reason: String::new() })>
                {say::cannot_answer()}
            </button>
        </Show>
        <Show when=move || why_not.get().is_some()>
            <TextField id=format!("unable-{word}-why") label=say::why_not_asked() value=Signal::derive(move || why_not.get().unwrap_or_default())
                on_change=move |reason: String| put.run(Finding::Unable { reason })/>
            <button class="pill" type="button" id=format!("able-{word}") on:click=move |_| put.run(Finding::Blank)>{say::can_be_asked()}</button>
        </Show>
    }
}
