//! Carrying over the real router on a real socket, with clients that keep the rules and clients that don't.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

#[path = "../common/cluster.rs"]
mod cluster;
mod commands;
#[path = "../common/mod.rs"]
mod common;
mod counted;
mod described;
mod exchanged;
mod hostile;
#[cfg(unix)]
mod killed;
mod limits;
mod news;
#[cfg(unix)]
mod program;
mod scene;
mod together;
mod two_relays;
