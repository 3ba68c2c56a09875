//! The last two exams beside one another, section by section, with what differs marked.

use crate::pages::differences::Differences;
use crate::shell::app;
use crate::words;
use ::words::app::person as say;
use leptos::prelude::*;
use record::{Difference, PersonId};
use widgets::Disclosure;

/// One section of both.
type Both = (&'static str, usize, Vec<Difference>);

/// Both exams, behind one tap. Nothing is drawn where there are not two.
#[component]
pub fn LastTwo(
    /// Whose.
    person: Memo<Option<PersonId>>,
) -> impl IntoView {
    let story = app().door.story();
    let days = Memo::new(move |_| {
        let person = person.get()?;
        story.with(|story| {
            let two = story.last_two(&person, words::manner().far)?;
            let days = [two.before, two.now].map(|exam| words::date(exam.opened_on()));
            Some(days)
        })
    });
    let sections = move || -> Vec<Both> {
        let two = |person: PersonId| {
            story.with(|story| {
                let two = story.last_two(&person, words::manner().far)?;
                let sections = two.sections.into_iter();
                Some(
                    sections
                        .map(|both| (both.kind.title(), both.differing(), both.lines))
                        .collect(),
                )
            })
        };
        person.get().and_then(two).unwrap_or_default()
    };
    let all = move || {
        let columns = days.get().unwrap_or_default();
        let each = sections().into_iter();
        each.map(|(title, differing, lines)| section(title, differing, lines, columns.clone()))
            .collect_view()
    };
    view! {
        <Show when=move || days.get().is_some()>
            <section class="sheet">
                <Disclosure id="last-two" summary=say::last_two()>{all}</Disclosure>
            </section>
        </Show>
    }
    .into_any()
}

fn section(
    title: &'static str,
    differing: usize,
    lines: Vec<Difference>,
    columns: [String; 2],
) -> AnyView {
    let many = say::lines_differ(differing);
    view! {
        <article class="both">
            <div class="eye-head"><h3>{title}</h3><span class="soft">{many}</span></div>
            <Differences lines columns/>
        </article>
    }
    .into_any()
}
