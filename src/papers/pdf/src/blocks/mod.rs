//! Blocks, each set in its own way.

mod callout;
mod facts;
mod lenses;
mod measure;
mod sign;
mod table;
mod words;

use papers::Block;

use crate::flow::Flow;

/// Sets a block; `next` is what comes after it.
pub(crate) fn set(flow: &mut Flow<'_>, block: &Block, next: Option<&Block>) {
    match block {
        Block::Heading(text) => words::heading(flow, text, next),
        Block::Paragraph(text) => words::paragraph(flow, text),
        Block::List(points) => words::list(flow, points),
        Block::Facts(facts) => facts::set(flow, facts),
        Block::Table(table) => table::set(flow, table),
        Block::Lenses(lenses) => lenses::set(flow, lenses),
        Block::Callout(callout) => callout::set(flow, callout),
        Block::Measure(measure) => measure::set(flow, measure),
        Block::Sign(sign) => sign::set(flow, sign),
    }
}
