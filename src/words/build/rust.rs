//! The functions, written out.

use crate::message::{Form, GoesWith, Piece, Variable, variables};
use crate::topics::Topics;
use std::collections::BTreeMap;
use std::fmt::Write as _;

/// A module for each area, and in it one for each topic. The file `en/app-round.ftl` is the topic `round` of the area `app`.
pub fn areas(english: &Topics, german: &Topics) -> String {
    let mut areas: BTreeMap<&str, String> = BTreeMap::new();
    for (name, topic) in english {
        let (area, short) = name
            .split_once('-')
            .unwrap_or_else(|| panic!("{name}: a file is named by its area and its topic"));
        let module = areas.entry(area).or_default();
        let _ = writeln!(
            module,
            "/// What `{name}.ftl` says.\npub mod {} {{\nuse super::super::*;",
            ident(short)
        );
        for (id, pieces) in topic {
            let other = german.get(name).and_then(|topic| topic.get(id));
            module.push_str(&function(id, pieces, other.map(Vec::as_slice)));
        }
        module.push_str("}\n");
    }
    let mut all = String::new();
    for (area, topics) in areas {
        let _ = writeln!(
            all,
            "/// What `{area}` says.\n#[allow(unused_imports, clippy::all, clippy::pedantic)]\npub mod {area} {{\n{topics}}}"
        );
    }
    all
}

fn function(id: &str, english: &[Piece], german: Option<&[Piece]>) -> String {
    let takes = variables(english)
        .into_iter()
        .chain(german.map(variables).unwrap_or_default())
        .fold(Vec::<Variable>::new(), |mut takes, variable| {
            match takes.iter_mut().find(|known| known.name == variable.name) {
                Some(known) => known.counts |= variable.counts,
                None => takes.push(variable),
            }
            takes
        });
    let arguments: Vec<String> = takes.iter().map(argument).collect();
    let gives = if takes.is_empty() {
        "&'static str"
    } else {
        "String"
    };
    let said = |language: &str, pieces: &[Piece]| {
        if takes.is_empty() {
            format!("{:?}", shown(pieces))
        } else {
            expression(language, pieces)
        }
    };
    let body = match german {
        None => said("English", english),
        Some(german) => format!(
            "match spoken() {{ Language::English => {}, Language::German => {} }}",
            said("English", english),
            said("German", german)
        ),
    };
    format!(
        "/// ``{}``\npub fn {}({}) -> {gives} {{ {body} }}\n",
        shown(english).replace('`', "'").replace('\n', " "),
        ident(id),
        arguments.join(", ")
    )
}

fn argument(variable: &Variable) -> String {
    let kind = if variable.counts {
        "usize"
    } else {
        "&dyn ::core::fmt::Display"
    };
    format!("{}: {kind}", ident(&variable.name))
}

/// A message as its documentation shows it; one without variables, as it is said.
fn shown(pieces: &[Piece]) -> String {
    pieces
        .iter()
        .map(|piece| match piece {
            Piece::Text(text) => text.clone(),
            Piece::Variable(name) => format!("{{{name}}}"),
            Piece::Forms { forms, .. } => forms
                .last()
                .map_or(String::new(), |form| shown(&form.pieces)),
        })
        .collect()
}

/// An expression that gives a `String`.
fn expression(language: &str, pieces: &[Piece]) -> String {
    if let [Piece::Forms { count, forms }] = pieces {
        return choice(language, count, forms);
    }
    let (mut template, mut chosen) = (String::new(), String::new());
    for piece in pieces {
        match piece {
            Piece::Text(text) => template.push_str(&text.replace('{', "{{").replace('}', "}}")),
            Piece::Variable(name) => {
                let _ = write!(template, "{{{}}}", ident(name));
            }
            Piece::Forms { count, forms } => {
                template.push_str("{}");
                let _ = write!(chosen, ", {}", choice(language, count, forms));
            }
        }
    }
    format!("format!({template:?}{chosen})")
}

fn choice(language: &str, count: &str, forms: &[Form]) -> String {
    let count = ident(count);
    let mut arms: Vec<(u8, String)> = forms
        .iter()
        .map(|form| {
            let (rank, goes_with) = match form.goes_with {
                GoesWith::Exactly(number) => (0, format!("({number}, _)")),
                GoesWith::One => (1, "(_, plural::Plural::One)".to_owned()),
                GoesWith::Rest => (2, "_".to_owned()),
            };
            let said = expression(language, &form.pieces);
            (rank, format!("{goes_with} => {said}, "))
        })
        .collect();
    arms.sort_by_key(|(rank, _)| *rank);
    let arms: String = arms.into_iter().map(|(_, arm)| arm).collect();
    format!("match ({count}, plural::plural(Language::{language}, {count})) {{ {arms} }}")
}

/// An id as a name of Rust's. One that is a word of Rust's own (`type`, `final`) is refused by the compiler: choose another.
fn ident(id: &str) -> String {
    id.replace('-', "_")
}
