//! What the browser journeys and the browser-measured benchmarks stand on: the relay as a child process that can be
//! stopped for good, the three engines behind one [`Browser`], and [`Hand`], which taps, drags and types as a person does.
//!
//! `cargo xtask test` sets the environment that [`Place`] reads; see `DEVELOPERS.md`.

mod authenticator;
pub mod bedside;
mod browser;
mod display;
mod hand;
pub mod joining;
mod place;
pub mod playing;
pub mod quick;
mod relay;
mod touch;
mod window;

pub use authenticator::Authenticator;
pub use browser::{Browser, Engine};
pub use hand::{Hand, Tally};
pub use place::Place;
pub use relay::Relay;
