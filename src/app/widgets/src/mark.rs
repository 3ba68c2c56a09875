//! Figures as the reader writes them.

use leptos::prelude::*;

/// How the reader writes figures, days and distances: words in the usual manner become words in the reader’s. A page gives
/// it as a context; it is asked wherever something is shown, so that all of it follows a change.
#[derive(Clone, Copy)]
pub struct InManner(pub Callback<String, String>);

/// Words as the reader writes them; as they are where no page says how.
pub fn marked(words: String) -> String {
    match use_context::<InManner>() {
        Some(manner) => manner.0.run(words),
        None => words,
    }
}
