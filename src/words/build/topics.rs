//! The files of one language, read and held to each other.

use crate::message::{self, Piece};
use fluent_syntax::{ast, parser};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// The messages of one topic, by their ids.
pub type Topic = BTreeMap<String, Vec<Piece>>;

/// The topics of one language, by their file names without the ending.
pub type Topics = BTreeMap<String, Topic>;

/// Reads every file of a language.
///
/// # Panics
/// Where a file can't be read as Fluent, or says something that is not known here: the build ends with a word on where.
pub fn read(folder: &Path) -> Topics {
    let entries =
        fs::read_dir(folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
    entries
        .map(|entry| entry.expect("a folder that was opened lists").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "ftl"))
        .map(|path| {
            let name = path.file_stem().unwrap_or_default();
            (name.to_string_lossy().into_owned(), topic(&path))
        })
        .collect()
}

fn topic(path: &Path) -> Topic {
    let at = path.display();
    let text = fs::read_to_string(path).unwrap_or_else(|error| panic!("{at}: {error}"));
    let resource = parser::parse(text.as_str()).unwrap_or_else(|(_, errors)| {
        let line = errors
            .first()
            .map_or(0, |error| text[..error.pos.start].lines().count());
        panic!("{at}:{line}: not Fluent: {errors:?}")
    });
    let mut topic = Topic::new();
    for entry in &resource.body {
        let (id, pieces) = match entry {
            ast::Entry::Message(message) => read_message(message)
                .unwrap_or_else(|why| panic!("{at}: {}: {why}", message.id.name)),
            ast::Entry::Term(term) => {
                panic!("{at}: -{}: terms are not known here", term.id.name)
            }
            _ => continue,
        };
        assert!(
            topic.insert(id.clone(), pieces).is_none(),
            "{at}: {id} stands there twice"
        );
    }
    topic
}

fn read_message(message: &ast::Message<&str>) -> Result<(String, Vec<Piece>), String> {
    if !message.attributes.is_empty() {
        return Err("attributes are not known here".into());
    }
    let value = message.value.as_ref().ok_or("it says nothing")?;
    Ok((message.id.name.to_owned(), message::pieces(value)?))
}

/// Another language has only messages that English has, with the same variables.
///
/// # Panics
/// Where one has not.
pub fn check(english: &Topics, other: &Topics) {
    for (name, topic) in other {
        for (id, pieces) in topic {
            let first = english
                .get(name)
                .and_then(|topic| topic.get(id))
                .unwrap_or_else(|| panic!("{name}: {id} is not there in English"));
            assert!(
                names(first) == names(pieces),
                "{name}: {id} has other variables in English"
            );
        }
    }
}

fn names(pieces: &[Piece]) -> Vec<String> {
    let variables = message::variables(pieces);
    let mut names: Vec<String> = variables.into_iter().map(|one| one.name).collect();
    names.sort();
    names
}
