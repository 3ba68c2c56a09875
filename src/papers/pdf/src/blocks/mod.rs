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

/// No block leaves more space than this below it, as a part of its letters' size.
const AFTER: f32 = 1.5;

/// Sets a block; `rest` is what comes after it.
pub(crate) fn set(flow: &mut Flow<'_>, block: &Block, rest: &[Block]) {
    flow.keep_below = match rest.first() {
        Some(Block::Sign(sign)) => sign::high(flow, sign) + AFTER * flow.look.body,
        _ => 0.0,
    };
    match block {
        Block::Heading(text) => words::heading(flow, text, rest),
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
