//! Retinoscopy sweep by sweep: what each eye's sweeps say above, the pad for one thumb below.

mod circumstances;
mod desk;
mod keys;
mod lane;
mod pad;
mod picture;
mod start;
mod tray;
pub mod words;

pub use circumstances::EyePills;
pub use desk::Desk;
pub use lane::SweepLane;
pub use pad::Pad;
pub use tray::Tray;
