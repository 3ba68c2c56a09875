//! What an entry weighs on disk, measured, and the page that reckons with it (`src/relay/docs/scale.md`), reckoned again.

use crate::cluster;
use crate::fresh_file;
use lightround_relay::store::{PostgresStore, SqliteStore};
use postgres::{Client, NoTls};
use sync::exchange::{Appended, FrameStore, Run};
use vault::Frame;
use vault::sample::devices;

const PAGE: &str = include_str!("../../docs/scale.md");

/// Payloads of one examination in bytes: frozen entries of the record, each section kept twice; a person and a key for a
/// third of them (a whole person in every third examination).
const EXAM: [usize; 11] = [241, 442, 442, 952, 952, 383, 383, 329, 329, 280, 325];
const PERSON: [usize; 2] = [290, 200];

/// Frames of so many examinations in one log.
fn log(seed: u64, exams: usize) -> Vec<Frame> {
    let mut device = devices(seed, 1).remove(0);
    let mut log = vec![device.begin("sample")];
    for exam in 0..exams {
        let person = PERSON.iter().take(if exam % 3 == 0 { 2 } else { 0 });
        for length in person.chain(&EXAM) {
            let head = log[log.len() - 1].head();
            log.push(device.write(head, &vec![7; *length]));
        }
    }
    log
}

/// Frames and their bytes, the same in every store.
fn fill(store: &impl FrameStore) -> (usize, usize) {
    let (mut frames, mut bytes) = (0, 0);
    for seed in 900..912 {
        let log = log(seed, 24);
        frames += log.len();
        bytes += log.iter().map(|frame| frame.bytes().len()).sum::<usize>();
        for part in log.chunks(7) {
            let run = Run::new(part.to_vec()).unwrap();
            assert_eq!(store.append(&run), Ok(Appended::Kept));
        }
    }
    (frames, bytes)
}

/// The number after these words on the page.
fn figure(words: &str) -> f64 {
    let at = PAGE.find(words).unwrap_or_else(|| panic!("{words}"));
    let digits: String = PAGE[at + words.len()..]
        .chars()
        .skip_while(|sign| !sign.is_ascii_digit())
        .take_while(|sign| sign.is_ascii_digit() || matches!(sign, ',' | '.'))
        .filter(|sign| *sign != ',')
        .collect();
    digits.trim_end_matches('.').parse().unwrap()
}

fn holds(words: &str, measured: f64, within: f64) {
    let said = figure(words);
    assert!(
        (measured / said - 1.0).abs() < within,
        "{words}: {said} is said, {measured} measured"
    );
}

#[test]
fn the_page_says_what_is_measured() {
    let file = fresh_file();
    let store = SqliteStore::open(&file).unwrap();
    let (frames, bytes) = fill(&store);
    drop(store);
    let each = |whole: f64| whole / frames as f64;
    holds("An entry in its frame:", each(bytes as f64), 0.001);
    holds(
        "In SQLite's file:",
        each(std::fs::metadata(&file).unwrap().len() as f64),
        0.05,
    );

    let address = cluster::address("weighed");
    let store = PostgresStore::open(&address).unwrap();
    assert_eq!(fill(&store), (frames, bytes));
    let mut client = Client::connect(&address, NoTls).unwrap();
    let tables = client
        .query_one(
            "SELECT (pg_total_relation_size('frame') + pg_total_relation_size('head'))::FLOAT8",
            &[],
        )
        .unwrap();
    holds("In PostgreSQL's tables:", each(tables.get(0)), 0.05);
}

/// Two digits that count, as the page writes large numbers.
fn rounded(number: f64) -> f64 {
    let unit = 10_f64.powf(number.log10().floor() - 1.0);
    (number / unit).round() * unit
}

#[test]
fn the_page_reckons_right() {
    let exams = figure("Examiners of a clinic:")
        * figure("Examinations of one in a day:")
        * figure("Days in a year:");
    let entries = figure("Entries of an examination:");
    // Computed from the formula: eleven, and two for every third.
    assert!((entries - (EXAM.len() as f64 + 2.0 / 3.0)).abs() < 0.05);
    let a_year = exams * entries;
    let peak = exams / figure("Days in a year:") * entries * figure("Requests for an entry:")
        / (figure("Hours of a day's work:") * 3_600.0)
        * figure("The busiest minute over the mean:");
    for (clinics, kept, copies, at_a_core) in [
        (10.0, "In SQLite's file:", 2.0, "with SQLite:"),
        (1_000.0, "In PostgreSQL's tables:", 3.0, "with PostgreSQL:"),
        (
            100_000.0,
            "In PostgreSQL's tables:",
            4.0,
            "with a spread engine:",
        ),
    ] {
        let terabytes = clinics * a_year * 10.0 * figure(kept) * figure("Sections to come:") / 1e12;
        let requests = clinics * peak;
        let transactions = requests * figure("Transactions of a push:");
        let cores = (transactions / figure(&format!("in a second for a core, {at_a_core}")))
            .ceil()
            .max(2.0);
        let disk = terabytes * 1_000.0 * copies * figure("A gigabyte for a month:");
        let work = cores * figure("A core for a month:");
        let cells = cells(clinics);
        for (cell, reckoned) in cells.iter().zip([terabytes, requests, cores, disk + work]) {
            let reckoned = rounded(reckoned);
            assert!(
                (cell / reckoned - 1.0).abs() < 0.01,
                "{clinics}: {cell} is said, {reckoned} reckoned"
            );
        }
    }
}

/// The numbers in the row of the page's table that begins with so many clinics.
fn cells(clinics: f64) -> Vec<f64> {
    let row = PAGE
        .lines()
        .filter_map(|line| line.strip_prefix("| ")?.split_once(" | "))
        .find(|(first, _)| first.replace(',', "").parse() == Ok(clinics));
    let (_, rest) = row.unwrap();
    let numbers: Vec<f64> = rest
        .split('|')
        .filter_map(|cell| cell.trim().replace(',', "").parse().ok())
        .collect();
    assert_eq!(numbers.len(), 4, "{rest}");
    numbers
}
