//! The record's rules, checked from outside.

mod desk;
mod entries;
mod fold;
mod frozen;
mod last_time;
mod malformed;
mod people;
mod ready;
mod samples;
mod sections;
mod signing;
mod stamps;
