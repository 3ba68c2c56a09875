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
    /// Each sweep.
    pub marks: Vec<Mark>,
    /// What is still possible.
    pub band: (f64, f64),
    /// The most likely lens, once the meridian is known well enough to propose one.
    pub at: Option<f64>,
    /// Last time's.
    pub last: Option<f64>,
}

/// The stretch that a ruler shows. It stays while it serves; another one stands a frame after the tap that asks for it: so what a
/// sweep narrows is seen to narrow before the ruler zooms, and the answer waits for no figures.
pub fn scale(desk: Desk, eye: Eye, picture: Memo<Picture>) -> Signal<Scale> {
    let meridian = Memo::new(move |_| picture.with(|picture| picture.meridian));
    let setup = desk.setup(eye);
    let shown = Memo::new(move |before: Option<&(Meridian, Scale)>| {
        desk.follow_screen();
        setup.track();
        let meridian = meridian.get();
        let near = picture.with_untracked(|p| Scale::near(p.band, &p.marks, p.last));
        let scale = match before {
            Some((was, scale)) if *was == meridian => scale.kept(&near),
            _ => Scale::around(near),
        };
        (meridian, scale)
    });
    Signal::derive(move || shown.get().1)
}

/// The picture of one of the two meridians in hand: 0 for the one nearer to lying.
pub fn picture(desk: Desk, eye: Eye, which: usize) -> Memo<Picture> {
    Memo::new(move |_| {
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
        Picture {
            meridian,
            marks,
            band,
            at: known.then(|| lens(bracket.likeliest())),
            last,
        }
    })
}
