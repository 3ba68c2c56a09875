//! From where on a change wants a reason in an old or frail person.
//!
//! Both directions harm. Uncorrected error does, and so does a large change: in a trial of 616 frail people of 70 and over,
//! those whose eyes were examined and treated fell more, not less (rate ratio 1.57, 95 % interval 1.20 to 2.05; Cumming et
//! al. 2007, J Am Geriatr Soc 55:175-181), and those whose sphere or cylinder changed by 0.75 D or more fell more than the
//! others (as a lecture of Leat's reports of it in 2014). A review ascribes it to large changes of refraction, which change
//! magnification and with it the reflex that steadies the eye, and asks for changes of about 0.75 D at most and the least of
//! axis, of an oblique one above all (Elliott 2014, Optom Vis Sci 91:593-601, as two trade reports quote it). On steps a
//! cylinder of 3 D changed the gait unless its axis was at 90 (Johnson et al. 2013, PLOS ONE 8:e63351).
//!
//! These are thresholds for a question, never for a refusal; a setting can put others in their place with their own source.
//!
//! The same sources speak of the kind of lens (no first multifocal for someone at risk of falling: Lord et al. 2002, J Am
//! Geriatr Soc 50:1760-1766): that is no arithmetic and is asked elsewhere.

use ::words::optics::change as say;
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// A figure, and who says so.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[serde(try_from = "Fields", into = "Fields")]
pub struct Threshold {
    value: f64,
    source: Source,
}

#[derive(Debug, Clone)]
enum Source {
    /// Of a figure that comes with the project: said in the language spoken.
    Known(fn() -> &'static str),
    /// In the words of whoever set the figure.
    Told(String),
}

/// Two thresholds are the same that say the same.
impl PartialEq for Threshold {
    fn eq(&self, other: &Self) -> bool {
        self.value == other.value && self.source() == other.source()
    }
}

/// Why a threshold was not taken.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum ThresholdError {
    /// The figure is negative, endless or not a number.
    #[error("{}", say::threshold_no_number(.0))]
    Value(f64),
    /// Nobody is named.
    #[error("{}", say::threshold_no_source())]
    NoSource,
}

impl Threshold {
    /// A figure from 0 up, in the unit of its field, with its source.
    ///
    /// # Errors
    /// [`ThresholdError`] for a figure that is none, or no source.
    pub fn new(value: f64, source: impl Into<String>) -> Result<Self, ThresholdError> {
        let source = source.into();
        if !value.is_finite() || value < 0.0 {
            return Err(ThresholdError::Value(value));
        }
        if source.trim().is_empty() {
            return Err(ThresholdError::NoSource);
        }
        Ok(Self {
            value,
            source: Source::Told(source),
        })
    }

    /// A figure that comes with the project, from 0 up, and what says its source.
    ///
    /// # Panics
    /// For a figure that is negative, endless or not a number. Only what stands in the source comes here.
    pub const fn known(value: f64, source: fn() -> &'static str) -> Self {
        assert!(
            value.is_finite() && value >= 0.0,
            "a threshold goes from 0 up"
        );
        Self {
            value,
            source: Source::Known(source),
        }
    }

    /// The figure.
    pub const fn value(&self) -> f64 {
        self.value
    }

    /// Who says so.
    pub fn source(&self) -> &str {
        match &self.source {
            Source::Known(said) => said(),
            Source::Told(source) => source,
        }
    }
}

/// The thresholds of a cautious change. One that a setting leaves out is as by default.
///
/// ```
/// use optics::change::{Threshold, Thresholds};
/// let ours = Thresholds {
///     sphere: Threshold::new(0.5, "agreed in our practice")?,
///     ..Thresholds::default()
/// };
/// assert_eq!(ours.sphere.source(), "agreed in our practice");
/// assert_eq!(ours.axis_degrees.value(), 10.0);
/// # Ok::<(), optics::change::ThresholdError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Thresholds {
    /// A change of sphere or mean sphere above this, in dioptres.
    pub sphere: Threshold,
    /// A cylinder made stronger or weaker by this much or more, in dioptres.
    pub cylinder: Threshold,
    /// A new cylinder from this strength on, in dioptres.
    pub new_cylinder: Threshold,
    /// An oblique axis turned by this much or more, in degrees ...
    pub axis_degrees: Threshold,
    /// ... where the cylinder is this strong or stronger, in dioptres.
    pub axis_cylinder: Threshold,
    /// An axis farther than this from both 90 and 180 is oblique, in degrees.
    pub oblique_beyond: Threshold,
    /// A difference between the eyes made this much larger or more, in dioptres of mean sphere.
    pub new_anisometropia: Threshold,
}

impl Default for Thresholds {
    fn default() -> Self {
        Self {
            sphere: Threshold::known(0.75, say::source_elliott),
            cylinder: Threshold::known(0.75, say::source_cumming),
            new_cylinder: Threshold::known(0.25, say::source_practice),
            axis_degrees: Threshold::known(10.0, say::source_elliott_axis),
            axis_cylinder: Threshold::known(0.75, say::source_practice),
            oblique_beyond: Threshold::known(30.0, say::source_practice),
            new_anisometropia: Threshold::known(1.0, say::source_anisometropia),
        }
    }
}

#[derive(Serialize, Deserialize)]
struct Fields {
    value: f64,
    source: String,
}

impl TryFrom<Fields> for Threshold {
    type Error = ThresholdError;
    fn try_from(fields: Fields) -> Result<Self, ThresholdError> {
        Self::new(fields.value, fields.source)
    }
}

impl From<Threshold> for Fields {
    fn from(threshold: Threshold) -> Self {
        Self {
            value: threshold.value,
            source: threshold.source().to_owned(),
        }
    }
}
