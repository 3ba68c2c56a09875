//! The commands over records, as a manager types them, on a vault of made-up people.

#![allow(
    clippy::unwrap_used,
    reason = "in a test, a value that is not there is the failure"
)]

mod answers;
mod folder;
mod memory;
mod refused;
