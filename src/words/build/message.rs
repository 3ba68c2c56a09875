//! A message, as far as Fluent is used here: text, variables, literals, and forms that go by a count.

use fluent_syntax::ast;
use fluent_syntax::unicode::unescape_unicode_to_string;

/// A piece of a message.
pub enum Piece {
    /// As it stands.
    Text(String),
    /// A variable, by its name.
    Variable(String),
    /// One of several forms, by the variable that counts.
    Forms { count: String, forms: Vec<Form> },
}

/// One form of a sentence.
pub struct Form {
    pub goes_with: GoesWith,
    pub pieces: Vec<Piece>,
}

/// What a form goes with.
pub enum GoesWith {
    /// Exactly so many.
    Exactly(usize),
    /// The plural category `one`.
    One,
    /// All the rest: the default.
    Rest,
}

/// A variable of a message.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Variable {
    pub name: String,
    pub counts: bool,
}

/// The pieces of a pattern; or what is used of Fluent that is not known here.
pub fn pieces(pattern: &ast::Pattern<&str>) -> Result<Vec<Piece>, String> {
    pattern
        .elements
        .iter()
        .map(|element| match element {
            ast::PatternElement::TextElement { value } => Ok(Piece::Text((*value).to_owned())),
            ast::PatternElement::Placeable { expression } => piece(expression),
        })
        .collect()
}

fn piece(expression: &ast::Expression<&str>) -> Result<Piece, String> {
    use ast::InlineExpression::{NumberLiteral, StringLiteral, VariableReference};
    match expression {
        ast::Expression::Inline(VariableReference { id }) => {
            Ok(Piece::Variable(id.name.to_owned()))
        }
        ast::Expression::Inline(StringLiteral { value }) => {
            Ok(Piece::Text(unescape_unicode_to_string(value).into_owned()))
        }
        ast::Expression::Inline(NumberLiteral { value }) => Ok(Piece::Text((*value).to_owned())),
        ast::Expression::Select {
            selector: VariableReference { id },
            variants,
        } => Ok(Piece::Forms {
            count: id.name.to_owned(),
            forms: variants.iter().map(form).collect::<Result<_, _>>()?,
        }),
        _ => Err("only variables, literals and forms by a variable are known here".into()),
    }
}

fn form(variant: &ast::Variant<&str>) -> Result<Form, String> {
    let goes_with = match &variant.key {
        _ if variant.default => GoesWith::Rest,
        ast::VariantKey::Identifier { name: "one" } => GoesWith::One,
        ast::VariantKey::Identifier { name } => {
            return Err(format!("no count has the form {name}"));
        }
        ast::VariantKey::NumberLiteral { value } => GoesWith::Exactly(
            value
                .parse()
                .map_err(|_| format!("{value} is no whole number"))?,
        ),
    };
    let pieces = pieces(&variant.value)?;
    Ok(Form { goes_with, pieces })
}

/// The variables in the order in which they are first met; one that decides a form anywhere counts.
pub fn variables(pieces: &[Piece]) -> Vec<Variable> {
    let mut met = Vec::new();
    meet(pieces, &mut met);
    met
}

fn meet(pieces: &[Piece], met: &mut Vec<Variable>) {
    for piece in pieces {
        match piece {
            Piece::Text(_) => {}
            Piece::Variable(name) => note(met, name, false),
            Piece::Forms { count, forms } => {
                note(met, count, true);
                for form in forms {
                    meet(&form.pieces, met);
                }
            }
        }
    }
}

fn note(met: &mut Vec<Variable>, name: &str, counts: bool) {
    match met.iter_mut().find(|variable| variable.name == name) {
        Some(known) => known.counts |= counts,
        None => met.push(Variable {
            name: name.to_owned(),
            counts,
        }),
    }
}
