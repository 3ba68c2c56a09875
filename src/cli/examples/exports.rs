//! What ten thousand visits cost to hand over: `cargo xtask bench` runs it and puts the numbers into its table.
//!
//! Each way out is measured beside the bare library writing the same rows, each in a process of its own so that the memory is
//! its own as well. A PDF stands beside one with nothing but a title.
//!
//! ```text
//! cargo run --release -p lightround --example exports FILE [VISITS]
//! ```
#![allow(
    clippy::unwrap_used,
    reason = "a measurement that can't be made has nothing to say"
)]

use chrono::NaiveDate;
use demo::Demo;
use papers::log::{Column, Filter, Value, Visit, csv, visits};
use papers::{Document, visit_summary};
use record::{Exam, Person, Story};
use rust_xlsxwriter::{Format, Workbook};
use serde_json::json;
use std::process::Command;
use std::time::{Duration, Instant};

const VISITS: usize = 10_000;
/// Papers set one after the other, where there are as many visits.
const PAPERS: usize = 200;

/// A way out: its name, ours, and what it stands beside.
type Way = (&'static str, fn(&Made) -> Duration, fn(&Made) -> Duration);

const WAYS: [Way; 4] = [
    ("visits as CSV", our_csv, bare_csv),
    ("visits as a workbook", our_workbook, bare_workbook),
    ("visits as FHIR", our_fhir, bare_fhir),
    ("a summary as PDF", our_pdf, bare_pdf),
];
const BESIDE: [&str; 4] = [
    "the same rows by the csv crate",
    "the same cells by the workbook's writer",
    "the finished bundle by serde_json",
    "a paper with a title alone",
];

struct Made {
    story: Story,
    seen: Vec<Visit>,
}

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    match words.as_slice() {
        [left] => std::fs::write(left, everything(VISITS).to_string()).unwrap(),
        [left, visits] => {
            std::fs::write(left, everything(visits.parse().unwrap()).to_string()).unwrap();
        }
        [way, whose, visits] => one(
            way.parse().unwrap(),
            whose == "ours",
            visits.parse().unwrap(),
        ),
        _ => panic!("where are the numbers to be left?"),
    }
}

/// Runs each way in a process of its own.
fn everything(visits: usize) -> serde_json::Value {
    let mut measures = Vec::new();
    for (at, ((name, ..), beside)) in WAYS.iter().zip(BESIDE).enumerate() {
        let run = |whose: &str| {
            let itself = std::env::current_exe().unwrap();
            let output = Command::new(itself)
                .args([&at.to_string(), whose, &visits.to_string()])
                .output()
                .unwrap();
            let said = String::from_utf8(output.stdout).unwrap();
            let numbers: Vec<f64> = said
                .split_whitespace()
                .map(|number| number.parse().unwrap())
                .collect();
            (numbers[0], numbers[1])
        };
        let ((ours, our_memory), (theirs, their_memory)) = (run("ours"), run("bare"));
        measures.push(json!({ "name": name, "unit": "ms", "ours": ours, "against": beside, "theirs": theirs }));
        measures.push(json!({
            "name": format!("{name}: memory at most"), "unit": "bytes",
            "ours": our_memory, "against": beside, "theirs": their_memory,
        }));
    }
    json!(measures)
}

/// Milliseconds, and the most memory in bytes.
fn one(way: usize, ours: bool, visits: usize) {
    let made = Made::new(visits);
    let (_, our, bare) = WAYS[way];
    let took = if ours { our(&made) } else { bare(&made) };
    println!("{} {}", took.as_secs_f64() * 1000.0, memory());
}

impl Made {
    /// Made-up people until there are enough visits.
    fn new(most: usize) -> Self {
        let today = NaiveDate::from_ymd_opt(2026, 3, 4).unwrap();
        let mut story = Story::default();
        let (mut people, mut exams) = (0, 0);
        while exams < most {
            people += 1;
            for life in Demo::new(people, today) {
                for entry in life.entries {
                    story.admit(entry).unwrap();
                }
                exams += story.exams_of(&life.person).len();
            }
        }
        let mut seen = visits(&story, &Filter::default());
        seen.truncate(most);
        Self { story, seen }
    }

    fn exams(&self, most: usize) -> Vec<(&Person, &Exam)> {
        let people = self.story.people().into_iter();
        let exams = people.flat_map(|person| {
            let exams = self.story.exams_of(&person.id()).into_iter();
            exams.map(move |exam| (person, exam))
        });
        exams.take(most).collect()
    }

    /// The cells as they stand in the file, made beforehand.
    fn cells(&self) -> Vec<Vec<Value<'_>>> {
        let row = |visit| Column::ALL.iter().map(|column| column.of(visit)).collect();
        self.seen.iter().map(row).collect()
    }
}

fn our_csv(made: &Made) -> Duration {
    let began = Instant::now();
    let mut file = Vec::new();
    csv(&mut file, Column::ALL, &made.seen).unwrap();
    began.elapsed()
}

fn bare_csv(made: &Made) -> Duration {
    let text = |value: Value<'_>| match value {
        Value::Blank => String::new(),
        Value::Text(words) => words.to_owned(),
        Value::Day(day) => day.to_string(),
        Value::Count(count) => count.to_string(),
    };
    let rows = made.cells().into_iter();
    let rows: Vec<Vec<String>> = rows
        .map(|row| row.into_iter().map(text).collect())
        .collect();
    let began = Instant::now();
    let mut writer = ::csv::Writer::from_writer(Vec::new());
    for row in &rows {
        writer.write_record(row).unwrap();
    }
    writer.flush().unwrap();
    began.elapsed()
}

fn our_workbook(made: &Made) -> Duration {
    let began = Instant::now();
    sheets::workbook(Column::ALL, &made.seen).unwrap();
    began.elapsed()
}

fn bare_workbook(made: &Made) -> Duration {
    let rows = made.cells();
    let day = Format::new().set_num_format("yyyy-mm-dd");
    let epoch = NaiveDate::from_ymd_opt(1899, 12, 30).unwrap();
    let began = Instant::now();
    let mut book = Workbook::new();
    let sheet = book.add_worksheet();
    for (row, cells) in (0u32..).zip(&rows) {
        for (place, cell) in (0u16..).zip(cells) {
            match cell {
                Value::Blank => continue,
                Value::Text(words) => sheet.write_string(row, place, *words),
                Value::Count(count) => sheet.write_number(row, place, *count),
                Value::Day(date) => {
                    let number = (*date - epoch).num_days() as f64;
                    sheet.write_number_with_format(row, place, number, &day)
                }
            }
            .unwrap();
        }
    }
    book.save_to_buffer().unwrap();
    began.elapsed()
}

fn our_fhir(made: &Made) -> Duration {
    let exams = made.exams(made.seen.len());
    let began = Instant::now();
    let text = fhir::bundle_text(exams);
    let took = began.elapsed();
    assert!(text.len() > made.seen.len());
    took
}

fn bare_fhir(made: &Made) -> Duration {
    let bundle = fhir::bundle(made.exams(made.seen.len()));
    let began = Instant::now();
    let text = serde_json::to_string(&bundle).unwrap();
    let took = began.elapsed();
    assert!(text.len() > made.seen.len());
    took
}

fn papers(made: &Made) -> usize {
    PAPERS.min(made.seen.len())
}

fn our_pdf(made: &Made) -> Duration {
    let today = NaiveDate::from_ymd_opt(2026, 3, 5).unwrap();
    let exams = made.exams(papers(made)).into_iter();
    let documents: Vec<Document> = exams
        .filter_map(|(person, exam)| visit_summary(person, exam, today).ok())
        .collect();
    each(&documents)
}

fn bare_pdf(made: &Made) -> Duration {
    let today = NaiveDate::from_ymd_opt(2026, 3, 5).unwrap();
    let (person, exam) = made.exams(1)[0];
    let mut bare = visit_summary(person, exam, today).unwrap();
    bare.blocks.clear();
    each(&vec![bare; papers(made)])
}

/// What one of them takes.
fn each(documents: &[Document]) -> Duration {
    let began = Instant::now();
    for document in documents {
        pdf::pdf(document, pdf::Paper::A4).unwrap();
    }
    began.elapsed() / documents.len() as u32
}

/// The most memory that this process ever had, in bytes; 0 where the system doesn't tell.
fn memory() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    let kibibytes = line.and_then(|line| line.trim().trim_end_matches(" kB").parse().ok());
    kibibytes.unwrap_or(0_u64) * 1024
}
