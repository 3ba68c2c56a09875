//! Headings and what they are taken for. The words are common practice, no source.

use record::home_list::{Field, Mapping};

use super::table;

fn guessed(heading: &str) -> Vec<Option<Field>> {
    let row = heading.replace(|c: char| c != ';', "");
    Mapping::guess(&table(&format!("{heading}\nx{row}\n"))).columns
}

#[test]
fn common_headings_are_known() {
    use Field::{Born, Family, Given, Identifier, Name, Note, Room, Unit};
    for (heading, expected) in [
        (
            "Surname;First name;DOB;Room",
            vec![Some(Family), Some(Given), Some(Born), Some(Room)],
        ),
        (
            "Resident;Date of Birth;Room No.;Floor",
            vec![Some(Name), Some(Born), Some(Room), Some(Unit)],
        ),
        (
            "Last Name;Forename(s);Bed number;Wing",
            vec![Some(Family), Some(Given), Some(Room), Some(Unit)],
        ),
        (
            "Full Name;D.O.B.;NHS Number;Comments",
            vec![Some(Name), Some(Born), Some(Identifier), Some(Note)],
        ),
        (
            "Nachname;Vorname;Geburtsdatum;Zimmer",
            vec![Some(Family), Some(Given), Some(Born), Some(Room)],
        ),
        (
            "ID;Name;Diet;Notes",
            vec![Some(Identifier), Some(Name), None, Some(Note)],
        ),
    ] {
        assert_eq!(guessed(heading), expected, "{heading}");
    }
}

#[test]
fn a_heading_that_comes_twice_is_taken_once_save_notes() {
    use Field::{Name, Note};
    let columns = guessed("Name;Name of doctor;Notes;Remarks");
    assert_eq!(columns, [Some(Name), None, Some(Note), Some(Note)]);
}

#[test]
fn a_mapping_needs_a_name_from_one_place() {
    let said = |columns: Vec<Option<Field>>| -> Vec<String> {
        let mut mapping = Mapping::guess(&table("a;b;c\nx;y;z\n"));
        mapping.columns = columns;
        mapping
            .check()
            .into_iter()
            .map(|error| error.sentence)
            .collect()
    };
    let (name, given, family) = (Some(Field::Name), Some(Field::Given), Some(Field::Family));
    assert!(said(vec![name, None, None]).is_empty());
    assert!(said(vec![given, family, None]).is_empty());
    assert!(said(vec![family, Some(Field::Note), Some(Field::Note)]).is_empty());
    assert_eq!(
        said(vec![None, None, Some(Field::Room)]),
        ["say which column holds the name"]
    );
    assert_eq!(said(vec![name, given, None]).len(), 1);
    assert_eq!(
        said(vec![name, Some(Field::Room), Some(Field::Room)]),
        ["two columns are called room"]
    );
}
