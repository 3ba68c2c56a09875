//! The findings to look at: the power cross and the plane, behind one tap.

use leptos::prelude::*;
use optics::SphereCyl;
use optics::retinoscopy::EyeBracket;
use record::{Beside, Eye, FoundBy, Retinoscopy};
use widgets::plane::{Dot, From};
use widgets::{Disclosure, Plane, PowerCross};

/// Today's finding as a power cross, and beside the others on the plane.
#[component]
pub fn SeeIt(
    /// Which eye.
    eye: Eye,
    /// What stands now.
    value: Signal<Retinoscopy>,
    /// What the sweeps of that eye say.
    says: Memo<EyeBracket>,
    /// Last time's net.
    last: Signal<Option<SphereCyl>>,
) -> impl IntoView {
    let beside = Memo::new(move |_| {
        let last = last.get();
        says.with(|says| value.with(|section| section.side_by_side(eye, says, last)))
    });
    view! { <SideBySide id=eye.word() eye beside=beside/> }
}

/// The power cross of the first finding, and all of them on the plane, behind one tap.
#[component]
pub fn SideBySide(
    /// The end of every id.
    #[prop(into)]
    id: String,
    /// Whose findings they are.
    eye: Eye,
    /// The findings; the others are compared with the first.
    #[prop(into)]
    beside: Signal<Vec<Beside>>,
) -> impl IntoView {
    let lens = move || beside.with(|beside| beside.first().map(|first| first.lens));
    let dots = Signal::derive(move || beside.with(|beside| beside.iter().map(dot).collect()));
    let word = eye.word();
    let [see, cross, plane] = ["see", "cross", "plane"].map(|part| format!("{part}-{id}"));
    view! {
        <Disclosure id=see summary=format!("see it, {word} eye")>
            <div class="see-it">
                {let cross = cross.clone(); move || lens().map(|lens| view! {
                    <PowerCross id=cross.clone() label=format!("{word} eye, power cross") lens=Signal::stored(lens)/>
                })}
                <Plane id=plane.clone() label=format!("{word} eye, findings on the plane of cylinders") dots=dots/>
            </div>
        </Disclosure>
    }
    .into_any()
}

fn dot(beside: &Beside) -> Dot {
    Dot {
        from: match beside.by {
            FoundBy::Retinoscopy => From::Retinoscopy,
            FoundBy::LastTime => From::LastTime,
            FoundBy::Machine => From::Machine,
            FoundBy::Worn => From::Worn,
            FoundBy::Chosen => From::Final,
        },
        lens: beside.lens,
        ellipse: beside.within,
    }
}
