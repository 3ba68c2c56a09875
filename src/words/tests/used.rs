//! No message is kept that nobody says: its function is called somewhere in the project.

use fluent_syntax::{ast::Entry, parser};
use std::collections::HashSet;
use std::fs;
use std::path::{Path, PathBuf};

/// Every file below a folder whose name ends so, the words' own crate aside.
fn below(folder: &Path, ending: &str, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("a folder lists") {
        let path = entry.expect("a folder that was opened lists").path();
        if path.is_dir() && !path.ends_with("words") {
            below(&path, ending, found);
        } else if path.extension().is_some_and(|found| found == ending) {
            found.push(path);
        }
    }
}

/// Every name that stands after a path's colons, as a function that is called or handed on, or after a table's `=`.
fn called(source: &str) -> impl Iterator<Item = String> {
    let after = source.split("::").flat_map(|part| part.split("= "));
    after.map(|after| {
        let name = after
            .chars()
            .take_while(|c| c.is_alphanumeric() || *c == '_');
        name.collect()
    })
}

#[test]
fn every_message_is_said_somewhere() {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let (mut sources, mut files) = (Vec::new(), Vec::new());
    below(here.parent().unwrap(), "rs", &mut sources);
    below(&here.join("en"), "ftl", &mut files);
    let mut said = HashSet::new();
    for source in sources {
        said.extend(called(&fs::read_to_string(source).unwrap()));
    }
    assert!(!files.is_empty());
    for file in files {
        let text = fs::read_to_string(&file).unwrap();
        for entry in parser::parse(text.as_str()).unwrap().body {
            let Entry::Message(message) = entry else {
                continue;
            };
            let name = message.id.name.replace('-', "_");
            assert!(
                said.contains(&name),
                "{}: {name} is said nowhere",
                file.display()
            );
        }
    }
}
