//! The relay: one binary that is a whole installation. It serves the built app under a strict content security policy,
//! carries encrypted frames between a clinic's devices ([`carry`]) and keeps them ([`store`]). It knows nothing of eyes or
//! people: it checks who wrote a frame and where it belongs, and can read none.
//!
//! The app is read once, at start, into memory: a request is looked up among those files and nothing else, so no path
//! can lead outside the folder.
//!
//! ```no_run
//! # async fn start() -> Result<(), Box<dyn std::error::Error>> {
//! let app = lightround_relay::App::load("dist".as_ref())?;
//! let listener = tokio::net::TcpListener::bind("127.0.0.1:0").await?;
//! axum::serve(listener, lightround_relay::router(app, None)).await?;
//! # Ok(())
//! # }
//! ```

mod answer;
mod app;
pub mod carry;
pub mod commands;
mod copy;
mod inline;
mod kind;
pub mod metrics;
mod options;
pub mod paths;
mod policy;
mod router;
mod serve;
pub mod store;
pub mod tls;
mod verify;

pub use app::{App, LoadError};
pub use copy::{Copied, copy};
pub use options::{CertificateFiles, OptionsError, Place, Serving, Task, USAGE};
pub use router::router;
pub use serve::{Door, GRACE, serve};
pub use verify::{Verified, verify};
