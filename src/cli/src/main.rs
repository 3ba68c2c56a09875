//! `lightround`: the same lens arithmetic from a command line, for checking by hand and for scripts; and papers and accounts
//! from a clinic's records, for managers.
//!
//! Prints its answer and ends with 0. Anything else is one sentence on the error stream, and a code that says of which kind it is
//! ([`ended::CODES`]).

mod args;
mod ended;
mod lines;
mod net;
mod options;
mod records;
mod sum;
mod transpose;

use anyhow::Context;
use ended::{Ended, Failure};
use options::Asked;
use std::io::Write;
use std::process::ExitCode;

fn main() -> ExitCode {
    match run() {
        Ok(ended) => ended.into(),
        Err(failure) => {
            // Where even the complaint can't be written, the code says it.
            let _ = writeln!(std::io::stderr(), "lightround: {failure}");
            ExitCode::from(failure.code())
        }
    }
}

fn run() -> Result<Ended, Failure> {
    let Some(asked) = options::read(std::env::args_os())? else {
        return Ok(Ended::Well);
    };
    let page = match asked {
        Asked::Net(words) => net::answer(&words.words).context("net"),
        Asked::Transpose(words) => transpose::answer(&words.words).context("transpose"),
        Asked::Sum(words) => sum::answer(&words.words).context("sum"),
        Asked::Records(records) => return records::answer(&records),
        Asked::Completions { shell } => {
            let mut page = Vec::new();
            clap_complete::generate(shell, &mut options::command(), "lightround", &mut page);
            records::write::out(None, &page)?;
            return Ok(Ended::Well);
        }
        Asked::Man { command } => options::manual(command.as_deref()),
    };
    let page = page.map_err(|error| Failure::Words(format!("{error:#}")))?;
    records::write::out(None, page.as_bytes())?;
    Ok(Ended::Well)
}
