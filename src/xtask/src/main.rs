//! `cargo xtask`: brings what is missing, builds and seals the app, serves, tests and measures it.
//!
//! [`plan`] decides from what stands on the machine ([`machine`]) what must be brought; [`bring`] brings it. The rest is
//! one file a task.

mod bench;
mod bring;
mod build;
mod check;
mod command;
mod compiler;
mod fresh;
mod fuzz;
mod journeys;
mod lock;
mod machine;
mod place;
mod plan;
mod process;
mod ready;
mod seal;
mod serve;
mod step;
mod want;

use command::{Command, USAGE};
use std::process::ExitCode;

fn main() -> ExitCode {
    let command = match Command::parse(std::env::args().skip(1)) {
        Ok(command) => command,
        Err(sentence) => {
            eprintln!("{sentence}\n\n{USAGE}");
            return ExitCode::FAILURE;
        }
    };
    let done = match command {
        Command::Help => {
            println!("{USAGE}");
            Ok(())
        }
        Command::Build => build::run(),
        Command::Run { listen } => serve::run(&listen),
        Command::Test(depth) => check::run(depth),
        Command::Bench(depth) => bench::run(depth),
        Command::Fuzz(hunt) => fuzz::run(&hunt),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("\n{error:#}");
            ExitCode::FAILURE
        }
    }
}
