//! What the commands over records take.

use ::papers::log::{Column, Filter, Outcome};
use anyhow::{Context, Result, anyhow};
use chrono::NaiveDate;
use clap::{Args, Subcommand, ValueEnum};
use record::{Exam, ExamId};
use std::path::PathBuf;
use uuid::Uuid;

const UNSEALED: &str =
    "What this writes is not encrypted any more: keep it as you would keep the records themselves.";

/// The commands over records.
#[derive(Debug, Subcommand)]
pub enum RecordsAsked {
    /// The visits as rows: CSV on the screen or in a file, or a workbook
    #[command(after_help = UNSEALED)]
    Log(LogAsked),
    /// Every paper of an exam, or of every signed exam, as PDF
    #[command(after_help = UNSEALED)]
    Papers(PapersAsked),
    /// A bundle of FHIR R4
    #[command(after_help = UNSEALED)]
    Fhir(FhirAsked),
    /// Looks whether a carry file is whole and genuine, and with the keys whether all of it can be read
    Verify(VerifyAsked),
}

/// What opens a carry file.
#[derive(Debug, Args)]
pub struct Opens {
    /// The key file of a tablet of the vault
    #[arg(long, value_name = "FILE")]
    pub keys: Option<PathBuf>,
    /// Read the passphrase from the first line of this open file descriptor; asked for where left out
    #[arg(long, value_name = "NUMBER", requires = "keys")]
    pub passphrase_fd: Option<u32>,
    /// Open with the code on the recovery sheet, in place of a key file
    #[arg(long, conflicts_with = "keys")]
    pub recovery: bool,
    /// Read the recovery code from the first line of this open file descriptor; asked for where left out
    #[arg(long, value_name = "NUMBER", requires = "recovery")]
    pub recovery_fd: Option<u32>,
}

/// Where records are, and what opens them.
#[derive(Debug, Args)]
#[command(group = clap::ArgGroup::new("opener").args(["keys", "recovery"]).required(true))]
pub struct Records {
    /// The carry file, as a tablet writes it
    #[arg(long, value_name = "FILE")]
    pub carry: PathBuf,
    #[command(flatten)]
    pub opens: Opens,
}

/// Which visits.
#[derive(Debug, Args)]
pub struct Which {
    /// From this day on, like 2026-03-04
    #[arg(long, value_name = "DAY", value_parser = day)]
    pub from: Option<NaiveDate>,
    /// Up to this day, itself among them
    #[arg(long, value_name = "DAY", value_parser = day)]
    pub through: Option<NaiveDate>,
    /// At this place
    #[arg(long)]
    pub place: Option<String>,
    /// By this clinician, as they sign
    #[arg(long)]
    pub clinician: Option<String>,
    /// With this outcome, in the log’s words
    #[arg(long, value_parser = outcome)]
    pub outcome: Option<Outcome>,
}

/// Which exams.
#[derive(Debug, Args)]
pub struct WhichExams {
    #[command(flatten)]
    pub which: Which,
    /// This exam alone, by the number that stands in the names of its papers
    #[arg(long, value_name = "NUMBER", value_parser = exam)]
    pub exam: Option<ExamId>,
    /// Exams that nobody has signed as well
    #[arg(long)]
    pub unsigned: bool,
}

/// What `log` takes.
#[derive(Debug, Args)]
pub struct LogAsked {
    #[command(flatten)]
    pub records: Records,
    #[command(flatten)]
    pub which: Which,
    /// These columns alone, by their headings, with commas between
    #[arg(long, value_name = "HEADINGS", value_delimiter = ',', value_parser = column)]
    pub columns: Vec<Column>,
    /// Leave out what is personal
    #[arg(long)]
    pub without_personal: bool,
    /// Into this file, in place of the screen
    #[arg(long, value_name = "FILE")]
    pub out: Option<PathBuf>,
    /// As a workbook with a sheet of totals
    #[arg(long, requires = "out")]
    pub xlsx: bool,
}

/// What `papers` takes.
#[derive(Debug, Args)]
pub struct PapersAsked {
    #[command(flatten)]
    pub records: Records,
    #[command(flatten)]
    pub exams: WhichExams,
    /// Into this folder, which is made
    #[arg(long, value_name = "FOLDER")]
    pub out: PathBuf,
    /// The size of the sheets
    #[arg(long, value_enum, default_value = "a4")]
    pub size: Size,
    /// These papers alone, with commas between
    #[arg(long, value_enum, value_name = "PAPERS", value_delimiter = ',')]
    pub only: Vec<Kind>,
    /// The day that stands on the papers as that of writing; today where left out
    #[arg(long, value_name = "DAY", value_parser = day)]
    pub written: Option<NaiveDate>,
}

/// What `fhir` takes.
#[derive(Debug, Args)]
pub struct FhirAsked {
    #[command(flatten)]
    pub records: Records,
    #[command(flatten)]
    pub exams: WhichExams,
    /// Into this file, in place of the screen
    #[arg(long, value_name = "FILE")]
    pub out: Option<PathBuf>,
}

/// What `verify` takes.
#[derive(Debug, Args)]
pub struct VerifyAsked {
    /// The carry file, as a tablet writes it
    #[arg(long, value_name = "FILE")]
    pub carry: PathBuf,
    #[command(flatten)]
    pub opens: Opens,
}

/// Sizes of sheets.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum Size {
    /// 210 × 297 mm
    A4,
    /// 8.5 × 11 inches
    Letter,
}

/// The papers of an exam.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Kind {
    /// For whoever makes the glasses, wherever the person goes
    Prescription,
    /// For the laboratory
    Order,
    /// For whoever is to look further
    Referral,
    /// For the person, in large print
    Person,
    /// For those who care
    Staff,
    /// All that was found
    Summary,
    /// What was checked when the glasses came
    Fitting,
}

impl Which {
    /// As the log asks.
    pub fn filter(&self) -> Filter {
        Filter {
            from: self.from,
            through: self.through,
            place: self.place.clone(),
            clinician: self.clinician.clone(),
            outcome: self.outcome,
        }
    }
}

impl WhichExams {
    /// Whether an exam is wanted, its visit aside.
    pub fn wants(&self, wanted: &Exam) -> bool {
        (self.unsigned || wanted.is_signed()) && self.exam.is_none_or(|id| id == wanted.id())
    }
}

fn day(words: &str) -> Result<NaiveDate> {
    let day = words.trim().parse().ok();
    day.context("it is no day: write it like 2026-03-04")
}

fn exam(words: &str) -> Result<ExamId> {
    let number: Option<Uuid> = words.trim().parse().ok();
    let number = number.context("it is no exam’s number")?;
    Ok(ExamId::from_uuid(number))
}

fn outcome(words: &str) -> Result<Outcome> {
    let mut all = Outcome::ALL.into_iter();
    let found = all.find(|one| one.words() == words.trim());
    found.ok_or_else(|| {
        let words = Outcome::ALL.map(Outcome::words).join(", ");
        anyhow!("there is no such outcome: it is one of {words}")
    })
}

fn column(heading: &str) -> Result<Column> {
    Column::named(heading).ok_or_else(|| {
        let all: Vec<&str> = Column::ALL.iter().map(|column| column.heading()).collect();
        anyhow!("there is no such column: they are {}", all.join(", "))
    })
}
