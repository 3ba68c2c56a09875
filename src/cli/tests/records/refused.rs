//! What can't be done is one sentence, and a code that says of which kind it is.

use crate::folder::{Folder, PASSPHRASE};
use std::fs;
use std::process::Output;

/// The code, and the one sentence.
fn said(output: Output) -> (i32, String) {
    assert!(output.stdout.is_empty(), "nothing is answered");
    let said = String::from_utf8(output.stderr).unwrap();
    assert_eq!(said.lines().count(), 1, "{said}");
    (output.status.code().unwrap(), said.trim().to_owned())
}

#[test]
fn what_is_asked_wrongly() {
    let folder = Folder::new("asked");
    let asked = |more: &[&str]| said(folder.opened("log", more, PASSPHRASE));
    let (code, sentence) = asked(&["--columns", "pressure"]);
    assert_eq!(code, 2);
    assert!(
        sentence.contains("there is no such column: they are date, "),
        "{sentence}"
    );
    let (code, sentence) = asked(&["--xlsx"]);
    assert_eq!(code, 2);
    assert!(sentence.contains("--out"), "{sentence}");
    let (code, sentence) = asked(&["--from", "2026-02-30"]);
    assert_eq!(code, 2);
    assert!(
        sentence.ends_with("it is no day: write it like 2026-03-04"),
        "{sentence}"
    );
    let (code, sentence) = said(folder.run(&["log", "--carry", "week.carry"], ""));
    assert_eq!(code, 2);
    assert!(sentence.contains("--keys"), "{sentence}");
}

#[test]
fn what_does_not_open() {
    let folder = Folder::new("shut");
    let log = |passphrase: &str| said(folder.opened("log", &[], passphrase));
    assert_eq!(
        log("another passphrase altogether"),
        (
            3,
            "lightround: that is not the passphrase of this vault".to_owned()
        )
    );
    assert_eq!(
        log(""),
        (
            3,
            "lightround: no passphrase came from descriptor 0".to_owned()
        )
    );
    let none = said(folder.run(&["verify", "--carry", "month.carry"], ""));
    assert_eq!(none.0, 3);
    assert!(
        none.1
            .starts_with("lightround: month.carry can’t be read: "),
        "{none:?}"
    );

    let mut bytes = fs::read(folder.at("week.carry")).unwrap();
    let middle = bytes.len() / 2;
    bytes[middle] ^= 1;
    fs::write(folder.at("week.carry"), bytes).unwrap();
    assert_eq!(
        said(folder.run(&["verify", "--carry", "week.carry"], "")),
        (
            3,
            "lightround: week.carry: this carry file is damaged or cut short: have it made or copied again".to_owned()
        )
    );
}

#[test]
fn what_can_not_be_written() {
    let folder = Folder::new("written");
    let to = ["--out", "nowhere/log.csv"];
    let (code, sentence) = said(folder.opened("log", &to, PASSPHRASE));
    assert_eq!(code, 4);
    assert!(
        sentence.starts_with("lightround: nowhere/log.csv can’t be written: "),
        "{sentence}"
    );
}
