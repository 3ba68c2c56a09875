//! Pupils and the lens of the eye in words.

use ::words::record::reading as say;
use optics::format::plain;

use super::{Lines, Reads, filled, listed};
use crate::sections::{Grade, LensState, OneOf, Pupils, Reaction};

impl Grade {
    /// "moderate", or "LOCS III 3.2" on the published scale.
    pub fn in_words(&self) -> String {
        match self {
            Self::Plain(amount) => amount.word().to_owned(),
            Self::LocsIii(figure) => format!("LOCS III {}", plain(*figure, 1)),
        }
    }
}

impl LensState {
    /// "own: nucleus moderate, cortex clear", "implant, capsule mild", "no lens".
    pub fn in_words(&self) -> String {
        match self {
            Self::Own(opacity) => {
                let part = |name: &str, grade: Option<Grade>| {
                    grade.map(|grade| format!("{name} {}", grade.in_words()))
                };
                let parts = listed([
                    part(say::nucleus(), opacity.nuclear),
                    part(say::cortex(), opacity.cortical),
                    part(say::back_of_lens(), opacity.posterior),
                ]);
                filled(&parts).map_or_else(
                    || say::own_lens().into(),
                    |parts| say::own_lens_with(&parts),
                )
            }
            Self::Implant { capsule } => listed([
                Some(say::implant().into()),
                capsule.map(|amount| say::capsule(&amount.word())),
            ]),
            Self::None => say::no_lens().into(),
        }
    }
}

impl Reads for Pupils {
    fn read(&self, lines: &mut Lines) {
        let eyes = &self.eyes;
        let mm = |width: &f64| format!("{} mm", plain(*width, 1));
        let word = |reaction: &Reaction| reaction.in_words().to_owned();
        lines.findings(say::in_light(), eyes, |eye| &eye.light_mm, mm);
        lines.findings(say::in_dark(), eyes, |eye| &eye.dark_mm, mm);
        lines.findings(say::direct(), eyes, |eye| &eye.direct, word);
        lines.findings(say::consensual(), eyes, |eye| &eye.consensual, word);
        lines.findings(say::to_near(), eyes, |eye| &eye.near, word);
        lines.finding(say::afferent_defect(), &self.afferent, |found| {
            found.in_words().into()
        });
        lines.findings(say::lens(), eyes, |eye| &eye.lens, LensState::in_words);
        lines.eyes(say::note(), eyes.map(|eye| filled(&eye.note)));
    }
}
