//! What a clinic sets for all its tablets: figures of the second look by local rules, phrases that were taught, and how files of
//! earlier findings are read.
//!
//! Settings are entries like everything else: a change writes a whole new version that names those it replaces, so it comes
//! to every tablet and nothing of what was set before is lost. Phrases come from what was written about people, so they are
//! kept encrypted here, never in the clear among a tablet's habits.

mod figures;
mod keeping;
mod usual;

pub use figures::{Figure, FigureUnit};
pub use usual::{Phrase, PhraseError, Usual, holds_phrase, own_words, turned_phrase};

use std::collections::BTreeMap;

use optics::change::Threshold;
use serde::{Deserialize, Serialize};

use crate::body::Body;
use crate::earlier_list::{Mapping, Saved, Table};
use crate::entry::Entry;
use crate::lane::{Heads, Version};
use crate::plan::Planned;
use crate::second_look::Thresholds;
use crate::story::Story;

/// Everything that is set. What this version of the app does not know is kept as it came.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Settings {
    /// Figures of the second look that differ from the usual ones, by [`Figure::slug`], each with the local rule that says so.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub figures: BTreeMap<String, Threshold>,
    /// Phrases that were taught, by [`Usual::slug`], in the order in which they were.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub phrases: BTreeMap<String, Vec<String>>,
    /// How files of earlier findings are read, the one that was kept last at the end. Where a file has no heading, its first row
    /// stands in place of one: so these are no habit in the clear.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub mappings: Vec<Saved>,
}

impl Settings {
    /// The figures at which the second look asks: the usual ones, with the local ones in their place.
    ///
    /// ```
    /// use optics::change::Threshold;
    /// use record::{Figure, Settings};
    ///
    /// let mut settings = Settings::default();
    /// settings.set(Figure::PressureHighMmhg, Threshold::new(21.0, "harbour eye service, 2026")?);
    /// assert_eq!(settings.thresholds().pressure_high_mmhg.source(), "harbour eye service, 2026");
    /// settings.set_back(Figure::PressureHighMmhg);
    /// assert_eq!(settings.thresholds().pressure_high_mmhg.value(), 24.0);
    /// # Ok::<(), optics::change::ThresholdError>(())
    /// ```
    pub fn thresholds(&self) -> Thresholds {
        let mut all = Thresholds::default();
        for figure in Figure::ALL {
            if let Some(local) = self.local(*figure) {
                *figure.of_mut(&mut all) = local.clone();
            }
        }
        all
    }

    /// A figure by local rules; nothing where the usual one holds.
    pub fn local(&self, figure: Figure) -> Option<&Threshold> {
        self.figures.get(figure.slug())
    }

    /// Puts a local figure in place of the usual one.
    pub fn set(&mut self, figure: Figure, local: Threshold) {
        self.figures.insert(figure.slug().to_owned(), local);
    }

    /// Goes back to the usual figure.
    pub fn set_back(&mut self, figure: Figure) {
        self.figures.remove(figure.slug());
    }

    /// Keeps how a file is read, in place of what had its name.
    pub fn keep_mapping(&mut self, saved: Saved) {
        self.forget_mapping(&saved.name);
        self.mappings.push(saved);
    }

    /// Forgets how a file is read.
    pub fn forget_mapping(&mut self, name: &str) {
        self.mappings.retain(|kept| kept.name != name);
    }

    /// How a file is read by what was kept last of all that fits it, with its name.
    pub fn mapping_for(&self, table: &Table) -> Option<(&str, Mapping)> {
        let mut kept = self.mappings.iter().rev();
        kept.find_map(|saved| Some((saved.name.as_str(), saved.on(table)?)))
    }

    /// One more tablet's: its phrases are added, its figures go before.
    fn with(mut self, later: &Self) -> Self {
        let figures = later.figures.iter();
        self.figures
            .extend(figures.map(|(slug, local)| (slug.clone(), local.clone())));
        for (field, phrases) in &later.phrases {
            let known = self.phrases.entry(field.clone()).or_default();
            let new = phrases.iter().filter(|phrase| !known.contains(phrase));
            let new: Vec<String> = new.cloned().collect();
            known.extend(new);
        }
        for saved in &later.mappings {
            self.keep_mapping(saved.clone());
        }
        self
    }
}

impl Story {
    /// The versions of the settings that nothing has replaced.
    pub fn settings_versions(&self) -> Heads<'_, Settings> {
        let version = |entry| {
            let value = settings(entry)?;
            Some(Version { entry, value })
        };
        Heads::from_versions(self.settings.heads().filter_map(version).collect())
    }

    /// The settings as they hold. Where two tablets changed them without knowing of each other, the phrases and mappings of both
    /// count, and of a figure that both set the one set last; [`Story::settings_differ`] tells.
    pub fn settings(&self) -> Settings {
        let heads = self.settings_versions();
        let each = heads.versions().iter().map(|version| version.value);
        each.fold(Settings::default(), Settings::with)
    }

    /// The figures that two tablets set differently without knowing of each other. Setting anything settles them.
    pub fn settings_differ(&self) -> Vec<Figure> {
        let heads = self.settings_versions();
        let (first, others) = match heads.versions() {
            [] | [_] => return Vec::new(),
            [first, others @ ..] => (first.value, others),
        };
        let differs = |figure: &Figure| {
            let local = first.local(*figure);
            others
                .iter()
                .any(|other| other.value.local(*figure) != local)
        };
        Figure::ALL.iter().copied().filter(differs).collect()
    }

    /// Sets, in place of all present versions.
    pub fn put_settings(&self, settings: Settings) -> Planned {
        Planned {
            body: Body::Settings(settings),
            parents: self.settings.head_ids().collect(),
        }
    }
}

fn settings(entry: &Entry) -> Option<&Settings> {
    match &entry.body {
        Body::Settings(settings) => Some(settings),
        _ => None,
    }
}
