//! Each row good or bad as a whole, with which line, which column, and what.

use record::home_list::{Mapping, Table, judge, kept_aside};
use record::{Born, PersonDetails, Story};

use super::{HOME, faults, good, judged};
use crate::desk::{Desk, PERSON, day, details};

fn nobody() -> Story {
    Story::default()
}

#[test]
fn a_whole_name_is_taken_apart() {
    let list = "Name;Room\nOrla Pennyquick;1\nPennyquick, Orla May;2\nPENNYQUICK Orla;3\nMrs. Orla Pennyquick;4\nMr O Tidewell;5\nCastlemere;6\nDE VRIES Ivo;7\n";
    let rows = good(judged(
        &list
            .replace("Orla;3", "Olga;3")
            .replace("Mrs. Orla", "Mrs. Odile"),
        &nobody(),
    ));
    let names: Vec<(&str, &str)> = rows
        .iter()
        .map(|row| (row.name.given.as_str(), row.name.family.as_str()))
        .collect();
    assert_eq!(
        names,
        [
            ("Orla", "Pennyquick"),
            ("Orla May", "Pennyquick"),
            ("Olga", "PENNYQUICK"),
            ("Odile", "Pennyquick"),
            ("O", "Tidewell"),
            ("", "Castlemere"),
            ("Ivo", "DE VRIES"),
        ]
    );
}

#[test]
fn what_is_amiss_is_said_with_line_and_column() {
    let list = "Surname;Forename;DOB;Room\n;;31/01/1940;14\nTidewell;Ambrose;31/02/1933;15\nQuillane;Hester\nEllingsea;Maud;04/05/1941;5;glasses lost\n";
    assert_eq!(
        faults(&judged(list, &nobody())),
        [
            "line 2, Surname: a person needs at least one name",
            "line 3, DOB: \u{201c}31/02/1933\u{201d} is no date",
            "line 4: has 2 cells where the heading has 4",
            "line 5: has 5 cells where the heading has 4",
        ]
    );
}

#[test]
fn a_cell_that_has_swallowed_others_is_kept_aside() {
    let list = format!(
        "Name;Note\n\"Orla Pennyquick;falls\n{}\n",
        "Ivo Castlemere;new\n".repeat(40)
    );
    let said = faults(&judged(&list, &nobody()));
    assert!(
        said.iter()
            .any(|fault| fault.contains("is a quotation mark missing?")),
        "{said:?}"
    );
}

#[test]
fn nobody_is_taken_twice_out_of_one_list() {
    let list = "Name;DOB\nOrla Pennyquick;31/01/1940\nPennyquick, orla;31.1.1940\nOrla Pennyquick;01/02/1941\n";
    let judged = judged(list, &nobody());
    assert_eq!(
        faults(&judged),
        ["line 3: orla Pennyquick stands on line 2 already"]
    );
    assert_eq!(
        good(judged).len(),
        2,
        "another birth date is another person"
    );
}

fn known(born: Option<Born>, place: &str) -> Desk {
    let mut desk = Desk::new(1);
    let details = PersonDetails {
        born,
        place: place.into(),
        ..details("Orla", "Pennyquick")
    };
    desk.write(desk.story.put_person(PERSON, details));
    desk
}

#[test]
fn somebody_known_is_known_by_name_and_birth_date() {
    let is_known = |born, place, row: &str| {
        let desk = known(born, place);
        let list = format!("Name;DOB\n{row}\n");
        good(judged(&list, &desk.story))[0].known == Some(PERSON)
    };
    let date = Some(Born::Date(day(1940, 1, 31)));
    let stated = Some(Born::Stated {
        years: 86,
        in_year: 2026,
    });
    assert!(
        is_known(date, "Gullhaven", "orla  PENNYQUICK;31/01/1940"),
        "moved here"
    );
    assert!(
        !is_known(date, HOME, "Orla Pennyquick;01/02/1940"),
        "a namesake"
    );
    assert!(!is_known(date, HOME, "Odile Pennyquick;31/01/1940"));
    assert!(
        is_known(date, HOME, "Orla Pennyquick;"),
        "the same name where she lives"
    );
    assert!(
        !is_known(date, "Gullhaven", "Orla Pennyquick;"),
        "nothing tells that it is she"
    );
    assert!(is_known(stated, HOME, "Orla Pennyquick;31/01/1940"));
}

/// What is kept aside can be opened, put right and read again.
#[test]
fn the_rows_kept_aside_are_a_file_again() {
    let list = "Name,DOB,Note\nOrla Pennyquick,31/01/1940,\n\"Tidewell, Ambrose\",31/02/1933,\"says \"\"no\"\"\"\n";
    let table = Table::read(list.as_bytes()).unwrap();
    let judged = judge(
        &table,
        &Mapping::guess(&table),
        &nobody(),
        HOME,
        day(2026, 3, 4),
    );
    let aside = kept_aside(&table, &judged, record::DateOrder::DayFirst);
    assert_eq!(
        aside,
        "line,why it was kept aside,Name,DOB,Note\r\n3,\"line 3, DOB: \u{201c}31/02/1933\u{201d} is no date\",\"Tidewell, Ambrose\",31/02/1933,\"says \"\"no\"\"\"\r\n"
    );
    let again = Table::read(aside.replace("31/02", "28/02").as_bytes()).unwrap();
    let judged = judge(
        &again,
        &Mapping::guess(&again),
        &nobody(),
        HOME,
        day(2026, 3, 4),
    );
    assert_eq!(
        judged[0].verdict.as_ref().map(|row| row.name.to_string()),
        Ok("Ambrose Tidewell".into())
    );
}
