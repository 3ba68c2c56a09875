//! How long finding takes among many people, against looking at every name letter by letter, in the same run.
//!
//! `cargo run --release -p record --example find`; give a number of people for another than 10,000.

#![allow(clippy::print_stdout, reason = "a measurement is for reading")]

use record::find::{Findable, Index};
use std::time::{Duration, Instant};

const SYLLABLES: [&str; 16] = [
    "pen", "ny", "quick", "oak", "hol", "low", "salt", "garth", "kelp", "wright", "brine", "cote",
    "tern", "mar", "row", "by",
];

const ASKED: [&str; 8] = [
    "p",
    "penny",
    "penyquik",
    "ternmarow 12",
    "saltgarth oak",
    "12.3.1938",
    "1938",
    "zzzz",
];

fn main() {
    let people = std::env::args()
        .nth(1)
        .and_then(|count| count.parse().ok())
        .unwrap_or(10_000);
    let things: Vec<Findable<usize>> = (0..people).map(somebody).collect();
    let begun = Instant::now();
    let mut index = Index::default();
    index.follow(things.iter().cloned());
    println!("{people} people: index made in {:?}", begun.elapsed());
    let begun = Instant::now();
    index.follow(things.iter().cloned());
    println!("followed again with nothing new in {:?}", begun.elapsed());
    println!(
        "{:16} {:>7} {:>12} {:>8}",
        "asked", "found", "time", "ratio"
    );
    for asked in ASKED {
        let plain = best_of(|| look_at_all(&things, asked));
        let found = index.find(asked).len();
        let time = best_of(|| index.find(asked).len());
        let ratio = time.as_secs_f64() / plain.as_secs_f64();
        println!("{asked:16} {found:7} {time:>12?} {ratio:8.2}");
    }
    println!("ratio: to lowering the case of every name and looking for the letters in it");
}

fn look_at_all(things: &[Findable<usize>], asked: &str) -> usize {
    let found = things
        .iter()
        .filter(|thing| thing.name.to_lowercase().contains(asked));
    found.count()
}

fn best_of(mut act: impl FnMut() -> usize) -> Duration {
    let times = (0..20).map(|_| {
        let begun = Instant::now();
        std::hint::black_box(act());
        begun.elapsed()
    });
    times.min().unwrap_or_default()
}

/// Names of three syllables before two: 16^5 differ.
fn somebody(at: usize) -> Findable<usize> {
    let syllable =
        |place: u32| SYLLABLES[at.wrapping_mul(2_654_435_761) / 16_usize.pow(place) % 16];
    let name = format!(
        "{}{} {}{}{}",
        syllable(3),
        syllable(1),
        syllable(0),
        syllable(2),
        syllable(4)
    );
    let year = i32::try_from(1925 + at % 40).unwrap_or_default();
    let born = chrono::NaiveDate::from_yo_opt(year, 1 + (at % 365) as u32);
    Findable {
        name,
        room: (at % 60).to_string(),
        place: format!("home {}", at % 200),
        born: born.map(record::Born::Date),
        ..Findable::new(at)
    }
}
