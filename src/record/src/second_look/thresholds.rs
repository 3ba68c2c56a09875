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
        const PRACTICE: &str = "common practice, no source";
        const AGE: &str = "an age over 75 is among the risk factors for falls in a lecture of Elliott's, as a news report has it; the figure 75 from there";
        const JORGE: &str = "95 % limits of retinoscopy against subjective, computed from Jorge et al. 2005, Optom Vis Sci 82:64-68 (mean difference 0.02 D, standard deviation 0.33 D)";
        const TRIALS: &str = "95 % limits of four ways to estimate an addition are wider than 0.50 D (Arq Bras Oftalmol 2013;76:218-220); figure: common practice";
        const MILLODOT: &str = "the table in Millodot, Dictionary of Optometry, entry on the near addition, begins at 45";
        const FALLEN: &str = "an earlier fall predicted the next one in a study of lenses and falls (odds ratio 2.71; a UK thesis)";
        const MYOPIC: &str = "eyes with nuclear cataract become more myopic (Fotedar et al. 2008, Ophthalmology 115:1273-1278), and 0.75 D is more than the 0.49 D that two refractions differ by (Sheedy et al. 2004, Optom Vis Sci 81:334-340)";
        const NEW_CYLINDER: &str = "a weaker one is how two refractions differ: 0.47 D at 95 %, computed from components with a standard deviation of 0.085 D (MacKenzie 2008, Ophthalmic Physiol Opt 28:143-150)";
        const AXIS: &str = "less is how two refractions differ: 0.24 D at 95 %, computed from components with a standard deviation of 0.085 D (MacKenzie 2008, Ophthalmic Physiol Opt 28:143-150)";
        const HIGH: &str = "NICE NG81: refer from 24 mmHg by Goldmann's kind of tonometer; SIGN in Scotland says above 25";
        const VERY_HIGH: &str =
            "lists of a hospital and of a state health service: above 35 mmHg urgent or emergency";
        const APART: &str =
            "a training summary of the guidance of NICE and SIGN: a difference above 4 mmHg";
        Self {
            change: change::Thresholds {
                new_cylinder: known(0.5, NEW_CYLINDER),
                ..change::Thresholds::default()
            },
            axis_blur_from: known(0.25, AXIS),
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
            falls_from: known(1.0, FALLEN),
            myopic_shift: known(0.75, MYOPIC),
            pressure_high_mmhg: known(24.0, HIGH),
            pressure_very_high_mmhg: known(35.0, VERY_HIGH),
            pressure_apart_mmhg: known(4.0, APART),
            cups_apart: known(0.2, PRACTICE),
        }
    }
}

fn known(value: f64, source: &'static str) -> Threshold {
    Threshold::new(value, source).expect("the figures written here are above 0 and have a source")
}
