//! The second look: both sides of every rule's edge, answers, and how seldom an ordinary exam is asked about.

mod answers;
mod drops;
mod edges;
mod falls;
mod found;
mod health;
mod near;
mod ordinary;
mod ordinary_health;
mod read;
mod slips;
mod visit;
