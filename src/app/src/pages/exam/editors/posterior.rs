//! The back of the eye.

use super::super::fields::{
    Measure, Part, Slate, at, eyes, found, looks, measured, perhaps, several, toggle, ways,
};
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
            perhaps(&at!(one, viewed), id("viewed"), "viewed with"),
            ways(vec![toggle(
                &at!(one, dilated),
                id("dilated"),
                "pupil widened",
            )]),
            found(&at!(one, view), id("view"), "view"),
            measured(&at!(one, cup_to_disc), id("cup"), "cup to disc", CUP),
            perhaps(&at!(one, disc_size), id("disc-size"), "size of the disc"),
            looks(&at!(one, disc), id("disc"), "disc: rim, colour"),
            looks(&at!(one, macula), id("macula"), "macula"),
            looks(&at!(one, vessels), id("vessels"), "vessels"),
            looks(&at!(one, periphery), id("periphery"), "periphery"),
        ])
    })
}
