//! A vault of eight times as many visits needs no more memory: each command is given as much as it needs for the smaller one, by
//! the system's own limit, and goes through the larger.

use crate::folder::{Folder, PEOPLE};
use std::fs;

/// More than any of the commands needs here.
const AMPLE_KIB: u64 = 128 * 1024;
/// How closely it is known what a command needs.
const STEP_KIB: u64 = 256;
/// How much more it may need for eight times as much, at most, as a share of how much longer the file is. To have all of it in
/// memory, opened and told, takes several times the file.
const SHARE: u64 = 2;

/// One short paper for most of the people.
const PAPERS: [&str; 6] = [
    "--out",
    "papers",
    "--only",
    "prescription",
    "--from",
    "2025-03-05",
];

#[test]
fn eight_times_as_many_visits_take_no_more_memory() {
    let few = Folder::new("few");
    let many = Folder::of("many", 8 * PEOPLE, |_| true);
    let kibibytes = |folder: &Folder| fs::metadata(folder.at("week.carry")).unwrap().len() / 1024;
    let more_kib = (kibibytes(&many) - kibibytes(&few)) / SHARE;
    for (command, more) in [
        ("verify", &[][..]),
        ("log", &[]),
        ("fhir", &[]),
        ("papers", &PAPERS),
    ] {
        let needed = needed(&few, command, more);
        assert!(
            many.fits(needed + more_kib, command, more),
            "{command}: {needed} KiB are enough for the smaller vault, and {more_kib} more not for the larger"
        );
    }
    let papers = |folder: &Folder| fs::read_dir(folder.at("papers")).unwrap().count();
    assert!(0 < papers(&few) && papers(&few) < papers(&many));
}

/// What a command needs for a vault.
fn needed(folder: &Folder, command: &str, more: &[&str]) -> u64 {
    let (mut short, mut enough) = (0, AMPLE_KIB);
    assert!(folder.fits(enough, command, more), "{command}");
    while enough - short > STEP_KIB {
        let middle = u64::midpoint(short, enough);
        if folder.fits(middle, command, more) {
            enough = middle;
        } else {
            short = middle;
        }
    }
    enough
}
