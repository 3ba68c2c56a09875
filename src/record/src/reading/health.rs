//! The front and the back of the eye in words.

use ::words::record::reading as say;
use optics::format::plain;

use super::{Lines, Reads};
use crate::sections::{Angle, Anterior, Looks, OneOf, Posterior, PosteriorEye, View};

impl Looks {
    /// "normal", or how else it looks.
    pub fn in_words(&self) -> String {
        match self {
            Self::Normal => say::normal().into(),
            Self::Other(words) => words.trim().to_owned(),
        }
    }
}

impl Angle {
    /// "van Herick 3", "40 % at the limbus", "deep by torch".
    pub fn in_words(&self) -> String {
        match self {
            Self::LimbalPercent(percent) => say::limbus(&plain(*percent, 0)),
            Self::VanHerick(grade) => say::van_herick(&grade),
            Self::Shaffer(grade) => say::shaffer(&grade),
            Self::TorchDeep => say::deep_by_torch().into(),
            Self::TorchShallow => say::shallow_by_torch().into(),
        }
    }
}

impl PosteriorEye {
    /// "lens at the slit lamp, pupil widened".
    pub(crate) fn viewed_in_words(&self) -> Option<String> {
        let how = self.viewed.map(|how| how.in_words().to_owned());
        match (how, self.dilated) {
            (Some(how), true) => Some(say::viewed_widened(&how)),
            (None, true) => Some(say::pupil_widened().into()),
            (how, false) => how,
        }
    }
}

impl Reads for Anterior {
    fn read(&self, lines: &mut Lines) {
        lines.one(say::looked_with(), &*self.looked_with);
        let eyes = &self.eyes;
        lines.findings(say::lids(), eyes, |eye| &eye.lids, Looks::in_words);
        lines.findings(
            say::conjunctiva(),
            eyes,
            |eye| &eye.conjunctiva,
            Looks::in_words,
        );
        lines.findings(say::cornea(), eyes, |eye| &eye.cornea, Looks::in_words);
        lines.findings(say::chamber(), eyes, |eye| &eye.chamber, Looks::in_words);
        lines.findings(say::iris(), eyes, |eye| &eye.iris, Looks::in_words);
        lines.findings(say::angle(), eyes, |eye| &eye.angle, Angle::in_words);
    }
}

impl Reads for Posterior {
    fn read(&self, lines: &mut Lines) {
        let eyes = &self.eyes;
        lines.eyes(say::viewed(), eyes.map(PosteriorEye::viewed_in_words));
        let clear = |view: &View| view.in_words().to_owned();
        lines.findings(say::view(), eyes, |eye| &eye.view, clear);
        let cup = |ratio: &f64| plain(*ratio, 2);
        lines.findings(say::cup_to_disc(), eyes, |eye| &eye.cup_to_disc, cup);
        let size = eyes.map(|eye| eye.disc_size.map(|size| size.in_words().to_owned()));
        lines.eyes(say::size_of_disc(), size);
        lines.findings(say::disc(), eyes, |eye| &eye.disc, Looks::in_words);
        lines.findings(say::macula(), eyes, |eye| &eye.macula, Looks::in_words);
        lines.findings(say::vessels(), eyes, |eye| &eye.vessels, Looks::in_words);
        lines.findings(
            say::periphery(),
            eyes,
            |eye| &eye.periphery,
            Looks::in_words,
        );
    }
}
