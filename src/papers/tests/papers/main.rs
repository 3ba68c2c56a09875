//! What is printed, and what is refused.

mod desk;
mod printed;
mod refused;
