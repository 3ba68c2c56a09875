//! Retinoscopy over glasses that stay on: the lens worn, and what was neutral held over it.

use leptos::prelude::*;
use optics::retinoscopy::{HeldOver, Neutral};
use optics::{SphereCyl, limits};
use record::{Eye, Finding};
use widgets::{LensField, Stepper, Unit};

/// As far as a lens is usually held before glasses, millimetres. Common practice, no source.
const USUAL_GAP_MM: f64 = 10.0;

/// The two lenses as far as they are entered. One alone is no finding yet.
#[derive(Clone, Copy, PartialEq)]
struct Held {
    worn: Option<SphereCyl>,
    over: Option<SphereCyl>,
    gap_mm: f64,
}

impl Held {
    fn of(finding: &Finding<Neutral>) -> Option<Self> {
        let Some(Neutral::OverLens(held)) = finding.done() else {
            return None;
        };
        Some(Self {
            worn: Some(*held.worn()),
            over: Some(*held.over()),
            gap_mm: held.gap_mm(),
        })
    }

    /// The finding, or why the two are none.
    fn finding(self) -> Result<Finding<Neutral>, String> {
        let (Some(worn), Some(over)) = (self.worn, self.over) else {
            return Ok(Finding::Blank);
        };
        let held = HeldOver::new(worn, over, self.gap_mm).map_err(|error| error.to_string())?;
        Ok(Finding::Done(Neutral::OverLens(held)))
    }
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
) -> impl IntoView {
    let begun = finding.with_untracked(Held::of).unwrap_or(Held {
        worn: None,
        over: None,
        gap_mm: USUAL_GAP_MM,
    });
    let (held, refused) = (RwSignal::new(begun), RwSignal::new(None));
    let change = move |change: &dyn Fn(&mut Held)| {
        held.update(change);
        match held.get_untracked().finding() {
            Ok(found) => {
                refused.set(None);
                put.run(found);
            }
            Err(why) => {
                refused.set(Some(why));
                put.run(Finding::Blank);
            }
        }
    };
    let last = Signal::derive(move || before.get().map(|before| before.1));
    let check = Callback::new(|mm| limits::over_gap_mm(mm).map_err(|error| error.to_string()));
    let word = eye.word();
    view! {
        <div class="over-glasses">
            <h4>"the glasses worn"</h4>
            <LensField id=format!("worn-{word}") eye=word value=Signal::derive(move || held.get().worn) last=last
                on_change=move |lens| change(&|held| held.worn = lens)/>
            <h4>"neutral held over them"</h4>
            <LensField id=format!("over-{word}") eye=word value=Signal::derive(move || held.get().over)
                on_change=move |lens| change(&|held| held.over = lens)/>
            <Stepper id=format!("gap-{word}") label="held before them" value=Signal::derive(move || Some(held.get().gap_mm)) step=1.0
                min=limits::OVER_GAP_MM.low max=limits::OVER_GAP_MM.high decimals=0 unit=Unit::Millimetres check=check error=refused
                on_change=move |gap_mm| change(&|held| held.gap_mm = gap_mm)/>
        </div>
    }
    .into_any()
}
