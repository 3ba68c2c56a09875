//! What is under way on a round's page: one thing after another, what could not be kept, and the way back from a mark.

use crate::edge::clock::now_here;
use crate::session::Door;
use crate::shell::app;
use crate::words;
use leptos::prelude::*;
use record::{OneOf, PersonId, RoundId, Visit, VisitState};
use std::future::Future;
use widgets::Toast;

/// A mark that can be taken back.
#[derive(Clone, PartialEq)]
struct Marked {
    round: RoundId,
    person: PersonId,
    before: Option<Visit>,
    words: String,
}

/// What the parts of a page share.
#[derive(Clone, Copy)]
pub struct Doing {
    trouble: RwSignal<Option<String>>,
    marked: RwSignal<Option<Marked>>,
    door: Door,
}

impl Doing {
    /// One for this page and everything on it.
    pub fn provide() -> Self {
        let doing = Self {
            trouble: RwSignal::new(None),
            marked: RwSignal::new(None),
            door: app().door,
        };
        provide_context(doing);
        doing
    }

    /// The page's.
    pub fn here() -> Self {
        expect_context()
    }

    /// Does something that may fail, and says why where it does.
    pub fn run(self, what: impl Future<Output = Result<(), String>> + 'static) {
        self.run_then(what, || ());
    }

    /// The same, and something more where it went well.
    pub fn run_then(
        self,
        what: impl Future<Output = Result<(), String>> + 'static,
        then: impl FnOnce() + 'static,
    ) {
        leptos::task::spawn_local(async move {
            match what.await {
                Ok(()) => {
                    self.trouble.try_set(None);
                    then();
                }
                Err(sentence) => {
                    self.trouble.try_set(Some(sentence));
                }
            }
        });
    }

    /// Marks a visit, and keeps the way back.
    pub fn mark(self, round: RoundId, person: PersonId, state: VisitState) {
        let (door, at) = (self.door, now_here());
        let (before, name) = door.story().with_untracked(|story| {
            let before = story.round(&round).and_then(|known| known.visit(&person));
            let name = story.person(&person).map(words::name);
            (
                before.map(|version| version.value.clone()),
                name.unwrap_or_default(),
            )
        });
        let marked = Marked {
            round,
            person,
            before,
            words: format!("{name}: {}", state.in_words()),
        };
        let visit = Visit {
            state,
            word: String::new(),
            at,
        };
        let write = door.mark_visit(round, person, move |_| visit);
        self.run_then(write, move || {
            self.marked.try_set(Some(marked));
        });
    }

    /// Puts the round's people in the order of their rooms.
    pub fn order_by_room(self, round: RoundId) {
        self.run(self.door.change_round(round, |story, details| {
            let ordered = story.by_room(details.place, &details.people);
            // Whoever is not on record here keeps a place, at the end.
            let all = std::mem::replace(&mut details.people, ordered);
            details.add(all);
        }));
    }

    fn undo(self) {
        let Some(marked) = self.marked.get_untracked() else {
            return;
        };
        self.marked.set(None);
        let before = marked.before.unwrap_or_else(|| Visit {
            state: VisitState::ToSee,
            word: String::new(),
            at: now_here(),
        });
        self.run(
            self.door
                .mark_visit(marked.round, marked.person, move |_| before),
        );
    }
}

/// The last mark with its way back, and what could not be kept.
#[component]
pub fn UndoStrip() -> impl IntoView {
    let doing = Doing::here();
    let words = Signal::derive(move || {
        doing
            .marked
            .with(|marked| marked.as_ref().map(|marked| marked.words.clone()))
    });
    view! {
        <p class="field-error" role="alert" id="round-said">{move || doing.trouble.get()}</p>
        <Toast id="visit-undo" words on_action=move |()| doing.undo() on_close=move |()| doing.marked.set(None)/>
    }
}
