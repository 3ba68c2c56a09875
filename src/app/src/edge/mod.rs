//! The browser's edges: everything that a page can only get from the browser stands here, behind plain Rust.

pub mod cbor;
pub mod clock;
pub mod idle;
pub mod keep;
pub mod motion;
pub mod offline;
pub mod prefs;
pub mod single;
pub mod storage;
pub mod stretch;
