//! What the rulers of an eye show.

use super::desk::Desk;
use super::words;
use leptos::prelude::*;
use optics::Meridian;
use optics::retinoscopy::Sweep;
use optics::retinoscopy::bracket::Bracket;
use record::Eye;
use widgets::Mark;
use widgets::scale::Scale;

/// One meridian, in lenses as they would be neutral today.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// The meridian, in degrees.
    pub meridian: Meridian,
    /// The stretch shown.
    pub scale: Scale,
    /// Each sweep.
    pub marks: Vec<Mark>,
    /// What is still possible.
    pub band: (f64, f64),
    /// The most likely lens, once the meridian is known well enough to propose one.
    pub at: Option<f64>,
    /// Last time's.
    pub last: Option<f64>,
}

/// The picture of one of the two meridians in hand: 0 for the one nearer to lying. The stretch stays while it serves.
pub fn picture(desk: Desk, eye: Eye, which: usize) -> Memo<Picture> {
    Memo::new(move |before: Option<&Picture>| {
        let meridian = desk.hand(eye).cross()[which];
        let (held, of_eye) = (desk.held(eye), desk.bracket(eye));
        let bracket = of_eye.with(|brackets| brackets.of(meridian).cloned());
        let bracket = bracket.unwrap_or_else(|| {
            desk.sweeping(eye).with(|sweeping| {
                Bracket::new(
                    meridian,
                    &sweeping.sweeps,
                    sweeping.start.as_ref(),
                    &sweeping.circumstances,
                )
            })
        });
        let lens = |refraction| held.setup.lens_for(refraction);
        let interval = bracket.interval();
        let band = (lens(interval.low), lens(interval.high));
        let mark = |sweep: &Sweep| Mark {
            power: lens(sweep.neutral_for()),
            motion: words::motion(sweep.seen),
            reversed: sweep.beam == optics::retinoscopy::Beam::Reversed,
        };
        let marks: Vec<Mark> = bracket.sweeps().iter().map(mark).collect();
        let last = desk
            .last(eye)
            .map(|last| lens(last.power_along(meridian.degrees())));
        let known = of_eye.with(|brackets| brackets.neutral(&held)).is_some();
        let near = Scale::near(band, &marks, last);
        let before = before.filter(|before| before.meridian == meridian);
        Picture {
            meridian,
            scale: before.map_or_else(|| Scale::around(near.clone()), |was| was.scale.kept(&near)),
            marks,
            band,
            at: known.then(|| lens(bracket.likeliest())),
            last,
        }
    })
}
