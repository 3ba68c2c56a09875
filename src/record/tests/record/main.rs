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
mod details;
mod differences;
mod earlier_list;
mod elsewhere;
mod entries;
mod excerpt;
mod find;
mod fold;
mod frozen;
mod frozen_person;
mod frozen_rounds;
mod frozen_sections;
mod frozen_settings;
mod frozen_third;
mod halves;
mod home_list;
mod jotted;
mod last_time;
mod malformed;
mod manner;
mod normal;
mod people;
mod reading;
mod ready;
mod rounds;
mod same;
mod samples;
mod second_look;
mod sections;
mod sent;
mod settings;
mod signing;
mod stamps;
mod story_so_far;
mod swept;
mod to_come;
mod to_order;
mod versions;
mod whole;
