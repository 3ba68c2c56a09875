//! One module a page.

pub mod exam;
pub mod gate;
pub mod new_person;
pub mod paper;
pub mod person;
pub mod practice;
mod readiness;
pub mod rounds;
pub mod sums;
pub mod vault;
