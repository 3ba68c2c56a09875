//! What to do next for a person, and the button that begins an exam.

use crate::session::Door;
use crate::shell::app;
use crate::words;
use ::words::app::pages as say;
use leptos::prelude::*;
use leptos_router::hooks::use_navigate;
use record::{ExamId, ExamState, PersonId};

/// Beginning an exam and going there: one for as many buttons as stand in a list.
#[derive(Clone, Copy)]
pub struct Beginning {
    door: Door,
    go: UnsyncCallback<String>,
    /// A second tap while the first is being kept must not begin a second exam.
    under_way: StoredValue<bool>,
    /// Whose exam couldn't be begun, and why.
    trouble: RwSignal<Option<(PersonId, String)>>,
}

impl Beginning {
    pub fn new() -> Self {
        let navigate = use_navigate();
        Self {
            door: app().door,
            go: UnsyncCallback::new(move |path: String| {
                navigate(&path, leptos_router::NavigateOptions::default())
            }),
            under_way: StoredValue::new(false),
            trouble: RwSignal::new(None),
        }
    }

    fn begin(self, person: PersonId) {
        if self.under_way.get_value() {
            return;
        }
        self.under_way.set_value(true);
        leptos::task::spawn_local(async move {
            match self.door.open_exam(person).await {
                Ok(exam) => self
                    .go
                    .run(words::exam_path(&exam, crate::pages::exam::FIRST)),
                Err(sentence) => {
                    self.trouble.set(Some((person, sentence)));
                    self.under_way.set_value(false);
                }
            }
        });
    }

    /// The button for one person, and what came in its way.
    fn button(self, person: PersonId) -> impl IntoView {
        let trouble = move || {
            self.trouble.with(|trouble| {
                let (_, sentence) = trouble.as_ref().filter(|(whose, _)| *whose == person)?;
                Some(view! { <p class="field-error" role="alert">{sentence.clone()}</p> })
            })
        };
        view! {
            <button class="pill row-act writes" type="button" data-part="begin" on:click=move |_| self.begin(person)>{say::begin()}</button>
            {trouble}
        }
    }

    /// The one thing to do next for a person: go on, or begin.
    pub fn action(self, person: PersonId, exam: Option<(ExamId, ExamState)>) -> AnyView {
        match exam {
            Some((exam, ExamState::Open)) => {
                let path = words::exam_path(&exam, crate::pages::exam::to_go_on(exam));
                view! { <a class="act row-act" href=path>{say::go()}</a> }.into_any()
            }
            _ => self.button(person).into_any(),
        }
    }
}

/// The one thing to do next for a person who stands alone.
#[component]
pub fn Action(person: PersonId, exam: Option<(ExamId, ExamState)>) -> impl IntoView {
    Beginning::new().action(person, exam)
}

/// Begins an exam of a person and goes there.
#[component]
pub fn Begin(
    /// Who.
    person: PersonId,
) -> impl IntoView {
    Beginning::new().button(person)
}
