//! The front of the eye, with the angle of its chamber.

use super::super::fields::{Part, Slate, asks, at, choice, eyes, looks, several, words};
use ::words::app::exam_editors as say;
use leptos::prelude::*;
use record::{Angle, Anterior, Finding, Usual};
use widgets::{Choice, ChoiceLook, Label, Pick};

/// The section's fields.
pub fn anterior(slate: Slate) -> AnyView {
    let all = Part::<Anterior>::whole(slate);
    let each = eyes(slate, |eye| {
        let one = at!(all, eyes).eye(eye);
        let id = |name: &str| format!("{name}-{}", eye.word());
        several(vec![
            looks(&at!(one, lids), id("lids"), say::lids_lashes()),
            looks(
                &at!(one, conjunctiva),
                id("conjunctiva"),
                say::conjunctiva_sclera(),
            ),
            looks(&at!(one, cornea), id("cornea"), say::cornea_tears()),
            looks(&at!(one, chamber), id("chamber"), say::chamber()),
            looks(&at!(one, iris), id("iris"), say::iris()),
            angle(&at!(one, angle), &id("angle")),
        ])
    });
    several(vec![
        asks(vec![words(
            &at!(all, looked_with),
            "looked-with",
            say::looked(),
            Usual::LookedWith,
        )]),
        each,
    ])
}

/// Every answer of one way of judging the angle.
fn answers(way: usize) -> Vec<Angle> {
    match way {
        0 => (0..=4).rev().map(Angle::VanHerick).collect(),
        1 => LIMBAL.into_iter().rev().map(Angle::LimbalPercent).collect(),
        2 => (0..=4).rev().map(Angle::Shaffer).collect(),
        _ => vec![Angle::TorchDeep, Angle::TorchShallow],
    }
}

/// The depths that are told apart at the limbus, percent (Foster et al. 2000, from memory).
const LIMBAL: [f64; 7] = [0.0, 5.0, 15.0, 25.0, 40.0, 75.0, 100.0];

fn answer(angle: Angle) -> String {
    match angle {
        Angle::VanHerick(grade) | Angle::Shaffer(grade) => grade.to_string(),
        Angle::LimbalPercent(percent) => format!("{percent} %"),
        Angle::TorchDeep => say::deep().into(),
        Angle::TorchShallow => say::shallow().into(),
    }
}

const fn way(angle: Angle) -> usize {
    match angle {
        Angle::VanHerick(_) => 0,
        Angle::LimbalPercent(_) => 1,
        Angle::Shaffer(_) => 2,
        Angle::TorchDeep | Angle::TorchShallow => 3,
    }
}

/// First how it was judged, then how wide it is: one alone is no finding.
fn angle(part: &Part<Finding<Angle>>, id: &str) -> AnyView {
    let asked = part.asked(id, say::angle(), Angle::in_words);
    let found = part.spot(
        |found| found.done().copied(),
        |found, angle| *found = angle.map_or(Finding::Blank, Finding::Done),
    );
    let picked = RwSignal::new(untrack(|| found.value.get()).map(way));
    let shown = Signal::derive(move || found.value.get().map(way).or_else(|| picked.get()));
    let pick = super::super::fields::Spot {
        value: shown,
        put: Callback::new(move |place: Option<usize>| {
            picked.set(place);
            if found.value.get_untracked().map(way) != place {
                found.put.run(None);
            }
        }),
    };
    let ways = [say::van_herick, say::limbus, say::gonioscope, say::torch].map(Label::of);
    let id = format!("{id}-wide");
    view! {
        {choice(&asked, ways.into(), pick)}
        {move || shown.get().map(|way| {
            let picks = answers(way).into_iter().map(|angle| Pick::new(Some(angle), || answer(angle))).collect();
            view! {
                <Choice id=id.clone() label=say::how_wide() look=ChoiceLook::Squares picks=picks
                    value=Signal::derive(move || Some(found.value.get())) on_change=found.put/>
            }
        })}
    }
    .into_any()
}
