//! What the command takes: one table for reading, for the help, for shells and for the manual page.

use crate::ended::{CODES, Failure};
use crate::records::options::RecordsAsked;
use anyhow::{Context, Result};
use clap::error::{ContextKind, ContextValue, ErrorKind};
use clap::{Args, CommandFactory, FromArgMatches, Parser, Subcommand};
use std::ffi::OsString;

const NET: &str = "\
The net from the lens that neutralises one meridian and the lens that neutralises the meridian 90 degrees from it
(a streak tests the meridian 90 degrees from where it stands):
  lightround net --at 67 --first 90=+4.00 --second +2.50
The net from the lens as it stands in the frame:
  lightround net --at 67 --in-frame \"+4.00/-1.50x90\"

--at            from the retinoscope to the trial lens, in cm
--working-lens  the working lens that stood in the frame, not counted in the others; none if left out
--cell          the cell that it stood in: back, middle or front; back if left out
--spacing       between neighbouring cells, in mm; 4 if left out

Every power is written with its sign.";

const TRANSPOSE: &str = "  lightround transpose \"+2.00/-1.00x30\"";

const SUM: &str = "\
The sums that there are, from vertex distance to finished glasses:
  lightround sum
What a sum asks:
  lightround sum vertex
Its answer; \"\" leaves an answer out, and from=12 says which one it is, in any order:
  lightround sum vertex \"-8.00/-3.00x20\" 12 0";

/// Reckons with lenses, and makes papers and accounts from a clinic’s records.
#[derive(Debug, Parser)]
#[command(name = "lightround", version, arg_required_else_help = true, after_help = CODES)]
#[command(
    subcommand_value_name = "COMMAND",
    subcommand_help_heading = "Commands"
)]
struct Words {
    #[command(subcommand)]
    asked: Asked,
}

/// What is asked.
#[derive(Debug, Subcommand)]
pub enum Asked {
    /// The net of a retinoscopy, with its working
    #[command(after_help = NET)]
    Net(Lenses),
    /// The same lens with the other sign of cylinder
    #[command(after_help = TRANSPOSE)]
    Transpose(Lenses),
    /// The sums of the back of an envelope, with their working
    #[command(after_help = SUM)]
    Sum(Lenses),
    #[command(flatten)]
    Records(RecordsAsked),
    /// Completions for a shell
    Completions {
        /// For which
        shell: clap_complete::Shell,
    },
    /// The manual page, or that of one command
    Man {
        /// Which; all of it where left out
        command: Option<String>,
    },
}

/// Powers begin with a sign, so these words are not options of this table.
#[derive(Debug, Args)]
pub struct Lenses {
    /// What is given
    #[arg(trailing_var_arg = true, allow_hyphen_values = true)]
    pub words: Vec<String>,
}

/// Every command.
pub fn command() -> clap::Command {
    Words::command()
}

/// Reads what was typed; nothing where that was answered here, by the help.
pub fn read(words: impl Iterator<Item = OsString>) -> Result<Option<Asked>, Failure> {
    let told = command().try_get_matches_from(words);
    let told = told.and_then(|told| Words::from_arg_matches(&told));
    match told {
        Ok(told) => Ok(Some(told.asked)),
        Err(help) if is_help(&help) => {
            crate::records::write::out(None, help.render().to_string().as_bytes())?;
            Ok(None)
        }
        Err(error) => Err(Failure::Words(sentence(&error))),
    }
}

fn is_help(error: &clap::Error) -> bool {
    let nothing_asked = ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand;
    !error.use_stderr() || error.kind() == nothing_asked
}

/// One sentence: that of the error, without what comes before it and the lines of usage after.
fn sentence(error: &clap::Error) -> String {
    if let (ErrorKind::InvalidSubcommand, Some(ContextValue::String(name))) =
        (error.kind(), error.get(ContextKind::InvalidSubcommand))
    {
        return format!("there is no “{name}”: `lightround help` names what there is");
    }
    let said = error.render().to_string();
    let said = said.strip_prefix("error: ").unwrap_or(&said);
    let first = said.split("\n\n").next().unwrap_or(said);
    first.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A page of the manual, as `man` reads it.
pub fn manual(name: Option<&str>) -> Result<String> {
    let mut whole = command();
    whole.build();
    let page = match name {
        None => whole,
        Some(name) => whole
            .find_subcommand(name)
            .with_context(|| format!("man: there is no “{name}”"))?
            .clone(),
    };
    let mut bytes = Vec::new();
    clap_mangen::Man::new(page).render(&mut bytes)?;
    Ok(String::from_utf8(bytes)?)
}
