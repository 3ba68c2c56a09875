//! The front and the back of the eye in words.

use optics::format::plain;

use super::{Lines, Reads};
use crate::sections::{Angle, Anterior, Looks, OneOf, Posterior, PosteriorEye, View};

impl Looks {
    /// "normal", or how else it looks.
    pub fn in_words(&self) -> String {
        match self {
            Self::Normal => "normal".into(),
            Self::Other(words) => words.trim().to_owned(),
        }
    }
}

impl Angle {
    /// "van Herick 3", "40 % at the limbus", "deep by torch".
    pub fn in_words(&self) -> String {
        match self {
            Self::LimbalPercent(percent) => format!("{} % at the limbus", plain(*percent, 0)),
            Self::VanHerick(grade) => format!("van Herick {grade}"),
            Self::Shaffer(grade) => format!("gonioscope, Shaffer {grade}"),
            Self::TorchDeep => "deep by torch".into(),
            Self::TorchShallow => "shallow by torch".into(),
        }
    }
}

impl PosteriorEye {
    /// "lens at the slit lamp, pupil widened".
    fn viewed_in_words(&self) -> Option<String> {
        let how = self.viewed.map(|how| how.in_words().to_owned());
        match (how, self.dilated) {
            (Some(how), true) => Some(format!("{how}, pupil widened")),
            (None, true) => Some("pupil widened".into()),
            (how, false) => how,
        }
    }
}

impl Reads for Anterior {
    fn read(&self, lines: &mut Lines) {
        lines.one("looked with", &*self.looked_with);
        let eyes = &self.eyes;
        lines.findings("lids", eyes, |eye| &eye.lids, Looks::in_words);
        lines.findings("conjunctiva", eyes, |eye| &eye.conjunctiva, Looks::in_words);
        lines.findings("cornea", eyes, |eye| &eye.cornea, Looks::in_words);
        lines.findings("chamber", eyes, |eye| &eye.chamber, Looks::in_words);
        lines.findings("iris", eyes, |eye| &eye.iris, Looks::in_words);
        lines.findings("angle", eyes, |eye| &eye.angle, Angle::in_words);
    }
}

impl Reads for Posterior {
    fn read(&self, lines: &mut Lines) {
        let eyes = &self.eyes;
        lines.eyes("viewed", eyes.map(PosteriorEye::viewed_in_words));
        let clear = |view: &View| view.in_words().to_owned();
        lines.findings("view", eyes, |eye| &eye.view, clear);
        let cup = |ratio: &f64| plain(*ratio, 2);
        lines.findings("cup to disc", eyes, |eye| &eye.cup_to_disc, cup);
        let size = eyes.map(|eye| eye.disc_size.map(|size| size.in_words().to_owned()));
        lines.eyes("size of the disc", size);
        lines.findings("disc", eyes, |eye| &eye.disc, Looks::in_words);
        lines.findings("macula", eyes, |eye| &eye.macula, Looks::in_words);
        lines.findings("vessels", eyes, |eye| &eye.vessels, Looks::in_words);
        lines.findings("periphery", eyes, |eye| &eye.periphery, Looks::in_words);
    }
}
