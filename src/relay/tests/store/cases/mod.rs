//! What only a relay's store promises, each a function of an empty store and a vault.

pub mod asides;
pub mod at_once;
pub mod desks;
pub mod erased;
pub mod heads;
pub mod ranges;
pub mod rolls;
