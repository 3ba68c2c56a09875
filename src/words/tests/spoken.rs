//! Which language is spoken, and by whom. One test, since a language is spoken by the whole process.

use words::Language::{English, German};
use words::app::{language as say, usual};

#[test]
fn a_language_is_spoken_by_all_and_another_meanwhile_by_one_thread() {
    assert_eq!(words::spoken(), English);
    words::speak(German);
    assert_eq!(say::heading(), "Sprache");
    let elsewhere = || std::thread::spawn(say::heading).join().unwrap();
    words::in_language(English, || {
        assert_eq!(say::heading(), "Language");
        assert_eq!(elsewhere(), "Sprache");
        let inner = words::in_language(German, say::heading);
        assert_eq!((inner, say::heading()), ("Sprache", "Language"));
    });
    assert_eq!(say::heading(), "Sprache");
    words::speak(English);
    assert_eq!(say::heading(), "Language");
}

/// Unicode CLDR, cardinal plural rules: in both languages 1 is `one`, and nothing else is, 0 and 101 neither.
#[test]
fn forms_go_by_how_many() {
    let said = |language| {
        [0, 1, 2, 101].map(|count| words::in_language(language, || usual::people(count)))
    };
    assert_eq!(
        said(English),
        ["0 people", "1 person", "2 people", "101 people"]
    );
    assert_eq!(
        said(German),
        ["0 Personen", "1 Person", "2 Personen", "101 Personen"]
    );
}
