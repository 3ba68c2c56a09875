//! Bytes of the fifth layout that must never change; made as those in `frozen.rs` were.

use std::collections::BTreeMap;

use optics::change::Threshold;
use record::earlier_list::{Bare, DateOrder, Field, Saved};
use record::{Body, Entry, Eye, Settings};

use crate::frozen::entry;
use crate::samples::{bytes, names};

fn expected() -> Vec<(&'static str, Entry)> {
    let local = |value, source: &'static str| Threshold::new(value, source).unwrap();
    let settings = Settings {
        figures: BTreeMap::from([
            ("a-newer-figure".into(), local(1.5, "agreed")),
            (
                "pressure-high".into(),
                local(21.0, "harbour eye service, 2026"),
            ),
        ]),
        phrases: BTreeMap::from([("health".into(), vec!["gout".into(), "takes insulin".into()])]),
        ..Settings::default()
    };
    vec![
        ("settings", entry(81, &[80], Body::Settings(settings))),
        (
            "settings-bare",
            entry(80, &[], Body::Settings(Settings::default())),
        ),
    ]
}

#[test]
fn the_fifth_layout_is_frozen() {
    for (name, entry) in expected() {
        let frozen = bytes(&format!("v5-settings/{name}"));
        assert_eq!(Entry::from_cbor(&frozen).as_ref(), Ok(&entry), "{name}");
        assert_eq!(entry.to_cbor(), frozen, "{name}");
    }
}

#[test]
fn no_file_of_the_fifth_layout_is_left_unread() {
    let known: Vec<&str> = expected().iter().map(|(name, _)| *name).collect();
    assert_eq!(names("v5-settings"), known);
}

fn mappings() -> Entry {
    let saved = |name: &str, columns: &[(&str, Field)], dates, bare| Saved {
        name: name.into(),
        columns: columns
            .iter()
            .map(|(heading, field)| ((*heading).into(), *field))
            .collect(),
        dates,
        bare,
    };
    let first = [
        ("Number", Field::Identifier),
        ("Exam date", Field::On),
        ("RE Rx", Field::Lens(Eye::Right)),
        ("LE VA", Field::Acuity(Eye::Left)),
    ];
    let settings = Settings {
        mappings: vec![
            saved(
                "the clinic before",
                &first,
                DateOrder::MonthFirst,
                Some(Bare::Decimal),
            ),
            saved(
                "the hospital",
                &[("Remarks", Field::Note)],
                DateOrder::YearFirst,
                None,
            ),
        ],
        ..Settings::default()
    };
    entry(90, &[80], Body::Settings(settings))
}

#[test]
fn how_files_are_read_is_frozen() {
    let frozen = bytes("v6-mappings/settings");
    assert_eq!(Entry::from_cbor(&frozen).as_ref(), Ok(&mappings()));
    assert_eq!(mappings().to_cbor(), frozen);
    assert_eq!(names("v6-mappings"), ["settings"]);
}
