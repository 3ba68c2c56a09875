//! Acuity: today over last time, what was read and what it is at this distance.

use super::eyes::EyeCard;
use super::halves::Halves;
use super::setup::Metres;
use crate::words;
use ::words::app::exam as say;
use leptos::prelude::*;
use optics::limits;
use record::{Acuity, Eye, EyeAcuity, Finding, Half, Seen};
use widgets::{AcuityPicker, Choice, Pick, ReadLine, TextField};

/// How an eye was tested.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Way {
    Unaided,
    WithGlasses,
    Pinhole,
}

impl Way {
    fn of(self, eye: &EyeAcuity) -> &Finding<Seen> {
        match self {
            Self::Unaided => &eye.unaided,
            Self::WithGlasses => &eye.with_glasses,
            Self::Pinhole => &eye.pinhole,
        }
    }

    fn of_mut(self, eye: &mut EyeAcuity) -> &mut Finding<Seen> {
        match self {
            Self::Unaided => &mut eye.unaided,
            Self::WithGlasses => &mut eye.with_glasses,
            Self::Pinhole => &mut eye.pinhole,
        }
    }

    /// As the record names it.
    fn part(self) -> &'static str {
        match self {
            Self::Unaided => "unaided",
            Self::WithGlasses => "with_glasses",
            Self::Pinhole => "pinhole",
        }
    }

    fn words(self) -> &'static str {
        match self {
            Self::Unaided => say::unaided(),
            Self::WithGlasses => say::glasses(),
            Self::Pinhole => say::pinhole(),
        }
    }
}

/// The section's page.
#[component]
pub fn AcuityEditor(
    /// What stands now.
    value: Signal<Acuity>,
    /// Called with every change.
    on_change: Callback<Acuity>,
    /// What was found last time, with its date.
    last: Signal<Option<(String, Acuity)>>,
    /// What is half entered.
    halves: Halves,
) -> impl IntoView {
    let working = RwSignal::new(Eye::Right);
    let way = RwSignal::new(Way::Unaided);
    let change = move |with: &dyn Fn(&mut Acuity)| {
        let mut next = value.get_untracked();
        with(&mut next);
        on_change.run(next);
    };
    let picks = [Way::Unaided, Way::WithGlasses, Way::Pinhole]
        .map(|way| Pick::new(way, || way.words()))
        .into();
    view! {
        <div class="pills">
            <Metres id="made-for" label=say::chart_made() value=Signal::derive(move || value.get().chart.made_for_m) check=limits::chart_m
                on_change=move |metres| change(&|acuity| acuity.chart.made_for_m = metres)/>
            <Metres id="used-at" label=say::used() value=Signal::derive(move || value.get().chart.used_at_m) check=limits::chart_m
                on_change=move |metres| change(&|acuity| acuity.chart.used_at_m = metres)/>
        </div>
        <Choice id="way" label=say::how_tested() unseen_label=true picks=picks
            value=Signal::derive(move || Some(way.get())) on_change=move |picked| way.set(picked)/>
        <div class="eyes">
            {Eye::BOTH.map(|eye| view! { <AcuityCard eye way value last working/> }).into_iter().collect_view()}
        </div>
        <EyePicker working way value on_change halves/>
    }
}

#[component]
fn AcuityCard(
    eye: Eye,
    way: RwSignal<Way>,
    value: Signal<Acuity>,
    last: Signal<Option<(String, Acuity)>>,
    working: RwSignal<Eye>,
) -> impl IntoView {
    let read_at = Signal::derive(move || {
        value.with(|acuity| say::read_at(&words::far(acuity.chart.used_at_m)))
    });
    let finding = move || value.with(|acuity| way.get().of(acuity.eyes.of(eye)).clone());
    let is = move || {
        let is = value.with(|acuity| acuity.chart.is_here(way.get().of(acuity.eyes.of(eye))));
        is.map(|is| words::number(&is))
    };
    let before = move || {
        last.get().map(|(when, acuity)| {
            let read = words::acuity_finding(way.get().of(acuity.eyes.of(eye)));
            view! { <div class="last-line"><span>{when}</span><b>{read}</b></div> }
        })
    };
    view! {
        <EyeCard eye working beside=read_at>
            <p class="big-value" id=format!("acuity-{}", eye.word())>{move || words::acuity_finding(&finding())}</p>
            <p class="value-is">{is}</p>
            {before}
        </EyeCard>
    }
}

/// The squares for the eye being worked on. Counting fingers is a finding only with its distance: until then it is half
/// of one.
#[component]
fn EyePicker(
    working: RwSignal<Eye>,
    way: RwSignal<Way>,
    value: Signal<Acuity>,
    on_change: Callback<Acuity>,
    halves: Halves,
) -> impl IntoView {
    let finding = Memo::new(move |_| {
        value.with(|acuity| way.get().of(acuity.eyes.of(working.get())).clone())
    });
    let put = move |found: Finding<Seen>| {
        let mut next = value.get_untracked();
        *way.get_untracked()
            .of_mut(next.eyes.of_mut(working.get_untracked())) = found;
        on_change.run(next);
    };
    let shown = Signal::derive(move || {
        let half = halves.of(working.get(), way.get().part());
        half.map_or_else(
            || finding.with(read_line),
            |_| Some(ReadLine::Fingers { at_cm: None }),
        )
    });
    let picked = move |read: Option<ReadLine>| {
        let half = (read == Some(ReadLine::Fingers { at_cm: None })).then_some(Half::Fingers);
        put(read.map_or(Finding::Blank, found));
        halves.keep(working.get_untracked(), way.get_untracked().part(), half);
    };
    let reason = Signal::derive(move || match finding.get() {
        Finding::Unable { reason } | Finding::NotDone { reason } => reason,
        _ => String::new(),
    });
    view! {
        <section class="sheet">
            {move || {
                let label = say::smallest_line(&working.get().said());
                view! { <AcuityPicker id="read" label value=shown on_change=picked/> }
            }}
            <Show when=move || finding.with(|finding| matches!(finding, Finding::Unable { .. }))>
                <TextField id="unable-why" label=say::why_not_read() value=reason
                    on_change=move |reason| put(Finding::Unable { reason })/>
            </Show>
        </section>
    }
}

fn read_line(finding: &Finding<Seen>) -> Option<ReadLine> {
    match finding {
        Finding::Blank | Finding::NotDone { .. } => None,
        Finding::Unable { .. } => Some(ReadLine::Unable),
        Finding::Done(seen) => Some(match *seen {
            Seen::Line { line, letters } => ReadLine::Line { line, letters },
            Seen::Fingers { at_cm } => ReadLine::Fingers { at_cm: Some(at_cm) },
            Seen::HandMoves => ReadLine::HandMoves,
            Seen::Light => ReadLine::Light,
            Seen::NoLight => ReadLine::NoLight,
        }),
    }
}

fn found(read: ReadLine) -> Finding<Seen> {
    match read {
        ReadLine::Line { line, letters } => Finding::Done(Seen::Line { line, letters }),
        ReadLine::Fingers { at_cm: Some(at_cm) } => Finding::Done(Seen::Fingers { at_cm }),
        ReadLine::Fingers { at_cm: None } => Finding::Blank,
        ReadLine::HandMoves => Finding::Done(Seen::HandMoves),
        ReadLine::Light => Finding::Done(Seen::Light),
        ReadLine::NoLight => Finding::Done(Seen::NoLight),
        ReadLine::Unable => Finding::Unable {
            reason: String::new(),
        },
    }
}
