//! The last exams' lenses on the plane of cylinders, each eye on its own.

use crate::shell::app;
use ::words::app::person as say;
use leptos::prelude::*;
use record::{Eye, PersonId};
use widgets::Plane;
use widgets::plane::{Dot, From};

/// Both eyes' planes. Nothing is drawn where no exam has a lens.
#[component]
pub fn LastLenses(
    /// Whose.
    person: Memo<Option<PersonId>>,
) -> impl IntoView {
    let story = app().door.story();
    let dots = Eye::BOTH.map(|eye| {
        Memo::new(move |_| {
            let person = person.get();
            story.with(|story| {
                let lenses = person.map(|person| story.recent_lenses(&person, eye));
                lenses.into_iter().flatten().map(dot).collect::<Vec<_>>()
            })
        })
    });
    let some = Memo::new(move |_| dots.iter().any(|dots| dots.with(|dots| !dots.is_empty())));
    let planes = move || {
        let each = Eye::BOTH.into_iter().zip(dots);
        each.map(|(eye, dots)| {
            let word = eye.word();
            view! {
                <div>
                    <h3>{eye.said()}</h3>
                    <Plane id=format!("lenses-{word}") label=say::eye_plane(&eye.said()) dots=dots/>
                </div>
            }
        })
        .collect_view()
    };
    view! {
        <Show when=move || some.get()>
            <section class="sheet" id="last-lenses">
                <h2>{say::last_lenses()}</h2>
                <p class="soft">{say::lenses_rings()}</p>
                <div class="planes">{planes}</div>
            </section>
        </Show>
    }
    .into_any()
}

fn dot((ago, lens): (usize, optics::SphereCyl)) -> Dot {
    Dot {
        from: match ago {
            0 => From::Final,
            1 => From::LastTime,
            // Four exams are laid on a plane at most.
            more => From::Ago(more as u8),
        },
        lens,
        ellipse: None,
    }
}
