//! Harmless preferences, kept in the clear with gloo-storage: habits of the hand, never anything about a person.

use ::words::Language;
use gloo_storage::{LocalStorage, Storage};
use leptos::prelude::*;
use optics::cells::Cell;
use optics::retinoscopy::{Setup, WorkingLens};
use optics::{CylinderSign, Step};
use papers::log::Column;
use record::Manner;
use serde::{Deserialize, Serialize};
use workers::PaperSize;

const KEY: &str = "lightround.habits";

/// How the screen is lit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Palette {
    /// Ink on warm paper.
    #[default]
    Day,
    /// An ember on near-black, for the darkened room.
    Night,
}

/// The habits of whoever uses this tablet. Missing fields take today's usual values, so that an older set still reads.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, rename_all = "kebab-case")]
pub struct Habits {
    /// The language of everything that is shown.
    pub language: Language,
    /// Day or Night.
    pub palette: Palette,
    /// How bright Night is, 0.4 to 1.
    pub dim: f64,
    /// Seconds without a touch before the vault locks itself.
    pub idle_seconds: u32,
    /// Usual working distance, centimetres.
    pub working_distance_cm: f64,
    /// Working lens usually in the frame, dioptres; none when the distance is taken off at the end.
    pub working_lens: Option<f64>,
    /// The cell that the working lens usually sits in.
    pub working_cell: Cell,
    /// Spacing of the trial frame's cells, millimetres.
    pub cell_spacing_mm: f64,
    /// The step of the trial lenses.
    pub step: Step,
    /// The sign of the cylinders while working.
    pub cylinders: CylinderSign,
    /// The sign of the cylinders in results.
    pub written: CylinderSign,
    /// The distance that the chart was made for, metres.
    pub chart_made_for_m: f64,
    /// The distance that the chart is usually used at, metres.
    pub chart_used_at_m: f64,
    /// Usual vertex distance, millimetres.
    pub vertex_mm: f64,
    /// Whether retinoscopy is written down sweep by sweep.
    pub sweeps: bool,
    /// How days, figures and distances are shown.
    pub manner: Manner,
    /// The paper that is in the printer.
    pub paper: PaperSize,
}

impl Habits {
    /// What is usual for whoever reads this language.
    fn usual_in(language: Language) -> Self {
        Self {
            language,
            manner: Manner::usual_in(language),
            ..Self::default()
        }
    }

    /// Goes over to another language, and to what is usual in it where nothing else was chosen.
    pub fn speak(&mut self, language: Language) {
        self.manner = self.manner.gone_over(self.language, language);
        self.language = language;
    }

    /// Takes over how an eye is examined, all but the distance: a distance may be for this once.
    pub fn follow(&mut self, setup: &Setup) {
        self.working_lens = setup.working_lens.map(WorkingLens::power);
        self.working_cell = setup
            .working_lens
            .map_or(self.working_cell, WorkingLens::cell);
        self.cell_spacing_mm = setup.cell_spacing_mm;
        self.step = setup.step;
        self.cylinders = setup.cylinders;
    }
}

impl Default for Habits {
    fn default() -> Self {
        Self {
            language: Language::default(),
            palette: Palette::Day,
            dim: 1.0,
            idle_seconds: 300,
            working_distance_cm: 67.0,
            working_lens: None,
            working_cell: Cell::Front,
            cell_spacing_mm: 5.0,
            step: Step::Quarter,
            cylinders: CylinderSign::Minus,
            written: CylinderSign::Minus,
            chart_made_for_m: 6.0,
            chart_used_at_m: 3.0,
            vertex_mm: 12.0,
            sweeps: false,
            manner: Manner::default(),
            paper: PaperSize::default(),
        }
    }
}

const LOG_KEY: &str = "lightround.log";

/// How the visit log is looked at on this tablet.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, rename_all = "kebab-case")]
pub struct LogHabits {
    /// The columns by their headings, in their order.
    pub columns: Vec<String>,
    /// Whether what is personal is left out.
    pub nobody: bool,
}

impl Default for LogHabits {
    fn default() -> Self {
        let usual = Column::ALL.iter().map(|column| column.heading().to_owned());
        Self {
            columns: usual.collect(),
            nobody: false,
        }
    }
}

/// How the log was last looked at.
pub fn log() -> LogHabits {
    LocalStorage::get(LOG_KEY).unwrap_or_default()
}

/// Keeps how the log is looked at. A browser that refuses only forgets a habit.
pub fn keep_log(habits: &LogHabits) {
    let _ = LocalStorage::set(LOG_KEY, habits);
}

/// The habits as last kept, or where none are kept or they can't be read, the usual ones in the browser's language.
pub fn load() -> Habits {
    LocalStorage::get(KEY).unwrap_or_else(|_| {
        let browser = window().navigator().language();
        let language = browser.and_then(|tag| Language::of_tag(&tag));
        Habits::usual_in(language.unwrap_or_default())
    })
}

/// A signal of the habits; every change is kept, and the palette and the document's language follow it.
pub fn live() -> RwSignal<Habits> {
    let habits = RwSignal::new(load());
    ::words::speak(habits.with_untracked(|habits| habits.language));
    Effect::new(move |_| {
        let now = habits.get();
        show_palette(now);
        show_language(now.language);
        // A browser that refuses local storage only forgets a habit: nothing is lost, so nothing is said.
        let _ = LocalStorage::set(KEY, now);
    });
    habits
}

/// A screen reader speaks, and a browser breaks words, by the document's language.
fn show_language(language: Language) {
    if let Some(root) = document().document_element() {
        let _ = root.set_attribute("lang", language.tag());
    }
}

fn show_palette(habits: Habits) {
    let Some(root) = document().document_element() else {
        return;
    };
    let name = match habits.palette {
        Palette::Day => "day",
        Palette::Night => "night",
    };
    let _ = root.set_attribute("data-palette", name);
    if let Ok(root) = wasm_bindgen::JsCast::dyn_into::<web_sys::HtmlElement>(root) {
        let dim = if habits.palette == Palette::Night {
            habits.dim
        } else {
            1.0
        };
        let _ = root.style().set_property("--dim", &format!("{dim:.2}"));
    }
}
