//! Which column holds what: what every mapping is asked, whatever its columns hold.

use ::words::record::lists as say;

use super::names::split;
use super::table::{Row, Table};
use crate::check::Checks;
use crate::person::Name;
use crate::sections::OneOf;

/// What the headings suggest. Nothing is held by two columns but `many`.
pub(crate) fn guess<F: Copy + PartialEq>(
    table: &Table,
    of_heading: impl Fn(&str) -> Option<F>,
    many: F,
) -> Vec<Option<F>> {
    let mut columns: Vec<Option<F>> = Vec::new();
    for heading in &table.heading {
        let is_free = |field: &F| *field == many || !columns.contains(&Some(*field));
        let field = of_heading(heading).filter(is_free);
        columns.push(field);
    }
    columns
}

/// The columns that hold something, in their order.
pub(crate) fn of<F: Copy + PartialEq>(
    columns: &[Option<F>],
    field: F,
) -> impl Iterator<Item = usize> {
    let columns = columns.iter().enumerate();
    columns.filter_map(move |(at, held)| (*held == Some(field)).then_some(at))
}

/// What a row says under a field; nothing where no column holds it.
pub(crate) fn text<'a, F: Copy + PartialEq>(
    columns: &[Option<F>],
    table: &'a Table,
    row: &'a Row,
    field: F,
) -> &'a str {
    let column = of(columns, field).next();
    column.map_or("", |column| table.cell(row, column))
}

/// The values of a field in all rows.
pub(crate) fn values<'a, F: Copy + PartialEq>(
    columns: &[Option<F>],
    table: &'a Table,
    field: F,
) -> impl Iterator<Item = &'a str> + use<'a, F> {
    let column = of(columns, field).next();
    let rows = table.rows.iter();
    rows.filter_map(move |row| row.cells.get(column?).map(String::as_str))
}

/// The heading of the column that holds a field.
pub(crate) fn heading<F: Copy + PartialEq>(
    columns: &[Option<F>],
    table: &Table,
    field: F,
) -> Option<String> {
    let column = of(columns, field).next()?;
    Some(table.column_name(column))
}

/// The name that a row tells, from the whole one or from its two parts.
pub(crate) fn name<F: Copy + PartialEq>(
    columns: &[Option<F>],
    table: &Table,
    row: &Row,
    [whole, given, family]: [F; 3],
) -> Name {
    let text = |field| text(columns, table, row, field);
    if of(columns, whole).next().is_some() {
        return split(text(whole));
    }
    let one_space = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    Name {
        given: one_space(text(given)),
        family: one_space(text(family)),
    }
}

/// A name comes whole or in two parts.
pub(crate) fn check_names<F: Copy + PartialEq>(
    checks: &mut Checks,
    columns: &[Option<F>],
    [whole, given, family]: [F; 3],
) {
    let has = |field| of(columns, field).next().is_some();
    if has(whole) && (has(given) || has(family)) {
        checks.say("columns", say::name_twice());
    }
}

/// Nothing is held by two columns but `many`.
pub(crate) fn check_once<F: OneOf + Copy + PartialEq>(
    checks: &mut Checks,
    columns: &[Option<F>],
    many: F,
) {
    let once = F::all().into_iter().filter(|field| *field != many);
    for field in once.filter(|field| of(columns, *field).count() > 1) {
        checks.say("columns", say::two_columns(&field.in_words()));
    }
}
