//! Harmless preferences, kept in the clear with gloo-storage: habits of the hand, never anything about a person.

use gloo_storage::{LocalStorage, Storage};
use leptos::prelude::*;
use optics::cells::Cell;
use optics::retinoscopy::{Setup, WorkingLens};
use optics::{CylinderSign, Step};
use serde::{Deserialize, Serialize};

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
}

impl Habits {
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
        }
    }
}

/// The habits as last kept, or the usual ones where none are kept or they can't be read.
pub fn load() -> Habits {
    LocalStorage::get(KEY).unwrap_or_default()
}

/// A signal of the habits; every change is kept and the palette follows it.
pub fn live() -> RwSignal<Habits> {
    let habits = RwSignal::new(load());
    Effect::new(move |_| {
        let now = habits.get();
        show_palette(now);
        // A browser that refuses local storage only forgets a habit: nothing is lost, so nothing is said.
        let _ = LocalStorage::set(KEY, now);
    });
    habits
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
