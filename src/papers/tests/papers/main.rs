//! What is printed, and what is refused.

#![allow(
    clippy::unwrap_used,
    reason = "in a test, a value that is not there is the failure"
)]

mod desk;
mod printed;
mod refused;
