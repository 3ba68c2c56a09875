//! The figures at which the rules ask. Local rules may put others in their place, with their own source.

use ::words::record::figures as say;
use ::words::record::second_look::practice;
use optics::change::{self, Threshold};
use serde::{Deserialize, Serialize};

use crate::sections::FAR_M;

/// The figures at which the rules ask, each with its source. One that a setting leaves out is as by default.
///
/// ```
/// use optics::change::Threshold;
/// use record::Thresholds;
///
/// let ours = Thresholds {
///     frail_from_years: Threshold::new(80.0, "agreed in our practice")?,
///     ..Thresholds::default()
/// };
/// assert_eq!(ours.frail_from_years.source(), "agreed in our practice");
/// assert_eq!(ours.pinhole_worse.value(), 0.2);
/// # Ok::<(), optics::change::ThresholdError>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Thresholds {
    /// What is a large change of lenses; see [`change::Thresholds`]. A new cylinder is asked about from 0.50 D on.
    pub change: change::Thresholds,
    /// A turned axis is asked about only where it amounts to so many dioptres of blur.
    pub axis_blur_from: Threshold,
    /// From this age in years a large change is asked about.
    pub frail_from_years: Threshold,
    /// Retinoscopy and result differ by the working distance when they do within so many dioptres of mean sphere ...
    pub distance_within: Threshold,
    /// ... and by more than this, in dioptres of mean sphere: less is how the two differ anyhow.
    pub distance_beyond: Threshold,
    /// A sphere flips its sign when it was and is at least so many dioptres.
    pub sign_from: Threshold,
    /// An axis counts as crossed within so many degrees of 90 ...
    pub crossed_within: Threshold,
    /// ... where both cylinders are at least so many dioptres.
    pub crossed_cylinder: Threshold,
    /// The eyes look swapped when the other way round they are nearer to last time by so many dioptres of blur in all.
    pub swapped_by: Threshold,
    /// Acuity through a pinhole is worse from so many logMAR on.
    pub pinhole_worse: Threshold,
    /// Acuity is much worse than last time from so many logMAR on.
    pub acuity_worse: Threshold,
    /// From this age in years an addition is expected.
    pub addition_from_years: Threshold,
    /// An addition may stand off what age and distance lead to expect by so many dioptres.
    pub addition_within: Threshold,
    /// How far below the centres of the lenses the eyes read, in millimetres.
    pub reading_drop_mm: Threshold,
    /// From this many metres on a chart counts as far.
    pub far_from_m: Threshold,
    /// From so many falls in twelve months on somebody is at risk of more.
    pub falls_from: Threshold,
    /// More myopic than last time by so many dioptres of mean sphere, with a clouded nucleus.
    pub myopic_shift: Threshold,
    /// A mean pressure is high from so many mmHg on.
    pub pressure_high_mmhg: Threshold,
    /// A mean pressure is very high from so many mmHg on.
    pub pressure_very_high_mmhg: Threshold,
    /// The eyes' mean pressures are far apart above so many mmHg.
    pub pressure_apart_mmhg: Threshold,
    /// The cups are unequal from so much of the disc on.
    pub cups_apart: Threshold,
}

impl Default for Thresholds {
    fn default() -> Self {
        Self {
            change: change::Thresholds {
                new_cylinder: Threshold::known(0.5, say::source_new_cylinder),
                ..change::Thresholds::default()
            },
            axis_blur_from: Threshold::known(0.25, say::source_axis),
            frail_from_years: Threshold::known(75.0, say::source_age),
            distance_within: Threshold::known(0.5, practice),
            distance_beyond: Threshold::known(0.65, say::source_jorge),
            sign_from: Threshold::known(0.5, practice),
            crossed_within: Threshold::known(10.0, practice),
            crossed_cylinder: Threshold::known(0.75, practice),
            swapped_by: Threshold::known(1.0, practice),
            pinhole_worse: Threshold::known(0.2, practice),
            acuity_worse: Threshold::known(0.2, practice),
            addition_from_years: Threshold::known(45.0, say::source_millodot),
            addition_within: Threshold::known(0.75, say::source_trials),
            reading_drop_mm: Threshold::known(10.0, practice),
            far_from_m: Threshold::known(FAR_M, practice),
            falls_from: Threshold::known(1.0, say::source_fallen),
            myopic_shift: Threshold::known(0.75, say::source_myopic),
            pressure_high_mmhg: Threshold::known(24.0, say::source_high),
            pressure_very_high_mmhg: Threshold::known(35.0, say::source_very_high),
            pressure_apart_mmhg: Threshold::known(4.0, say::source_apart),
            cups_apart: Threshold::known(0.2, practice),
        }
    }
}
