//! What is answered, read by other libraries: `csv`, `calamine`, `lopdf`, and HL7's schema by `jsonschema`.

use crate::folder::{Folder, PASSPHRASE, PEOPLE};
use calamine::{DataType, Reader, Xlsx};
use record::{Body, Entry};
use std::collections::BTreeSet;
use std::fs;
use std::io::Cursor;
use std::process::Command;

fn rows(text: &str) -> Vec<Vec<String>> {
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .from_reader(text.as_bytes());
    let records = reader.records().map(|record| record.unwrap());
    records
        .map(|record| record.iter().map(str::to_owned).collect())
        .collect()
}

#[test]
fn the_log_has_a_row_for_every_exam() {
    let folder = Folder::new("log");
    let all = rows(&folder.answer("log", &[]));
    assert_eq!(all.len(), 1 + folder.exams());
    assert_eq!(all[0][..4], ["date", "place", "room", "person"]);
    let people: BTreeSet<&str> = all[1..].iter().map(|row| row[3].as_str()).collect();
    assert_eq!(people.len(), PEOPLE);

    let bare = rows(&folder.answer("log", &["--without-personal"]));
    let personal = |cell: &String| people.contains(cell.as_str());
    assert!(!bare.iter().flatten().any(personal), "{bare:?}");

    let from = &all[all.len() / 2][0];
    let later = all[1..].iter().filter(|row| row[0] >= *from).count();
    let chosen = folder.answer("log", &["--from", from, "--columns", "date,minutes"]);
    let chosen = rows(&chosen);
    assert_eq!(chosen[0], ["date", "minutes"]);
    assert_eq!(chosen.len(), 1 + later);
}

#[test]
fn the_workbook_says_what_the_rows_say() {
    let folder = Folder::new("workbook");
    let all = rows(&folder.answer("log", &["--columns", "date,person"]));
    let said = folder.answer(
        "log",
        &["--columns", "date,person", "--xlsx", "--out", "log.xlsx"],
    );
    assert_eq!(said, "", "the answer is in the file");
    let bytes = fs::read(folder.at("log.xlsx")).unwrap();
    let mut book: Xlsx<_> = Xlsx::new(Cursor::new(bytes)).unwrap();
    let sheet = book.worksheet_range("visits").unwrap();
    let cells: Vec<Vec<String>> = sheet
        .rows()
        .skip(1)
        .map(|row| {
            let day = row[0].as_date().unwrap().to_string();
            vec![day, row[1].get_string().unwrap().to_owned()]
        })
        .collect();
    assert_eq!(cells, all[1..]);
    assert!(!folder.at("log.xlsx.part").exists());
}

#[test]
fn the_papers_of_an_exam_name_the_person() {
    let folder = Folder::new("papers");
    let (exam, name) = folder.signed();
    let chosen = [
        "--exam",
        &exam,
        "--size",
        "letter",
        "--out",
        "papers",
        "--only",
        "person,summary",
        "--written",
        "2026-03-05",
    ];
    folder.answer("papers", &chosen);
    let mut names = Vec::new();
    for file in fs::read_dir(folder.at("papers")).unwrap() {
        let path = file.unwrap().path();
        let paper = lopdf::Document::load(&path).unwrap();
        let pages: Vec<u32> = paper.get_pages().keys().copied().collect();
        let text = paper.extract_text(&pages).unwrap();
        let close = |text: &str| text.split_whitespace().collect::<String>();
        assert!(close(&text).contains(&close(&name)), "{name}: {text}");
        names.push(path.file_name().unwrap().to_string_lossy().into_owned());
    }
    names.sort();
    assert_eq!(names.len(), 2);
    assert!(names[0].ends_with(&format!("{exam} note for the person.pdf")));
    assert!(names[1].ends_with(&format!("{exam} summary.pdf")));
}

#[test]
fn a_bundle_is_what_the_schema_wants() {
    let folder = Folder::new("fhir");
    let text = folder.answer("fhir", &[]);
    let bundle: serde_json::Value = serde_json::from_str(&text).unwrap();
    let mut schema = Vec::new();
    let packed = include_bytes!("../../../papers/fhir/tests/schema/fhir.schema.json.br");
    brotli::BrotliDecompress(&mut packed.as_slice(), &mut schema).unwrap();
    let mut schema: serde_json::Value = serde_json::from_slice(&schema).unwrap();
    // This copy names two definitions that it doesn't have: every resource, which it lists, and a whole number of 64 bits.
    schema["definitions"]["Resource"] = serde_json::json!({ "$ref": "#/definitions/ResourceList" });
    schema["definitions"]["integer64"] = serde_json::json!({ "type": "string" });
    assert!(jsonschema::is_valid(&schema, &bundle));
    let entries = bundle["entry"].as_array().unwrap().iter();
    let patients = entries.filter(|entry| entry["resource"]["resourceType"] == "Patient");
    assert_eq!(patients.count(), PEOPLE);
}

#[test]
fn a_carry_file_is_looked_through() {
    let folder = Folder::new("verify");
    let counted = format!("{} entries deciphered and read", folder.entries.len());
    let page = folder.answer("verify", &[]);
    assert!(page.contains("“bedside tablet”: entries 1 to "), "{page}");
    assert!(page.contains(&counted), "{page}");

    let shut = folder.run(&["verify", "--carry", "week.carry"], "");
    assert_eq!(shut.status.code(), Some(0));
    let shut = String::from_utf8(shut.stdout).unwrap();
    assert!(shut.ends_with(", chained and signed\n"), "{shut}");
    assert!(!shut.contains("bedside"), "a name needs the keys: {shut}");
}

/// What can't be told for want of something else is counted, and the code says that there was some.
#[test]
fn what_is_missing_is_said_beside_the_answer() {
    let folder = Folder::of("missing", PEOPLE, |entry| {
        !matches!(entry.body, Body::ExamOpened { .. })
    });
    let of_people = |entry: &&Entry| matches!(entry.body, Body::Person { .. });
    let waiting = folder.entries.len() - folder.entries.iter().filter(of_people).count();
    let sentence =
        format!("lightround: {waiting} entries wait for others that are not in this file\n");
    for (command, answer) in [("log", "date\r\n"), ("fhir", "")] {
        let columns = if command == "log" {
            &["--columns", "date"][..]
        } else {
            &[]
        };
        let output = folder.opened(command, columns, PASSPHRASE);
        assert_eq!(output.status.code(), Some(1), "{command}");
        assert_eq!(String::from_utf8(output.stderr).unwrap(), sentence);
        assert!(
            String::from_utf8(output.stdout)
                .unwrap()
                .starts_with(answer)
        );
    }
}

#[test]
fn the_recovery_sheet_opens_what_the_tablet_wrote() {
    let folder = Folder::new("recovery");
    let words = ["--carry", "week.carry", "--recovery", "--recovery-fd", "0"];
    let output = folder.run(&[&["log"], &words[..]].concat(), &folder.code);
    let complaint = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(0), "{complaint}");
    let text = String::from_utf8(output.stdout).unwrap();
    assert_eq!(text, folder.answer("log", &[]));
}

#[test]
fn a_manual_page_and_completions() {
    let printed = |words: &[&str]| {
        let output = Command::new(env!("CARGO_BIN_EXE_lightround"))
            .args(words)
            .output()
            .unwrap();
        assert!(output.status.success(), "{words:?}");
        String::from_utf8(output.stdout).unwrap()
    };
    let page = printed(&["man"]);
    assert!(page.contains(".TH lightround") && page.contains("transpose"));
    assert!(
        page.contains("the passphrase is wrong"),
        "what a code means"
    );
    assert!(printed(&["man", "log"]).contains("personal"));
    let help = printed(&["help"]);
    let (_, commands) = help.split_once("Commands:\n").unwrap();
    let (commands, _) = commands.split_once("\n\n").unwrap();
    let commands = commands
        .lines()
        .filter_map(|line| line.split_whitespace().next());
    let commands: Vec<&str> = commands.filter(|command| *command != "help").collect();
    assert!(commands.len() > 7, "{help}");
    for shell in ["bash", "zsh", "fish"] {
        let words = printed(&["completions", shell]);
        assert!(words.contains("passphrase"), "{shell}: {words}");
        for command in &commands {
            assert!(words.contains(command), "{shell} does not know {command}");
        }
    }
    for command in commands {
        let page = printed(&["man", command]);
        assert!(
            page.contains(&format!(".TH lightround-{command} 1")),
            "{page}"
        );
    }
    for code in 0..=4 {
        assert!(page.contains(&format!("\n  {code}  ")), "{code}: {page}");
    }
    assert!(printed(&["log", "--help"]).contains("--without-personal"));
    assert!(printed(&["net", "--help"]).contains("--working-lens"));
}
