//! What sort of refraction is to come: how well the person's answers will do, by what retinoscopy met with.
//!
//! Media that scatter and a reflex that breaks up blur the chart as they blur the reflex; an eye that focuses can hide
//! plus from both (common practice, no source). The limits below are this project's own choice.

use ::words::record::exam as say;
use optics::retinoscopy::{EyeBracket, Media, Reflex};

use crate::finding::Eye;
use crate::sections::{Retinoscopy, Swept};
use crate::summary::Age;

/// Below this age a large plus can hide behind focusing. Common practice, no source.
pub const HIDES_PLUS_UNDER: u16 = 40;

/// A meridian that is still open by more than this, in dioptres, after all sweeps was told poorly: twice what trial lenses
/// tell apart. Own choice.
const STILL_WIDE: f64 = 1.0;

/// What sort of refraction is to come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ToCome {
    /// The person will tell lenses apart.
    ClearAnswers,
    /// The eye still focuses.
    YoungerEye,
    /// The person will hardly tell lenses apart.
    PoorAnswers,
}

impl ToCome {
    /// In one line.
    pub fn sentence(self) -> &'static str {
        match self {
            Self::ClearAnswers => say::clear_answers(),
            Self::YoungerEye => say::younger_eye(),
            Self::PoorAnswers => say::poor_answers(),
        }
    }
}

impl Retinoscopy {
    /// What is to come for an eye, with what its sweeps say; nothing where it was not done, or too little was written down to
    /// tell.
    pub fn to_come(&self, eye: Eye, says: &EyeBracket, age: Option<Age>) -> Option<ToCome> {
        self.eyes.of(eye).done()?;
        let swept = self.swept.of(eye);
        let narrow = narrow(says);
        if clouded(swept) || narrow == Some(false) {
            Some(ToCome::PoorAnswers)
        } else if age.is_some_and(|age| age.years < HIDES_PLUS_UNDER) {
            Some(ToCome::YoungerEye)
        } else {
            narrow.map(|_| ToCome::ClearAnswers)
        }
    }
}

fn clouded(swept: &Swept) -> bool {
    let eye = &swept.sweeping.circumstances;
    matches!(eye.media, Some(Media::Moderate | Media::Dense))
        || matches!(
            eye.reflex,
            Some(Reflex::Patchy | Reflex::Scissoring | Reflex::None)
        )
}

/// Whether the sweeps told every meridian that they tested closely enough; nothing where there are none.
fn narrow(says: &EyeBracket) -> Option<bool> {
    let tested = || says.each().iter().filter(|each| !each.sweeps().is_empty());
    tested().next()?;
    Some(tested().all(|each| each.interval().width() <= STILL_WIDE))
}
