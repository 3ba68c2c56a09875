//! Fogging the fellow eye, and the working lens before a young one: what to remember, by age, once.
//!
//! While one eye is examined the other looks at something far away, and must not pull both into focusing. A plus lens
//! before it lets it see nothing by focusing (common practice, no source). An eye that cannot focus needs none: Hofstetter
//! 1950 gives the least amplitude as 15 − 0.25 × age (from memory), which is nothing at 60.

use ::words::record::exam as say;
use optics::retinoscopy::Setup;

use crate::summary::Age;

/// From this age on there is nothing left to fog.
pub const NO_FOG_FROM: u16 = 60;

/// From this age on an eye hardly accommodates at a distance. Common practice, no source.
pub const HARDLY_ACCOMMODATES_FROM: u16 = 50;

/// What to remember about the eye that waits, in one line; nothing where it is too old to focus.
pub fn reminder(age: Option<Age>, setup: &Setup) -> Option<String> {
    match age {
        Some(age) if age.years >= NO_FOG_FROM => None,
        Some(age) if age.years < HARDLY_ACCOMMODATES_FROM => {
            Some(format!("{}{}", fog(), lens(setup)))
        }
        Some(_) => Some(fog().to_owned()),
        None => Some(say::fog_unless_old(&fog(), &lens(setup))),
    }
}

fn fog() -> &'static str {
    say::fog()
}

fn lens(setup: &Setup) -> &'static str {
    if setup.working_lens.is_some() {
        say::fog_lens()
    } else {
        ""
    }
}
