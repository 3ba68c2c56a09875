//! Sweeps in words.

use ::words::app::exam_sweeps as say;
use optics::Meridian;
use optics::format::{plain, power};
use optics::retinoscopy::{Beam, Brightness, Motion, Speed, Sweep, Take};

/// "180", "22.5".
pub fn degrees(meridian: Meridian) -> String {
    plain(meridian.degrees(), 1)
}

/// "180 at +3.50: against", "90 at +2.00, beam reversed: with, slow, dim".
pub fn sweep(sweep: &Sweep) -> String {
    let beam = match sweep.beam {
        Beam::Normal => "",
        Beam::Reversed => say::beam_reversed(),
    };
    let speed = sweep.speed.map(|speed| format!(", {}", fast(speed)));
    let brightness = sweep
        .brightness
        .map(|brightness| format!(", {}", bright(brightness)));
    say::sweep(
        &degrees(sweep.meridian),
        &power(sweep.lens),
        &beam,
        &motion(sweep.seen).word(),
        &speed.unwrap_or_default(),
        &brightness.unwrap_or_default(),
    )
}

/// "90 with +3.25", "180, beam reversed".
pub fn take(take: &Take) -> String {
    let lens = take.lens.map(|lens| say::with(&power(lens)));
    let beam = take.beam.map(|beam| match beam {
        Beam::Normal => say::beam_normal(),
        Beam::Reversed => say::beam_reversed(),
    });
    format!(
        "{}{}{}",
        degrees(take.meridian),
        lens.unwrap_or_default(),
        beam.unwrap_or_default()
    )
}

/// The motion as the ruler draws it.
pub const fn motion(seen: Motion) -> widgets::Motion {
    match seen {
        Motion::With => widgets::Motion::With,
        Motion::Against => widgets::Motion::Against,
        Motion::Neutral => widgets::Motion::Neutral,
        Motion::CannotTell => widgets::Motion::Unsure,
    }
}

/// "slow".
pub fn fast(speed: Speed) -> &'static str {
    match speed {
        Speed::Slow => say::slow(),
        Speed::Fast => say::fast(),
    }
}

/// "bright".
pub fn bright(brightness: Brightness) -> &'static str {
    match brightness {
        Brightness::Bright => say::bright(),
        Brightness::Dim => say::dim(),
    }
}
