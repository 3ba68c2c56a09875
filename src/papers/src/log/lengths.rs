//! How long visits take: how many took from so many minutes to so many.

use super::Visit;

/// Visits that took about as long.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Length {
    /// From so many minutes on.
    pub from_min: u32,
    /// To fewer than so many; nothing for the longest.
    pub below_min: Option<u32>,
    /// How many visits.
    pub visits: u32,
}

/// The width of a step.
const STEP_MIN: u32 = 10;
/// From here on nothing is told apart: a visit of two hours was broken off and taken up again.
const LONG_MIN: u32 = 120;

/// The visits whose time is known, by how long they took. Every step stands there up to the longest that any took.
pub fn lengths(visits: &[Visit]) -> Vec<Length> {
    let minutes = || visits.iter().filter_map(|visit| visit.minutes);
    let Some(longest) = minutes().max() else {
        return Vec::new();
    };
    let steps = (longest.min(LONG_MIN)) / STEP_MIN;
    let step = |step: u32| {
        let from_min = step * STEP_MIN;
        let below_min = (from_min < LONG_MIN).then_some(from_min + STEP_MIN);
        let within =
            |minutes: &u32| *minutes >= from_min && below_min.is_none_or(|below| *minutes < below);
        Length {
            from_min,
            below_min,
            visits: minutes().filter(within).count() as u32,
        }
    };
    (0..=steps).map(step).collect()
}
