//! How the eyes work together, and how far they see to the sides, in words.

use optics::format::plain;
use optics::prism::Prism;

use super::{Lines, Reads, filled, listed};
use crate::finding::{Eye, Eyes, Finding};
use crate::sections::{
    Binocular, Cover, Deviation, Fields, Grid, Motility, OneOf, Quadrant, Quadrants,
};

impl Deviation {
    /// "exo 6 Δ, latent, recovery quick", "eso, right eye turns".
    pub fn in_words(&self) -> String {
        let size = self.prism_pd.map(|size| format!(" {} Δ", plain(size, 2)));
        let turn = format!("{}{}", self.turn.in_words(), size.unwrap_or_default());
        let manifest = self.manifest.map_or_else(
            || "latent".to_owned(),
            |eye| format!("{} eye turns", eye.word()),
        );
        let recovery = self.recovery;
        let recovery = recovery.map(|recovery| format!("recovery {}", recovery.in_words()));
        listed([Some(turn), Some(manifest), recovery])
    }
}

impl Cover {
    /// "no movement, with glasses", "exo 6 Δ, latent; without glasses".
    pub fn in_words(&self) -> String {
        let worn = if self.with_glasses {
            "with glasses"
        } else {
            "without glasses"
        };
        if self.deviations.is_empty() {
            return format!("no movement, {worn}");
        }
        let moved: Vec<String> = self.deviations.iter().map(Deviation::in_words).collect();
        format!("{}; {worn}", moved.join("; "))
    }
}

impl Motility {
    /// "full", or where the eyes do not follow.
    pub fn in_words(&self) -> String {
        match self {
            Self::Full => "full".into(),
            Self::Limited(words) => format!("limited: {}", words.trim()),
        }
    }
}

impl Reads for Binocular {
    fn read(&self, lines: &mut Lines) {
        lines.finding("cover, far", &self.cover_far, Cover::in_words);
        lines.finding("cover, near", &self.cover_near, Cover::in_words);
        lines.finding("eyes follow", &self.motility, Motility::in_words);
        prisms(lines, "aligning prism", &self.disparity);
        prisms(lines, "helping prism", &self.prism);
        lines.one("note", &*self.note);
    }
}

fn prisms(lines: &mut Lines, label: &str, found: &Finding<Eyes<Prism>>) {
    let Some(eyes) = found.done() else {
        return lines.some(label, found.why_not());
    };
    lines.eyes(
        label,
        Eyes {
            right: Some(eyes.right.written(Eye::Right)),
            left: Some(eyes.left.written(Eye::Left)),
        },
    );
}

impl Quadrants {
    /// The four with their names, from the upper to the lower.
    pub const fn each(&self) -> [(&'static str, Quadrant); 4] {
        [
            ("up, temple side", self.upper_temporal),
            ("up, nose side", self.upper_nasal),
            ("down, temple side", self.lower_temporal),
            ("down, nose side", self.lower_nasal),
        ]
    }

    /// "full", or which are not.
    pub fn in_words(&self) -> String {
        let each = self.each().into_iter();
        let less: Vec<String> = each
            .filter(|(_, seen)| *seen != Quadrant::Full)
            .map(|(place, seen)| format!("{place} {}", seen.in_words()))
            .collect();
        filled(&less.join("; ")).unwrap_or_else(|| "full".into())
    }
}

impl Grid {
    /// "whole and straight", "bent, new: below the middle".
    pub fn in_words(&self) -> String {
        if self.is_whole() {
            return "whole and straight".into();
        }
        let known = self
            .known
            .map(|known| if known { "known before" } else { "new" }.into());
        let what = listed([
            self.bent.then(|| "bent".into()),
            self.missing.then(|| "part missing".into()),
            known,
        ]);
        match filled(&self.place) {
            Some(place) => format!("{what}: {place}"),
            None => what,
        }
    }
}

impl Reads for Fields {
    fn read(&self, lines: &mut Lines) {
        lines.one("tested", &*self.how);
        let quadrants = &self.quadrants;
        lines.findings("quadrants", quadrants, |found| found, Quadrants::in_words);
        lines.findings("grid", &self.grid, |found| found, Grid::in_words);
        lines.one("note", &*self.note);
    }
}
