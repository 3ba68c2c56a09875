//! Rows that are on the disk take no memory: eight times as many need no more of it.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

use papers::log::{Column, Filter, Visit, visits};
use papers::sample::Desk;
use peak_alloc::PeakAlloc;
use sheets::LogBook;

#[global_allocator]
static MEMORY: PeakAlloc = PeakAlloc;

const FEW: usize = 1_000;
/// Less than a byte for each cell that there is more.
const ALIKE: usize = 64 << 10;

#[test]
fn eight_times_as_many_rows_take_no_more_memory() {
    let visit = &visits(&Desk::full().story, &Filter::default())[0];
    let (few, many) = (taken(visit, FEW), taken(visit, 8 * FEW));
    assert!(many < few + ALIKE, "{few} bytes, then {many}");
}

/// The most memory that a workbook of this visit, over and over, takes.
fn taken(visit: &Visit, rows: usize) -> usize {
    MEMORY.reset_peak_usage();
    let before = MEMORY.current_usage();
    let mut book = LogBook::begin_in(&std::env::temp_dir(), Column::ALL).unwrap();
    (0..rows).for_each(|_| book.row(visit).unwrap());
    book.end_into(std::io::sink()).unwrap();
    MEMORY.peak_usage() - before
}
