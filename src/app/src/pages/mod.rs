//! One module a page.

mod differences;
pub mod earlier;
pub mod exam;
pub mod gate;
mod hand_over;
pub mod home;
pub mod keeping;
pub mod keys;
pub mod log;
pub mod paper;
pub mod papers;
pub mod person;
pub mod person_form;
pub mod places;
pub mod practice;
mod readiness;
pub mod round;
pub mod rounds;
pub mod settings;
pub mod sums;
mod table;
pub mod vault;
