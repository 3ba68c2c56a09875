//! `lightround`: the same lens arithmetic from a command line, for checking by hand and for scripts.
//!
//! Prints its answer and ends with 0; a question that it cannot read gets one sentence on the error stream and ends with 2.

mod args;
mod lines;
mod net;
mod sum;
mod transpose;

use anyhow::{Context, Result, bail};
use std::ffi::OsString;
use std::io::Write;
use std::process::ExitCode;

const HELP: &str = "\
lightround reckons with lenses.

  lightround net --at 67 --first 90=+4.00 --second +2.50
      The net from the lens that neutralises one meridian and the lens that neutralises the meridian 90 degrees from it.
      A streak tests the meridian 90 degrees from where it stands.
  lightround net --at 67 --in-frame \"+4.00/-1.50x90\"
      The net from the lens as it stands in the frame.

      --at            from the retinoscope to the trial lens, in cm
      --working-lens  the working lens that stood in the frame, not counted in the others; none if left out
      --cell          the cell that it stood in: back, middle or front; back if left out
      --spacing       between neighbouring cells, in mm; 4 if left out

  lightround transpose \"+2.00/-1.00x30\"
      The same lens with the other sign of cylinder.

  lightround sum
      The sums that there are, from vertex distance to finished glasses.
  lightround sum vertex
      What a sum asks.
  lightround sum vertex \"-8.00/-3.00x20\" 12 0
      Its answer. \"\" leaves an answer out; from=12 says which one it is, in any order.

Every power is written with its sign.
";

fn main() -> ExitCode {
    let answer = run(std::env::args_os().skip(1).collect());
    let said = match &answer {
        Ok(text) => std::io::stdout().write_all(text.as_bytes()),
        Err(error) => writeln!(std::io::stderr(), "lightround: {error:#}"),
    };
    // An answer that could not be written out was not given.
    if answer.is_ok() && said.is_ok() {
        ExitCode::SUCCESS
    } else {
        ExitCode::from(2)
    }
}

fn run(words: Vec<OsString>) -> Result<String> {
    let words = words
        .into_iter()
        .map(OsString::into_string)
        .collect::<Result<Vec<_>, _>>()
        .map_err(|word| anyhow::anyhow!("{} is not readable text", word.display()))?;
    match words.split_first() {
        None => Ok(HELP.to_owned()),
        Some((command, rest)) => match command.as_str() {
            "net" => net::answer(rest).context("net"),
            "transpose" => transpose::answer(rest).context("transpose"),
            "sum" => sum::answer(rest).context("sum"),
            "help" | "--help" | "-h" => Ok(HELP.to_owned()),
            other => bail!("there is no “{other}”: try net, transpose, sum or help"),
        },
    }
}
