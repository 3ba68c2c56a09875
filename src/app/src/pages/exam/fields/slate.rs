//! What an editor writes on: the section as it stands, the same of last time, and what one tap filled in.

use super::super::halves::Halves;
use super::why::Why;
use leptos::prelude::*;
use record::{Age, Eye, Section};

/// One section while it is being filled in. Copied freely.
#[derive(Clone, Copy)]
pub struct Slate {
    /// What stands now.
    pub now: Memo<Section>,
    /// Last time's, with its month.
    pub before: Signal<Option<(String, Section)>>,
    /// Called with every change.
    pub put: Callback<Section>,
    /// What is half entered.
    pub halves: Halves,
    /// How old the person is.
    pub age: Signal<Option<Age>>,
    /// The eye being worked on.
    pub working: RwSignal<Eye>,
    /// The finding of which is asked why it is missing.
    pub why: RwSignal<Option<Why>>,
    /// What one tap filled in: the section before it and after it.
    pub tap: RwSignal<Option<(Section, Section)>>,
}

impl Slate {
    /// A slate for what stands now.
    pub fn new(
        now: Memo<Section>,
        before: Signal<Option<(String, Section)>>,
        put: Callback<Section>,
        halves: Halves,
        age: Signal<Option<Age>>,
    ) -> Self {
        Self {
            now,
            before,
            put,
            halves,
            age,
            working: RwSignal::new(Eye::Right),
            why: RwSignal::new(None),
            tap: RwSignal::new(None),
        }
    }

    /// Fills what is blank with what is normal.
    pub fn fill_normal(self) {
        let before = self.now.get_untracked();
        if let Some(after) = before.normal_where_blank() {
            self.tap.set(Some((before, after.clone())));
            self.put.run(after);
        }
    }

    /// Whether nothing has changed since the tap.
    pub fn untouched(self) -> bool {
        let tap = self.tap.get();
        tap.is_some_and(|(_, after)| self.now.with(|now| *now == after))
    }

    /// Takes the tap back.
    pub fn take_back(self) {
        if let Some((before, _)) = self.tap.get_untracked() {
            self.tap.set(None);
            self.put.run(before);
        }
    }
}
