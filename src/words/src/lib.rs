//! Every word that is shown, in one place for each language.
//!
//! The words stand in [Fluent](https://projectfluent.org) files, `en/<area>-<topic>.ftl` and `de/<area>-<topic>.ftl`. When
//! the project is built, each English message becomes a function `words::<area>::<topic>::<message>`: one without variables
//! gives a `&'static str`; one with variables takes them in the order of the English sentence, as anything that can be shown,
//! or as a `usize` where the sentence depends on how many there are. So a message that does not exist, or one that is given
//! too little, does not compile. What a language has no words for is said in English.
//!
//! Figures, days and distances are written by the reader's habit before they come in here.
//!
//! ```
//! use words::{Language, app::language as say};
//! assert_eq!(say::heading(), "Language");
//! assert_eq!(words::in_language(Language::German, say::heading), "Sprache");
//! ```

mod language;
mod plural;

pub use language::Language;

use std::cell::Cell;
use std::sync::atomic::{AtomicU8, Ordering};

static SPOKEN: AtomicU8 = AtomicU8::new(0);

thread_local! {
    static MEANWHILE: Cell<Option<Language>> = const { Cell::new(None) };
}

/// From now on everything is said in this language.
pub fn speak(language: Language) {
    SPOKEN.store(language as u8, Ordering::Relaxed);
}

/// The language in which things are said now.
pub fn spoken() -> Language {
    MEANWHILE.get().unwrap_or_else(|| {
        let at = usize::from(SPOKEN.load(Ordering::Relaxed));
        Language::ALL.get(at).copied().unwrap_or_default()
    })
}

/// What is said meanwhile on this thread is said in this language, as on a paper for somebody who reads another one.
pub fn in_language<T>(language: Language, said: impl FnOnce() -> T) -> T {
    /// Goes back to the language before, even where a test panics.
    struct Back(Option<Language>);
    impl Drop for Back {
        fn drop(&mut self) {
            MEANWHILE.set(self.0);
        }
    }
    let _back = Back(MEANWHILE.replace(Some(language)));
    said()
}

include!(concat!(env!("OUT_DIR"), "/messages.rs"));
