//! How the eyes work together, and how far they see to the sides, in words.

use ::words::record::reading as say;
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
            || say::latent().to_owned(),
            |eye| say::eye_turns(&eye.said()),
        );
        let recovery = self.recovery;
        let recovery = recovery.map(|recovery| say::recovery(&recovery.in_words()));
        listed([Some(turn), Some(manifest), recovery])
    }
}

impl Cover {
    /// "no movement, with glasses", "exo 6 Δ, latent; without glasses".
    pub fn in_words(&self) -> String {
        let worn = if self.with_glasses {
            say::cover_with_glasses()
        } else {
            say::cover_without_glasses()
        };
        if self.deviations.is_empty() {
            return say::no_movement(&worn);
        }
        let moved: Vec<String> = self.deviations.iter().map(Deviation::in_words).collect();
        format!("{}; {worn}", moved.join("; "))
    }
}

impl Motility {
    /// "full", or where the eyes do not follow.
    pub fn in_words(&self) -> String {
        match self {
            Self::Full => say::motility_full().into(),
            Self::Limited(words) => say::motility_limited(&words.trim()),
        }
    }
}

impl Reads for Binocular {
    fn read(&self, lines: &mut Lines) {
        lines.finding(say::cover_far(), &self.cover_far, Cover::in_words);
        lines.finding(say::cover_near(), &self.cover_near, Cover::in_words);
        lines.finding(say::eyes_follow(), &self.motility, Motility::in_words);
        prisms(lines, say::aligning_prism(), &self.disparity);
        prisms(lines, say::helping_prism(), &self.prism);
        lines.one(say::note(), &*self.note);
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
    pub fn each(&self) -> [(&'static str, Quadrant); 4] {
        [
            (say::quadrant_up_temple(), self.upper_temporal),
            (say::quadrant_up_nose(), self.upper_nasal),
            (say::quadrant_down_temple(), self.lower_temporal),
            (say::quadrant_down_nose(), self.lower_nasal),
        ]
    }

    /// "full", or which are not.
    pub fn in_words(&self) -> String {
        let each = self.each().into_iter();
        let less: Vec<String> = each
            .filter(|(_, seen)| *seen != Quadrant::Full)
            .map(|(place, seen)| format!("{place} {}", seen.in_words()))
            .collect();
        filled(&less.join("; ")).unwrap_or_else(|| say::fields_full().into())
    }
}

impl Grid {
    /// "whole and straight", "bent, new: below the middle".
    pub fn in_words(&self) -> String {
        if self.is_whole() {
            return say::grid_whole().into();
        }
        let known = self.known.map(|known| {
            if known {
                say::grid_known_before()
            } else {
                say::grid_new()
            }
            .into()
        });
        let what = listed([
            self.bent.then(|| say::grid_bent().into()),
            self.missing.then(|| say::grid_missing().into()),
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
        lines.one(say::tested(), &*self.how);
        let quadrants = &self.quadrants;
        lines.findings(
            say::quadrants(),
            quadrants,
            |found| found,
            Quadrants::in_words,
        );
        lines.findings(say::grid(), &self.grid, |found| found, Grid::in_words);
        lines.one(say::note(), &*self.note);
    }
}
