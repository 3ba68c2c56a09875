//! The browser's edges: everything that a page can only get from the browser stands here, behind plain Rust.

pub mod back;
pub mod camera;
pub mod cbor;
pub mod clock;
pub mod files;
pub mod helper;
pub mod idle;
pub mod keep;
pub mod made_up;
pub mod motion;
pub mod offline;
pub mod platform;
pub mod prefs;
pub mod press;
pub mod single;
pub mod stretch;
pub mod wire;
