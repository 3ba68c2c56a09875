//! The record's rules, checked from outside.

#![allow(
    clippy::unwrap_used,
    reason = "in a test, a value that is not there is the failure"
)]

mod any;
mod any_glasses;
mod any_health;
mod any_other;
mod bounds;
mod derived;
mod desk;
mod entries;
mod fold;
mod frozen;
mod frozen_sections;
mod frozen_third;
mod halves;
mod last_time;
mod malformed;
mod normal;
mod people;
mod reading;
mod ready;
mod samples;
mod second_look;
mod sections;
mod signing;
mod stamps;
mod swept;
mod to_come;
mod to_order;
