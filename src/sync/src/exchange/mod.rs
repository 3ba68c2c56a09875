//! The exchange: how frames get from one place to another, without I/O, clock or randomness.
//!
//! A client is an [`Exchange`]: it is told what happened ([`Event`]) and says what to do ([`Effect`]). A relay is
//! [`answer`], a function over a [`FrameStore`]. So the same code runs in a browser, over HTTP and in a simulator.
//!
//! The only cursor is the version vector: how far each device's log goes ([`Vector`]). A round first pulls what is beyond
//! it, page by page, then pushes runs of what the relay lacks, whoever wrote them. A run is kept whole or not at all, and
//! only if it continues the log; the same frames again are a success; another frame under a number that is taken is a
//! fork, which is refused, kept as evidence and said aloud.
//!
//! What travels is written down in [`wire`]. That there is something new, a relay says in a stream ([`news`]); whoever hears
//! it makes a round.

mod aside;
mod client;
mod drive;
pub mod http;
pub mod news;
pub mod refusals;
mod roll;
mod run;
mod server;
mod store;
mod vector;
pub mod wire;

pub use aside::ask_aside;
pub use client::{Effect, Event, Exchange, Failure, Nonsense, Notice, Progress, Status};
pub use drive::{Host, round};
pub use roll::{RollRefused, ask_roll, restated, settle_roll};
pub use run::{MOST_BYTES, MOST_FRAMES, Run, RunError};
pub use server::{Quota, Refusal, answer, keep_run};
pub use store::{Appended, Copy as StoreCopy, FrameStore, MemoryStore, StoreError, Why};
pub use vector::Vector;
pub use wire::{Answer, Asides, Page, Pushed, Remembered, Request, Shown, WireError};
