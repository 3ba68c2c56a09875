//! The back of the eye.

use super::super::fields::{
    Measure, Part, Slate, at, eyes, found, looks, measured, perhaps, several, toggle, ways,
};
use ::words::app::exam_editors as say;
use leptos::prelude::*;
use optics::limits;
use record::Posterior;

const CUP: Measure = Measure::new(limits::CUP_TO_DISC, 0.05, 0.3, 2);

/// The section's fields.
pub fn posterior(slate: Slate) -> AnyView {
    let all = Part::<Posterior>::whole(slate);
    eyes(slate, |eye| {
        let one = at!(all, eyes).eye(eye);
        let id = |name: &str| format!("{name}-{}", eye.word());
        several(vec![
            perhaps(&at!(one, viewed), id("viewed"), say::viewed()),
            ways(vec![toggle(
                &at!(one, dilated),
                id("dilated"),
                say::pupil_widened(),
            )]),
            found(&at!(one, view), id("view"), say::view()),
            measured(&at!(one, cup_to_disc), id("cup"), say::cup_disc(), CUP),
            perhaps(&at!(one, disc_size), id("disc-size"), say::size_disc()),
            looks(&at!(one, disc), id("disc"), say::disc_rim_colour()),
            looks(&at!(one, macula), id("macula"), say::macula()),
            looks(&at!(one, vessels), id("vessels"), say::vessels()),
            looks(&at!(one, periphery), id("periphery"), say::periphery()),
        ])
    })
}
