//! What the eye lets the examiner see.
//!
//! A small pupil, opaque media and a poor reflex widen the zone that looks neutral and make a miscall likelier; how much is
//! in [`super::bracket::constants`]. What nobody said is taken as an ordinary old eye.

use crate::{OutOfRange, limits};
use serde::{Deserialize, Serialize};

/// How clear the way of the light is, in plain words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Media {
    /// No opacity seen.
    Clear,
    /// Some opacity, the reflex little dimmed.
    Slight,
    /// The reflex clearly dimmed or broken.
    Moderate,
    /// Hardly a reflex.
    Dense,
}

impl Media {
    /// All, the clearest first.
    pub const ALL: [Self; 4] = [Self::Clear, Self::Slight, Self::Moderate, Self::Dense];
}

/// How the reflex looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Reflex {
    /// Bright and even.
    Bright,
    /// Dull.
    Dull,
    /// Broken by opacities.
    Patchy,
    /// Two bands that open and close like scissors.
    Scissoring,
    /// None to be seen.
    None,
}

impl Reflex {
    /// All, the best first.
    pub const ALL: [Self; 5] = [
        Self::Bright,
        Self::Dull,
        Self::Patchy,
        Self::Scissoring,
        Self::None,
    ];
}

/// The eye's circumstances, as far as they were said.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(try_from = "Fields")]
pub struct Circumstances {
    #[serde(skip_serializing_if = "Option::is_none")]
    pupil_mm: Option<f64>,
    /// The media.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub media: Option<Media>,
    /// The reflex.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reflex: Option<Reflex>,
    #[serde(skip_serializing_if = "Option::is_none")]
    off_sight: Option<f64>,
}

impl Circumstances {
    /// Circumstances on the line of sight, from the width of the pupil in millimetres (0.5 to 10), the media and the reflex.
    ///
    /// # Errors
    /// [`OutOfRange`] for the pupil.
    pub fn new(
        pupil_mm: Option<f64>,
        media: Option<Media>,
        reflex: Option<Reflex>,
    ) -> Result<Self, OutOfRange> {
        Ok(Self {
            pupil_mm: pupil_mm.map(limits::pupil_mm).transpose()?,
            media,
            reflex,
            off_sight: None,
        })
    }

    /// The same, looked at from so many degrees beside the line of sight, 0 to 20.
    ///
    /// # Errors
    /// [`OutOfRange`] beyond that.
    pub fn off_the_line_of_sight(self, degrees: Option<f64>) -> Result<Self, OutOfRange> {
        Ok(Self {
            off_sight: degrees.map(limits::off_sight).transpose()?,
            ..self
        })
    }

    /// How many degrees beside the line of sight the examiner looks from, where that was said.
    pub const fn off_sight(&self) -> Option<f64> {
        self.off_sight
    }

    /// The width of the pupil in millimetres.
    pub const fn pupil_mm(&self) -> Option<f64> {
        self.pupil_mm
    }
}

#[derive(Deserialize)]
struct Fields {
    #[serde(default)]
    pupil_mm: Option<f64>,
    #[serde(default)]
    media: Option<Media>,
    #[serde(default)]
    reflex: Option<Reflex>,
    #[serde(default)]
    off_sight: Option<f64>,
}

impl TryFrom<Fields> for Circumstances {
    type Error = OutOfRange;
    fn try_from(fields: Fields) -> Result<Self, OutOfRange> {
        Self::new(fields.pupil_mm, fields.media, fields.reflex)?
            .off_the_line_of_sight(fields.off_sight)
    }
}
