//! The reminder about the eye that waits, for as long as nothing was found of it.

use leptos::prelude::*;
use record::{Age, Eye, Retinoscopy, fog};

/// One quiet line.
#[component]
pub fn FogLine(
    /// The eye that waits.
    eye: Eye,
    /// What stands now.
    value: Signal<Retinoscopy>,
    /// How old the person is.
    age: Memo<Option<Age>>,
) -> impl IntoView {
    let line = Memo::new(move |_| {
        value.with(|section| {
            let untouched =
                section.eyes.of(eye).is_blank() && section.swept.of(eye).sweeping.sweeps.is_empty();
            untouched.then(|| fog::reminder(age.get(), &section.setup))?
        })
    });
    move || {
        line.get().map(
            |line| view! { <p class="caution fog" id=format!("fog-{}", eye.word())>{line}</p> },
        )
    }
}
