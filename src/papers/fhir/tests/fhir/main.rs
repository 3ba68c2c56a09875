//! Bundles against the published schema, and files from elsewhere.

#![allow(
    clippy::unwrap_used,
    reason = "in a test, a value that is not there is the failure"
)]

mod earlier;
mod written;
