//! The promises, each a function of an empty store and a vault.

pub mod appends;
pub mod asides;
pub mod desks;
pub mod erased;
pub mod heads;
pub mod ranges;
pub mod rolls;
