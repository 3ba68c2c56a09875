//! Documents, made from a folded record: plain lines ready to print, and a refusal in one sentence where a paper would
//! say more than was signed. No markup here; the app sets the lines.

mod cautions;
mod day;
mod error;
mod prescription;

pub use error::PaperError;
pub use prescription::{EyeLine, Options, Prescription};
