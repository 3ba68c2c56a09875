//! Retinoscopy: the lenses that neutralise each eye, the distance, and what the hand does next.

use super::eyes::EyeCard;
use super::halves::{self, Halves};
use super::meridians::MeridianLanes;
use super::onward::{Onward, Waiting};
use super::retinoscopy_setup::SetupPills;
use super::working::NetLines;
use leptos::prelude::*;
use optics::SphereCyl;
use optics::retinoscopy::Neutral;
use record::{Eye, Finding, Half, Retinoscopy};
use widgets::{Choice, LensField, Pick, TextField};

/// How the lenses are written down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Way {
    Meridians,
    InFrame,
    CannotBeDone,
}

impl Way {
    fn of(finding: &Finding<Neutral>) -> Option<Self> {
        match finding {
            Finding::Blank => None,
            Finding::Done(Neutral::TwoMeridians { .. }) => Some(Self::Meridians),
            Finding::Done(Neutral::InFrame(_)) => Some(Self::InFrame),
            Finding::NotDone { .. } | Finding::Unable { .. } => Some(Self::CannotBeDone),
        }
    }

    fn begun(half: Half) -> Self {
        match half {
            Half::Lens { .. } => Self::InFrame,
            Half::Meridians { .. } | Half::Fingers => Self::Meridians,
        }
    }
}

/// An eye's finding, as the record names it.
const PART: &str = "retinoscopy";

/// The section's page.
#[component]
pub fn RetinoscopyEditor(
    /// What stands now.
    value: Signal<Retinoscopy>,
    /// Called with every change.
    on_change: Callback<Retinoscopy>,
    /// What was found last time, with its date.
    last: Signal<Option<(String, Retinoscopy)>>,
    /// What is half entered.
    halves: Halves,
) -> impl IntoView {
    let working = RwSignal::new(Eye::Right);
    let change = Callback::new(move |setup| {
        on_change.run(Retinoscopy {
            setup,
            ..value.get_untracked()
        })
    });
    view! {
        <SetupPills setup=Signal::derive(move || value.get().setup) on_change=change/>
        <div class="eyes eyes-working">
            {Eye::BOTH.map(|eye| view! { <EyeLane eye working value on_change last halves/> }).into_iter().collect_view()}
        </div>
    }
}

#[component]
fn EyeLane(
    eye: Eye,
    working: RwSignal<Eye>,
    value: Signal<Retinoscopy>,
    on_change: Callback<Retinoscopy>,
    last: Signal<Option<(String, Retinoscopy)>>,
    halves: Halves,
) -> impl IntoView {
    let finding = Memo::new(move |_| value.with(|section| section.eyes.of(eye).clone()));
    let put = Callback::new(move |found: Finding<Neutral>| {
        let mut next = value.get_untracked();
        *next.eyes.of_mut(eye) = found;
        on_change.run(next);
    });
    let begun = move || untrack(|| halves.of(eye, PART));
    let keep = Callback::new(move |half| halves.keep(eye, PART, half));
    let way = RwSignal::new(
        finding
            .with_untracked(Way::of)
            .or_else(|| begun().map(Way::begun))
            .unwrap_or(Way::Meridians),
    );
    let net = Signal::derive(move || value.with(|section| section.net(eye)));
    let before = Signal::derive(move || {
        last.get()
            .and_then(|(when, section)| Some((when, section.net(eye)?.net)))
    });
    view! {
        <EyeCard eye working>
            <Show when=move || working.get() == eye>
                <WayChoice eye way/>
                {move || match way.get() {
                    Way::Meridians => view! { <MeridianLanes eye value finding put before begun=begun() keep/> }.into_any(),
                    Way::InFrame => view! { <InFrame eye finding put before begun=begun() keep/> }.into_any(),
                    Way::CannotBeDone => view! { <CannotBeDone eye finding put/> }.into_any(),
                }}
            </Show>
            <NetLines eye net setup=Signal::derive(move || value.get().setup) before/>
            <Show when=move || working.get() == eye><Onward eye value/></Show>
            <Waiting eye working value/>
        </EyeCard>
    }
    .into_any()
}

#[component]
fn WayChoice(eye: Eye, way: RwSignal<Way>) -> impl IntoView {
    let picks = vec![
        Pick::new(Way::Meridians, "by meridian").slug("meridians"),
        Pick::new(Way::InFrame, "in the frame").slug("frame"),
        Pick::new(Way::CannotBeDone, "can\u{2019}t").slug("cannot"),
    ];
    view! {
        <Choice id=format!("way-{}", eye.word()) label="how the lenses are written down" unseen_label=true picks=picks
            value=Signal::derive(move || Some(way.get())) on_change=move |picked| way.set(picked)/>
    }
}

#[component]
fn InFrame(
    eye: Eye,
    finding: Memo<Finding<Neutral>>,
    put: Callback<Finding<Neutral>>,
    before: Signal<Option<(String, SphereCyl)>>,
    begun: Option<Half>,
    keep: Callback<Option<Half>>,
) -> impl IntoView {
    let lens = Signal::derive(move || finding.with(|finding| finding.done().map(Neutral::lens)));
    let changed = move |lens: Option<SphereCyl>| {
        put.run(lens.map_or(Finding::Blank, |lens| Finding::Done(Neutral::InFrame(lens))));
    };
    let last = Signal::derive(move || before.get().map(|before| before.1));
    view! {
        <LensField id=format!("frame-{}", eye.word()) eye=eye.word() value=lens on_change=changed last=last
            begun=halves::to_lens(begun) on_half=move |now| keep.run(halves::of_lens(now))/>
    }
}

#[component]
fn CannotBeDone(
    eye: Eye,
    finding: Memo<Finding<Neutral>>,
    put: Callback<Finding<Neutral>>,
) -> impl IntoView {
    let reason = Signal::derive(move || match finding.get() {
        Finding::NotDone { reason } | Finding::Unable { reason } => reason,
        Finding::Blank | Finding::Done(_) => String::new(),
    });
    view! {
        <TextField id=format!("cannot-{}", eye.word()) label="why can\u{2019}t it be done?" value=reason
            hint="such as: no reflex through the lens opacity, eyes kept shut"
            on_change=move |reason: String| put.run(Finding::Unable { reason })/>
    }
}
