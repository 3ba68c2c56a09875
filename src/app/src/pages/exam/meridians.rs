//! Two meridians' neutral lenses, each on its ruler.

use ::words::app::exam as say;
use leptos::prelude::*;
use optics::retinoscopy::{self, Neutral};
use optics::{Meridian, SphereCyl, limits};
use record::{Eye, Finding, Half, Retinoscopy};
use widgets::scale::Scale;
use widgets::{AxisDial, Mark, Motion, Pill, Ruler, Sheet, Stepper, StreakIcon, Unit};

/// The two lenses as far as they are entered. One alone is no finding yet.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Lanes {
    meridian: f64,
    powers: [Option<f64>; 2],
}

impl Lanes {
    fn begun(half: Half) -> Option<Self> {
        match half {
            Half::Meridians { first, powers } => Some(Self {
                meridian: first,
                powers,
            }),
            Half::Lens { .. } | Half::OverLens { .. } | Half::Fingers => None,
        }
    }

    fn of(finding: &Finding<Neutral>) -> Option<Self> {
        match finding.done()? {
            Neutral::TwoMeridians { first, second } => Some(Self {
                meridian: first.meridian.degrees(),
                powers: [Some(first.power), Some(*second)],
            }),
            Neutral::InFrame(_) | Neutral::OverLens(_) => None,
        }
    }

    /// Nothing yet, along last time's principal meridians where there are any.
    fn blank(last: Option<SphereCyl>) -> Self {
        let axis = last.and_then(|last| Some(last.cylinder?.axis()));
        let [one, other] = axis.map_or([Meridian::HORIZONTAL; 2], |axis| {
            let along = axis.power_meridian();
            [along, along.crossed()]
        });
        Self {
            meridian: if one.lies() { one } else { other }.degrees(),
            powers: [None, None],
        }
    }

    fn finding(self) -> Finding<Neutral> {
        let [Some(first), Some(second)] = self.powers else {
            return Finding::Blank;
        };
        Neutral::two_meridians(self.meridian, first, second).map_or(Finding::Blank, Finding::Done)
    }

    /// One lens of the two.
    fn half(self) -> Option<Half> {
        let one_missing = self.powers[0].is_some() != self.powers[1].is_some();
        one_missing.then_some(Half::Meridians {
            first: self.meridian,
            powers: self.powers,
        })
    }

    /// The meridian that a lane tests.
    fn tests(self, lane: usize) -> f64 {
        let first = Meridian::new(self.meridian);
        first.map_or(180.0, |first| {
            if lane == 0 {
                first.degrees()
            } else {
                first.crossed().degrees()
            }
        })
    }
}

/// Both lanes of one eye, and the meridians that they stand for.
#[component]
pub fn MeridianLanes(
    /// Which eye.
    eye: Eye,
    /// The whole section: its set-up places last time's notch.
    value: Signal<Retinoscopy>,
    /// What stands for this eye.
    finding: Memo<Finding<Neutral>>,
    /// Called with what is found, and with blank while it is only half of it.
    put: Callback<Finding<Neutral>>,
    /// Last time's net.
    before: Signal<Option<(String, SphereCyl)>>,
    /// What was half entered before.
    begun: Option<Half>,
    /// Called with what is only half of a finding, and with none when it is not.
    keep: Callback<Option<Half>>,
) -> impl IntoView {
    let kept = finding.with_untracked(Lanes::of);
    let lanes = RwSignal::new(
        kept.or_else(|| Lanes::begun(begun?))
            .unwrap_or_else(|| Lanes::blank(untrack(|| before.get()).map(|before| before.1))),
    );
    Effect::new(move |_| {
        if let Some(kept) = finding.with(Lanes::of) {
            lanes.set(kept);
        }
    });
    let change = Callback::new(move |next: Lanes| {
        lanes.set(next);
        put.run(next.finding());
        keep.run(next.half());
    });
    let one_missing = move || {
        let lanes = lanes.get();
        lanes.half().map(|_| {
            let lane = usize::from(lanes.powers[0].is_some());
            let tests = lanes.tests(lane);
            say::which_lens_neutralises(&format_args!("{tests:.0}"))
        })
    };
    view! {
        <div class="lanes">
            <Lane eye lane=0 lanes change value before/>
            <Lane eye lane=1 lanes change value before/>
        </div>
        <p class="question" id=format!("half-{}", eye.word()) role="status">{one_missing}</p>
        <MeridianPill eye lanes change/>
    }
    .into_any()
}

#[component]
fn Lane(
    eye: Eye,
    lane: usize,
    lanes: RwSignal<Lanes>,
    change: Callback<Lanes>,
    value: Signal<Retinoscopy>,
    before: Signal<Option<(String, SphereCyl)>>,
) -> impl IntoView {
    let tests = Signal::derive(move || lanes.get().tests(lane));
    let power = Signal::derive(move || lanes.get().powers[lane]);
    let last = Signal::derive(move || {
        let expected = retinoscopy::expected_neutral(&before.get()?.1, &value.get().setup);
        Some(expected.power_along(tests.get()))
    });
    // The first tap gives last time's lens.
    let start = Signal::derive(move || {
        let step = value.with(|section| section.setup.step);
        last.get().map_or(0.0, |last| step.nearest(last))
    });
    let step = Signal::derive(move || value.with(|section| section.setup.step.dioptres()));
    let scale =
        Signal::derive(move || Scale::around([power.get(), last.get()].into_iter().flatten()));
    let marks = Signal::derive(move || {
        power
            .get()
            .map(|power| Mark::new(power, Motion::Neutral))
            .into_iter()
            .collect::<Vec<_>>()
    });
    let check =
        Callback::new(|power| limits::meridian_power(power).map_err(|error| error.to_string()));
    let put = move |power| {
        let mut next = lanes.get_untracked();
        next.powers[lane] = power;
        change.run(next);
    };
    let id = format!(
        "lens-{}-{}",
        eye.word(),
        if lane == 0 { "first" } else { "second" }
    );
    view! {
        <div class="lane">
            <Ruler id=format!("{id}-ruler") label=Signal::derive(move || format!("{:.0}", tests.get())) scale=scale marks=marks at=power last=last/>
            <p class="lane-streak">
                {move || view! { <StreakIcon stands_at=tests.get() + 90.0/> }}
                <span>{move || say::tests(&format_args!("{:.0}", tests.get()))}</span>
            </p>
            <Stepper id=id label=say::lens_neutral() value=power step=step start=start min=limits::MERIDIAN_POWER.low max=limits::MERIDIAN_POWER.high
                signed=true page=1.0 unit=Unit::Dioptres check=check on_change=move |power| put(Some(power)) on_clear=move |()| put(None)/>
        </div>
    }
    .into_any()
}

#[component]
fn MeridianPill(eye: Eye, lanes: RwSignal<Lanes>, change: Callback<Lanes>) -> impl IntoView {
    let open = RwSignal::new(false);
    let shown = Signal::derive(move || {
        say::both_meridians(
            &format_args!("{:.0}", lanes.get().tests(0)),
            &format_args!("{:.0}", lanes.get().tests(1)),
        )
    });
    let id = format!("meridians-{}", eye.word());
    let check =
        Callback::new(|degrees| limits::meridian(degrees).map_err(|error| error.to_string()));
    let dial = format!("{id}-dial");
    let turn = move |meridian| {
        change.run(Lanes {
            meridian,
            ..lanes.get_untracked()
        })
    };
    // Meridians are turned as finely as a large cylinder's axis would be.
    let fine = Signal::stored(2.0);
    view! {
        <Pill id=id.clone() label=say::meridians() value=shown on_press=move |()| open.set(true)/>
        <Sheet id=format!("{id}-sheet") title=say::which_meridians() open=open on_close=move |()| open.set(false)>
            <p class="soft">{say::meridians_how()}</p>
            <AxisDial id=dial.clone() label=say::first_meridian() value=Signal::derive(move || Some(lanes.get().meridian)) cyl=fine check=check on_change=turn/>
        </Sheet>
    }
    .into_any()
}
