//! Where people are visited, and the days on which they are: places, rounds, what became of each visit, the kit.
//!
//! A round's day is a plain date, as the calendar on the wall of the home shows it. No clock and no time zone is in it: what is
//! today, the tablet says and passes in.

mod body;
mod due;
mod fold;
mod glance;
mod kit;
mod look;
mod notice;
mod place;
mod plan;
mod room_order;
mod round;
mod visit;

pub use body::{PackedEntry, PlaceEntry, RoundEntry, VisitEntry};
pub use due::Due;
pub use glance::Glance;
pub use kit::Kit;
pub use look::Days;
pub use notice::Notice;
pub use place::{Place, PlaceDetails, Unit};
pub(crate) use place::{plain, same};
pub use room_order::room_order;
pub use round::{Round, RoundDetails};
pub use visit::{Standing, Visit, VisitState};
