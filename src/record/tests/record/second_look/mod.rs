//! The second look: both sides of every rule's edge, answers, and how seldom an ordinary exam is asked about.

mod answers;
mod edges;
mod found;
mod near;
mod ordinary;
mod read;
mod slips;
mod visit;
