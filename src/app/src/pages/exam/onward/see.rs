//! The findings to look at: the power cross and the plane, behind one tap.

use ::words::app::exam as say;
use leptos::prelude::*;
use record::{Beside, Eye, FoundBy};
use widgets::plane::{Dot, From};
use widgets::{Disclosure, Plane, PowerCross};

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
    let [see, cross, plane] = ["see", "cross", "plane"].map(|part| format!("{part}-{id}"));
    view! {
        <Disclosure id=see summary=say::see_it(&eye.said())>
            <div class="see-it">
                {let cross = cross.clone(); move || lens().map(|lens| view! {
                    <PowerCross id=cross.clone() label=say::eye_cross(&eye.said()) lens=Signal::stored(lens)/>
                })}
                <Plane id=plane.clone() label=say::eye_plane(&eye.said()) dots=dots/>
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
