//! Pupils and the lens of the eye in words.

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
                    part("nucleus", opacity.nuclear),
                    part("cortex", opacity.cortical),
                    part("back of the lens", opacity.posterior),
                ]);
                filled(&parts).map_or_else(|| "its own".into(), |parts| format!("own: {parts}"))
            }
            Self::Implant { capsule } => listed([
                Some("implant".into()),
                capsule.map(|amount| format!("capsule {}", amount.word())),
            ]),
            Self::None => "no lens".into(),
        }
    }
}

impl Reads for Pupils {
    fn read(&self, lines: &mut Lines) {
        let eyes = &self.eyes;
        let mm = |width: &f64| format!("{} mm", plain(*width, 1));
        let word = |reaction: &Reaction| reaction.in_words().to_owned();
        lines.findings("in light", eyes, |eye| &eye.light_mm, mm);
        lines.findings("in the dark", eyes, |eye| &eye.dark_mm, mm);
        lines.findings("direct", eyes, |eye| &eye.direct, word);
        lines.findings("consensual", eyes, |eye| &eye.consensual, word);
        lines.findings("to near", eyes, |eye| &eye.near, word);
        lines.finding("afferent defect", &self.afferent, |found| {
            found.in_words().into()
        });
        lines.findings("lens", eyes, |eye| &eye.lens, LensState::in_words);
        lines.eyes("note", eyes.map(|eye| filled(&eye.note)));
    }
}
