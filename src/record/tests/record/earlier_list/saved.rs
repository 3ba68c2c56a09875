//! A mapping that is kept for the next file of the same kind.

use record::earlier_list::{Bare, DateOrder, Field, Mapping, Saved};
use record::{Eye, OneOf, Settings};

use super::{desk, table};

const FIRST: &str = "Number;Exam date;RE Rx;Decimal RE VA\n12;03/14/2025;-1.00;0.5\n";

#[test]
fn it_is_found_by_headings_wherever_they_stand() {
    let first = table(FIRST);
    let mapping = Mapping::guess(&first);
    assert_eq!(mapping.dates, DateOrder::MonthFirst, "there is no month 14");
    assert_eq!(mapping.bare, Some(Bare::Decimal));
    let saved = Saved::of("the clinic before", &first, &mapping);
    assert_eq!(saved.on(&first), Some(mapping));

    let next = table("RE Rx;Other;Number;Decimal RE VA;Exam date\n-1.00;x;12;0.5;01/02/2025\n");
    let found = saved.on(&next).unwrap();
    assert_eq!(
        found.dates,
        DateOrder::MonthFirst,
        "as it was put right then"
    );
    assert_eq!(
        found.columns,
        [
            Some(Field::Lens(Eye::Right)),
            None,
            Some(Field::Identifier),
            Some(Field::Acuity(Eye::Right)),
            Some(Field::On),
        ]
    );
    let lacking = table("RE Rx;Number;Exam date\n-1.00;12;01/02/2025\n");
    assert_eq!(saved.on(&lacking), None);
    let twice = table("RE Rx;RE Rx;Number;Decimal RE VA;Exam date\n;;12;;01/02/2025\n");
    assert_eq!(saved.on(&twice), None);
}

#[test]
fn it_comes_back_from_its_bytes() {
    let first = table(FIRST);
    let mut mapping = Mapping::guess(&first);
    for field in Field::all() {
        mapping.columns[2] = Some(field);
        let saved = Saved::of("the clinic before", &first, &mapping);
        let mut bytes = Vec::new();
        ciborium::into_writer(&saved, &mut bytes).unwrap();
        let read: Saved = ciborium::from_reader(bytes.as_slice()).unwrap();
        assert_eq!(read, saved);
    }
}

#[test]
fn every_heading_in_words_is_guessed_as_what_it_names() {
    for field in Field::all() {
        let heading = field.in_words();
        let table = table(&format!("{heading};x\na;b\n"));
        let guessed = Mapping::guess(&table).columns[0];
        assert_eq!(guessed, Some(field), "{heading}");
    }
}

#[test]
fn what_keeps_a_file_from_being_read_is_said() {
    let said = |headings: &str| {
        let cells = headings.replace(|sign| sign != ';', "");
        let table = table(&format!("{headings}\nx{cells}\n"));
        let faults = Mapping::guess(&table).check().into_iter();
        faults.map(|fault| fault.sentence).collect::<Vec<_>>()
    };
    assert!(said("Number;Exam date;RE Rx").is_empty());
    assert!(said("Name;DOB;Exam date;RE Rx").is_empty());
    assert_eq!(said("Name;Exam date;RE Rx").len(), 1);
    assert_eq!(
        said("Number;RE Rx"),
        ["say which column holds the date of the exam"]
    );
    assert_eq!(
        said("Number;Exam date;RE Rx;RE sph"),
        ["take the right lens from one column, or its parts from several, not both"]
    );
}

#[test]
fn what_the_file_itself_leaves_open_is_said() {
    let open = |text: &str| {
        let table = table(text);
        let mapping = Mapping::guess(&table);
        (mapping.dates_are_open(&table), mapping.bare_is_open(&table))
    };
    assert_eq!(
        open("Number;Exam date;RE VA\n12;04/03/2025;0.3\n"),
        (true, true)
    );
    assert_eq!(
        open("Number;Exam date;RE VA\n12;14/03/2025;6/12\n"),
        (false, false),
        "there is no month 14"
    );
}

/// In the settings, which are sealed: of two that fit, the one that was kept last.
#[test]
fn it_is_kept_for_every_tablet_and_the_last_that_fits_is_taken() {
    let mut desk = desk();
    let first = table(FIRST);
    let guessed = Mapping::guess(&first);
    let other = Mapping {
        dates: DateOrder::YearFirst,
        ..guessed.clone()
    };
    let mut settings = Settings::default();
    settings.keep_mapping(Saved::of("the clinic before", &first, &guessed));
    settings.keep_mapping(Saved::of("the hospital", &first, &other));
    desk.write(desk.story.put_settings(settings));
    let mut settings = desk.story.settings();
    assert_eq!(settings.mapping_for(&first), Some(("the hospital", other)));
    settings.forget_mapping("the hospital");
    assert_eq!(
        settings.mapping_for(&first),
        Some(("the clinic before", guessed))
    );
    let unlike = table("RE Rx;Number;Exam date\n-1.00;12;01/02/2025\n");
    assert_eq!(settings.mapping_for(&unlike), None);
}

/// Two tablets that kept one each without knowing of each other: both count, and of one name the later.
#[test]
fn two_tablets_keep_both() {
    let first = table(FIRST);
    let guessed = Mapping::guess(&first);
    let mut desk = desk();
    for name in ["the clinic before", "the hospital"] {
        let mut settings = Settings::default();
        settings.keep_mapping(Saved::of(name, &first, &guessed));
        let mut planned = desk.story.put_settings(settings);
        planned.parents.clear();
        desk.write(planned);
    }
    let settings = desk.story.settings();
    let names: Vec<&str> = settings
        .mappings
        .iter()
        .map(|kept| kept.name.as_str())
        .collect();
    assert_eq!(names, ["the clinic before", "the hospital"]);
}
