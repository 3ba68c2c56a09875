//! What is printed, and what is refused.

#![allow(
    clippy::unwrap_used,
    reason = "in a test, a value that is not there is the failure"
)]

mod desk;
mod documents;
mod holds;
mod kinds;
mod log;
mod plain;
mod plots;
mod printed;
mod refused;
mod told;
mod whole;
