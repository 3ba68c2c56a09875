//! Retinoscopy: the lenses that neutralise each eye, the distance, and what the hand does next.

use super::eyes::EyeCard;
use super::halves::{self, Halves};
use super::meridians::MeridianLanes;
use super::onward::{Onward, Waiting};
use super::over_glasses::OverGlasses;
use super::retinoscopy_setup::SetupPills;
use super::setup::VertexPill;
use super::sweeps::{Desk, EyePills, Pad, SweepLane, Tray};
use super::working::NetLines;
use crate::shell::app;
use ::words::app::exam as say;
use leptos::prelude::*;
use optics::SphereCyl;
use optics::retinoscopy::{Neutral, expected_neutral};
use record::{Age, Eye, Eyes, Finding, Half, Retinoscopy};
use widgets::{Choice, LensField, Pick, TextField};

/// How the lenses are written down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Way {
    Sweeps,
    Meridians,
    InFrame,
    OverGlasses,
    CannotBeDone,
}

impl Way {
    fn of(finding: &Finding<Neutral>) -> Option<Self> {
        match finding {
            Finding::Blank => None,
            Finding::Done(Neutral::TwoMeridians { .. }) => Some(Self::Meridians),
            Finding::Done(Neutral::InFrame(_)) => Some(Self::InFrame),
            Finding::Done(Neutral::OverLens(_)) => Some(Self::OverGlasses),
            Finding::NotDone { .. } | Finding::Unable { .. } => Some(Self::CannotBeDone),
        }
    }

    /// The way that an eye's page opens in.
    fn at_first(section: &Retinoscopy, eye: Eye, begun: Option<Half>, usual: Self) -> Self {
        let finding = section.eyes.of(eye);
        if !section.swept.of(eye).is_empty() && section.follows_sweeps(eye) {
            return Self::Sweeps;
        }
        Self::of(finding)
            .or_else(|| begun.map(Self::begun))
            .unwrap_or(usual)
    }

    fn begun(half: Half) -> Self {
        match half {
            Half::Lens { .. } => Self::InFrame,
            Half::OverLens { .. } => Self::OverGlasses,
            Half::Meridians { .. } | Half::Fingers => Self::Meridians,
        }
    }
}

/// An eye's finding, as the record names it.
const PART: &str = "retinoscopy";

/// Marks the whole page while an eye is swept: it stands still then, the pad at its foot. Were the pad itself what styles look
/// for, every sweep would have all of them judged anew.
fn mark_page(sweeping: Memo<bool>) {
    const MARK: &str = "sweeping";
    let mark = |on: bool| {
        if let Some(body) = document().body() {
            let _ = body.class_list().toggle_with_force(MARK, on);
        }
    };
    Effect::new(move |_| mark(sweeping.get()));
    on_cleanup(move || mark(false));
}

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
    /// The person's age.
    age: Signal<Option<Age>>,
) -> impl IntoView {
    let (working, habits) = (RwSignal::new(Eye::Right), app().habits);
    let change = Callback::new(move |setup| {
        habits.update(|habits| habits.follow(&setup));
        let mut section = value.get_untracked();
        section.change_setup(setup);
        on_change.run(section);
    });
    let put_vertex = move |mm| {
        on_change.run(Retinoscopy {
            vertex_mm: Some(mm),
            ..value.get_untracked()
        });
    };
    let swept = |eye| value.with_untracked(|section| !section.swept.of(eye).is_empty());
    let usual = if habits.get_untracked().sweeps || Eye::BOTH.into_iter().any(swept) {
        Way::Sweeps
    } else {
        Way::Meridians
    };
    let way_of = |eye| {
        let begun = untrack(|| halves.of(eye, PART));
        RwSignal::new(value.with_untracked(|section| Way::at_first(section, eye, begun, usual)))
    };
    let ways = both(way_of);
    let before = both(|eye| {
        Signal::derive(move || {
            last.get()
                .and_then(|(when, section)| Some((when, section.net(eye)?.net)))
        })
    });
    let lenses = before.map(|before| {
        let before = *before;
        Signal::derive(move || before.get().map(|(_, lens)| lens))
    });
    let desk = Desk::new(value, on_change, working, lenses);
    let setup = Memo::new(move |_| value.with(|section| section.setup));
    let vertex = Memo::new(move |_| value.with(|section| section.vertex_mm));
    let choose = Callback::new(move |(eye, way): (Eye, Way)| {
        ways.of(eye).set(way);
        if way != Way::CannotBeDone {
            habits.update(|habits| habits.sweeps = way == Way::Sweeps);
        }
        // One way of working for both eyes, as long as the other has nothing yet.
        let nothing = |other| {
            value.with_untracked(|section| {
                section.eyes.of(other).is_blank()
                    && section.swept.of(other).sweeping.sweeps.is_empty()
            })
        };
        if matches!(way, Way::Sweeps | Way::Meridians) {
            for other in Eye::BOTH.into_iter().filter(|other| nothing(*other)) {
                ways.of(other).set(way);
            }
        }
    });
    let sweeping = Memo::new(move |_| ways.of(working.get()).get() == Way::Sweeps);
    mark_page(sweeping);
    let lane = move |eye| {
        view! { <EyeLane eye working value on_change last=*before.of(eye) halves desk way=*ways.of(eye) choose/> }
    };
    view! {
        <div class="retinoscopy">
            <div class="retinoscopy-top">
                <div class="pills">
                    <SetupPills setup=setup.into() on_change=change/>
                    <VertexPill stated=vertex on_change=put_vertex/>
                    <Show when=move || sweeping.get()><EyePills desk/></Show>
                </div>
                <div class="eyes eyes-working" data-working=move || working.get().word()>{Eye::BOTH.map(lane).into_iter().collect_view()}</div>
                <Show when=move || sweeping.get()>
                    <Tray desk age/>
                    {move || view! { <Onward eye=working.get() desk/> }}
                </Show>
            </div>
            <Show when=move || sweeping.get()>
                <Pad desk on_frame=move |eye: Eye| ways.of(eye).set(Way::InFrame)/>
            </Show>
        </div>
    }
    .into_any()
}

fn both<T>(each: impl Fn(Eye) -> T) -> Eyes<T> {
    Eyes {
        right: each(Eye::Right),
        left: each(Eye::Left),
    }
}

#[component]
fn EyeLane(
    eye: Eye,
    working: RwSignal<Eye>,
    value: Signal<Retinoscopy>,
    on_change: Callback<Retinoscopy>,
    last: Signal<Option<(String, SphereCyl)>>,
    halves: Halves,
    desk: Desk,
    way: RwSignal<Way>,
    choose: Callback<(Eye, Way)>,
) -> impl IntoView {
    let finding = Memo::new(move |_| value.with(|section| section.eyes.of(eye).clone()));
    let put = Callback::new(move |found: Finding<Neutral>| {
        let mut next = value.get_untracked();
        *next.eyes.of_mut(eye) = found;
        on_change.run(next);
    });
    let begun = move || untrack(|| halves.of(eye, PART));
    let keep = Callback::new(move |half| halves.keep(eye, PART, half));
    let net = desk.net(eye);
    let sweeps = Memo::new(move |_| way.get() == Way::Sweeps);
    let swept =
        desk.beside(move || value.with(|section| section.swept.of(eye).sweeping.sweeps.len()));
    let count = Signal::derive(move || match (sweeps.get(), swept.get()) {
        (true, many) if many > 0 => say::sweeps_count(many),
        _ => String::new(),
    });
    let by_numbers = move || {
        view! {
            <Show when=move || working.get() == eye>
                <WayChoice eye way choose/>
                {move || match way.get() {
                    Way::Meridians => view! { <MeridianLanes eye value finding put before=last begun=begun() keep/> }.into_any(),
                    Way::InFrame => view! { <InFrame eye value finding put before=last begun=begun() keep/> }.into_any(),
                    Way::OverGlasses => view! { <OverGlasses eye finding put before=last begun=begun() keep/> }.into_any(),
                    Way::CannotBeDone => view! { <CannotBeDone eye finding put/> }.into_any(),
                    Way::Sweeps => ().into_any(),
                }}
            </Show>
            <NetLines eye net=net.into() value before=last/>
            <Show when=move || working.get() == eye><Onward eye desk/></Show>
        }
    };
    view! {
        <EyeCard eye working beside=count>
            {move || if sweeps.get() {
                view! { <SweepLane eye desk/> }.into_any()
            } else {
                by_numbers().into_any()
            }}
            <Waiting eye working value/>
        </EyeCard>
    }
    .into_any()
}

#[component]
fn WayChoice(eye: Eye, way: RwSignal<Way>, choose: Callback<(Eye, Way)>) -> impl IntoView {
    let picks = vec![
        Pick::new(Way::Sweeps, say::sweeps).slug("sweeps"),
        Pick::new(Way::Meridians, say::meridian).slug("meridians"),
        Pick::new(Way::InFrame, say::frame).slug("frame"),
        Pick::new(Way::OverGlasses, say::over_glasses).slug("over"),
        Pick::new(Way::CannotBeDone, say::cannot_short).slug("cannot"),
    ];
    view! {
        <div class="ways">
            <Choice id=format!("way-{}", eye.word()) label=say::how_lenses_written() unseen_label=true picks=picks
                value=Signal::derive(move || Some(way.get())) on_change=move |picked| choose.run((eye, picked))/>
        </div>
    }
}

#[component]
fn InFrame(
    eye: Eye,
    value: Signal<Retinoscopy>,
    finding: Memo<Finding<Neutral>>,
    put: Callback<Finding<Neutral>>,
    before: Signal<Option<(String, SphereCyl)>>,
    begun: Option<Half>,
    keep: Callback<Option<Half>>,
) -> impl IntoView {
    let lens = Signal::derive(move || {
        let cylinders = value.with(|section| section.setup.cylinders);
        finding.with(|finding| match finding.done()? {
            Neutral::OverLens(_) => None,
            neutral => Some(neutral.lens_with(cylinders)),
        })
    });
    let changed = move |lens: Option<SphereCyl>| {
        put.run(lens.map_or(Finding::Blank, |lens| Finding::Done(Neutral::InFrame(lens))));
    };
    // Last time's lens as it would stand in the frame today, the distance still in: never the net itself.
    let last = Signal::derive(move || {
        let setup = value.with(|section| section.setup);
        let lens = expected_neutral(&before.get()?.1, &setup);
        Some(
            lens.with_cylinder(setup.cylinders)
                .rounded(setup.step)
                .value,
        )
    });
    let step = Signal::derive(move || value.with(|section| section.setup.step.dioptres()));
    view! {
        <LensField id=format!("frame-{}", eye.word()) eye=eye.said() value=lens on_change=changed last=last step=step
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
        <TextField id=format!("cannot-{}", eye.word()) label=say::why_cannot() value=reason
            hint=say::why_cannot_hint()
            on_change=move |reason: String| put.run(Finding::Unable { reason })/>
    }
}
