//! The files as Fluent's own parser reads them, one language held to the other.

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use fluent_syntax::parser;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

/// By topic and message: the names of its variables.
type Messages = BTreeMap<(String, String), BTreeSet<String>>;

/// Topics in which every message stands in German, too. A new topic is written here once it is complete.
const COMPLETE_IN_GERMAN: &[&str] = &[
    "app-carry",
    "app-earlier",
    "app-errors-kept",
    "app-errors-keys",
    "app-errors-tablets",
    "app-exam",
    "app-exam-editors",
    "app-exam-fields",
    "app-exam-sweeps",
    "app-gate",
    "app-keeping",
    "app-keys",
    "app-language",
    "app-log",
    "app-pages",
    "app-papers",
    "app-person",
    "app-person-form",
    "app-places",
    "app-practice",
    "app-relay",
    "app-round",
    "app-session",
    "app-settings",
    "app-shell",
    "app-usual",
    "app-widgets",
    "app-workers",
    "optics-acuity",
    "optics-change",
    "optics-lens",
    "optics-limits",
    "optics-prism",
    "optics-retinoscopy",
    "optics-sums",
    "optics-sums-acuity",
    "optics-sums-glasses",
    "optics-sums-lens",
    "optics-sums-near",
    "optics-sums-prism",
    "optics-sums-retinoscopy",
    "optics-tolerance",
    "papers-documents",
    "papers-elsewhere",
    "papers-errors",
    "papers-holds",
    "papers-kinds",
    "papers-log",
    "papers-notes",
    "papers-order",
    "papers-pages",
    "papers-referral",
    "papers-whole-record",
    "record-days",
    "record-exam",
    "record-figures",
    "record-jotted",
    "record-lists",
    "record-person",
    "record-phrases",
    "record-reading",
    "record-rounds",
    "record-second-look",
    "record-sections",
    "record-story",
    "record-unread",
];

fn messages(language: &str) -> Messages {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(language);
    let mut messages = Messages::new();
    for entry in fs::read_dir(&folder).expect("a folder for each language") {
        let path = entry.expect("a folder that was opened lists").path();
        let topic = path
            .file_stem()
            .unwrap_or_default()
            .to_string_lossy()
            .into_owned();
        let text = fs::read_to_string(&path).expect("a file of text");
        let resource = parser::parse(text.as_str())
            .unwrap_or_else(|(_, errors)| panic!("{}: {errors:?}", path.display()));
        for entry in &resource.body {
            match entry {
                Entry::Message(message) => {
                    let mut names = BTreeSet::new();
                    variables(
                        message.value.as_ref().expect("a message says something"),
                        &mut names,
                    );
                    let key = (topic.clone(), message.id.name.to_owned());
                    assert!(messages.insert(key, names).is_none(), "{topic}: twice");
                }
                Entry::Junk { content } => panic!("{topic}: {content}"),
                _ => {}
            }
        }
    }
    messages
}

fn variables(pattern: &Pattern<&str>, names: &mut BTreeSet<String>) {
    for element in &pattern.elements {
        let PatternElement::Placeable { expression } = element else {
            continue;
        };
        let inline = match expression {
            Expression::Inline(inline) => inline,
            Expression::Select { selector, variants } => {
                for variant in variants {
                    variables(&variant.value, names);
                }
                selector
            }
        };
        if let InlineExpression::VariableReference { id } = inline {
            names.insert(id.name.to_owned());
        }
    }
}

#[test]
fn german_says_nothing_that_english_does_not_and_takes_the_same() {
    let (english, german) = (messages("en"), messages("de"));
    for (at, names) in &german {
        assert_eq!(english.get(at), Some(names), "{at:?}");
    }
}

#[test]
fn topics_that_are_declared_complete_are() {
    let (english, german) = (messages("en"), messages("de"));
    for topic in COMPLETE_IN_GERMAN {
        let of = |all: &Messages| {
            let ids = all.keys().filter(|(at, _)| at == topic);
            ids.map(|(_, id)| id.clone()).collect::<Vec<_>>()
        };
        assert!(!of(&english).is_empty(), "there is no topic {topic}");
        assert_eq!(of(&english), of(&german), "{topic}");
    }
}

/// A topic that has every message in German and is not declared would be free to lose one.
#[test]
fn every_topic_that_is_complete_is_declared() {
    let (english, german) = (messages("en"), messages("de"));
    let topics: BTreeSet<&String> = english.keys().map(|(topic, _)| topic).collect();
    for topic in topics {
        let lacks = english
            .keys()
            .any(|at| at.0 == *topic && !german.contains_key(at));
        assert!(
            lacks || COMPLETE_IN_GERMAN.contains(&topic.as_str()),
            "{topic} is complete: declare it"
        );
    }
}
