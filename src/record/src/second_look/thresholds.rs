//! The figures at which the rules ask. Local rules may put others in their place, with their own source.

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
    /// What is a large change of lenses; see [`change::Thresholds`].
    pub change: change::Thresholds,
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
}

impl Default for Thresholds {
    fn default() -> Self {
        const PRACTICE: &str = super::rule::PRACTICE;
        const AGE: &str = "an age over 75 is among the risk factors for falls in a lecture of Elliott's, as a news report has it; the figure 75 from there";
        const JORGE: &str = "95 % limits of retinoscopy against subjective, computed from Jorge et al. 2005, Optom Vis Sci 82:64-68 (mean difference 0.02 D, standard deviation 0.33 D)";
        const TRIALS: &str = "95 % limits of four ways to estimate an addition are wider than 0.50 D (Arq Bras Oftalmol 2013;76:218-220); figure: common practice";
        const MILLODOT: &str = "the table in Millodot, Dictionary of Optometry, entry on the near addition, begins at 45";
        Self {
            change: change::Thresholds::default(),
            frail_from_years: known(75.0, AGE),
            distance_within: known(0.5, PRACTICE),
            distance_beyond: known(0.65, JORGE),
            sign_from: known(0.5, PRACTICE),
            crossed_within: known(10.0, PRACTICE),
            crossed_cylinder: known(0.75, PRACTICE),
            swapped_by: known(1.0, PRACTICE),
            pinhole_worse: known(0.2, PRACTICE),
            acuity_worse: known(0.2, PRACTICE),
            addition_from_years: known(45.0, MILLODOT),
            addition_within: known(0.75, TRIALS),
            reading_drop_mm: known(10.0, PRACTICE),
            far_from_m: known(FAR_M, PRACTICE),
        }
    }
}

fn known(value: f64, source: &'static str) -> Threshold {
    Threshold::new(value, source).expect("the figures written here are above 0 and have a source")
}
