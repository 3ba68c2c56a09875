//! Retinoscopy over glasses that stay on: the lens worn, and what was neutral held over it.

use ::words::app::exam as say;
use leptos::prelude::*;
use optics::retinoscopy::{HeldOver, Neutral};
use optics::{SphereCyl, limits};
use record::{Eye, Finding, Half};
use widgets::half::Half as Numbers;
use widgets::{LensField, Stepper, Unit};

/// As far as a lens is usually held before glasses, millimetres. Common practice, no source.
const USUAL_GAP_MM: f64 = 10.0;

/// The two lenses as far as they are entered. One alone is no finding yet.
#[derive(Clone, Copy, PartialEq)]
struct Held {
    worn: Numbers,
    over: Numbers,
    gap_mm: f64,
}

impl Default for Held {
    fn default() -> Self {
        Self {
            worn: Numbers::default(),
            over: Numbers::default(),
            gap_mm: USUAL_GAP_MM,
        }
    }
}

impl Held {
    fn of(finding: &Finding<Neutral>) -> Option<Self> {
        let Some(Neutral::OverLens(held)) = finding.done() else {
            return None;
        };
        Some(Self {
            worn: Numbers::of(Some(*held.worn())),
            over: Numbers::of(Some(*held.over())),
            gap_mm: held.gap_mm(),
        })
    }

    fn begun(half: Half) -> Option<Self> {
        let Half::OverLens { worn, over, gap_mm } = half else {
            return None;
        };
        let [worn, over] = [worn, over].map(|[sphere, cylinder, axis]| Numbers {
            sphere,
            cylinder,
            axis,
        });
        Some(Self { worn, over, gap_mm })
    }

    /// What is entered, where it is no finding.
    fn half(self, finding: &Finding<Neutral>) -> Option<Half> {
        let blank = [self.worn, self.over].map(|lens| lens == Numbers::default());
        if !finding.is_blank() || blank == [true; 2] {
            return None;
        }
        let [worn, over] =
            [self.worn, self.over].map(|lens| [lens.sphere, lens.cylinder, lens.axis]);
        Some(Half::OverLens {
            worn,
            over,
            gap_mm: self.gap_mm,
        })
    }

    /// The finding, or why the two are none.
    fn finding(self) -> Result<Finding<Neutral>, String> {
        let [Some(worn), Some(over)] = [self.worn, self.over].map(whole) else {
            return Ok(Finding::Blank);
        };
        let held = HeldOver::new(worn, over, self.gap_mm).map_err(|error| error.to_string())?;
        Ok(Finding::Done(Neutral::OverLens(held)))
    }
}

fn whole(numbers: Numbers) -> Option<SphereCyl> {
    numbers.whole().ok().flatten()
}

/// Both lenses of one eye. Last time's result is offered for the lens worn.
#[component]
pub fn OverGlasses(
    /// Which eye.
    eye: Eye,
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
    let kept = finding.with_untracked(Held::of);
    let first = kept.or_else(|| Held::begun(begun?)).unwrap_or_default();
    let (held, refused) = (RwSignal::new(first), RwSignal::new(None));
    let change = move |change: &dyn Fn(&mut Held)| {
        held.update(change);
        let now = held.get_untracked();
        let (found, why) = match now.finding() {
            Ok(found) => (found, None),
            Err(why) => (Finding::Blank, Some(why)),
        };
        refused.set(why);
        let half = now.half(&found);
        put.run(found);
        keep.run(half);
    };
    let last = Signal::derive(move || before.get().map(|before| before.1));
    let check = Callback::new(|mm| limits::over_gap_mm(mm).map_err(|error| error.to_string()));
    let word = eye.word();
    view! {
        <div class="over-glasses">
            <h4>{say::glasses_worn()}</h4>
            <LensField id=format!("worn-{word}") eye=eye.said() value=Signal::derive(move || whole(held.get().worn)) last=last
                begun=Some(first.worn) on_half=move |now| change(&|held| held.worn = now)/>
            <h4>{say::neutral_over()}</h4>
            <LensField id=format!("over-{word}") eye=eye.said() value=Signal::derive(move || whole(held.get().over))
                begun=Some(first.over) on_half=move |now| change(&|held| held.over = now)/>
            <Stepper id=format!("gap-{word}") label=say::held_before() value=Signal::derive(move || Some(held.get().gap_mm)) step=1.0
                min=limits::OVER_GAP_MM.low max=limits::OVER_GAP_MM.high decimals=0 unit=Unit::Millimetres check=check error=refused
                on_change=move |gap_mm| change(&|held| held.gap_mm = gap_mm)/>
        </div>
    }
    .into_any()
}
