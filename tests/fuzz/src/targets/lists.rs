//! Files that others wrote: a home's list, earlier findings, FHIR.

use crate::seeds::texts;
use fhir::bundle_text;
use papers::sample::{Desk, day, orla, subjective};
use record::home_list::{Table, kept_aside};
use record::{DateOrder, Section, Story, earlier_list, home_list};

pub fn homes() -> Vec<Vec<u8>> {
    texts(&[
        "Name,DOB,Room,Floor\n\"Pennyquick, Orla\",31/01/1940,14,Ground\nPiers Oakhollow,1938-05-02,3,First\n",
        "Bewohner der Woche\nNachname;Vorname;Geburtsdatum;Zimmer\nØrland;Odd;2.1.33;7\n;;;\n",
        "Surname\tFirst name\tBorn\nOakhollow\tPiers\t12/31/1939\n",
    ])
}

/// Everybody in a list is good or kept aside with a reason.
pub fn home(bytes: &[u8]) {
    let Ok(table) = Table::read(bytes) else {
        return;
    };
    let mapping = home_list::Mapping::guess(&table);
    let _ = mapping.check();
    let judged = home_list::judge(
        &table,
        &mapping,
        &Story::default(),
        "Larkfield House",
        day(2026, 3, 7),
    );
    assert_eq!(judged.len(), table.rows.len());
    Table::read(kept_aside(&table, &judged, DateOrder::DayFirst).as_bytes()).err();
}

pub fn earlier_ones() -> Vec<Vec<u8>> {
    texts(&[
        "Name,DOB,Date,R sphere,R cyl,R axis,L sphere,L cyl,L axis,Add,R VA,L VA\nOrla Pennyquick,31/01/1940,2/5/2024,+2.50,-1.00,90,+2.25,-0.75,85,2.50,6/9,0.5\n",
        "Name;Geburtsdatum;Datum;R Sph;R Zyl;R Achse\nOdd Ørland;2.1.33;3.4.2023;250;-75;180\n",
    ])
}

/// Every row of earlier findings is good or kept aside with a reason.
pub fn earlier(bytes: &[u8]) {
    let Ok(table) = Table::read(bytes) else {
        return;
    };
    let mapping = earlier_list::Mapping::guess(&table);
    let _ = mapping.check();
    let judged = earlier_list::judge(&table, &mapping, &Story::default(), day(2026, 3, 7));
    assert_eq!(judged.len(), table.rows.len());
    let _ = kept_aside(&table, &judged, DateOrder::DayFirst);
}

pub fn bundles() -> Vec<Vec<u8>> {
    // As in FHIR's own page on `VisionPrescription` (R4), shortened.
    let one = r#"{"resourceType":"VisionPrescription","status":"active","dateWritten":"2014-06-15",
        "lensSpecification":[{"eye":"right","sphere":-2.0,"cylinder":-0.5,"axis":90,
        "prism":[{"amount":0.5,"base":"down"}],"add":2.0,"note":[{"text":"worn"}]}]}"#;
    let full = Desk::full();
    let mut short = Desk::unsigned(orla());
    short.put(Section::Subjective(subjective()));
    [full, short]
        .iter()
        .map(|desk| bundle_text([(desk.person(), desk.exam())]).into_bytes())
        .chain([one.as_bytes().to_vec()])
        .collect()
}

/// Every prescription in a bundle is in sections that hold what can be written down.
pub fn fhir(bytes: &[u8]) {
    let Ok(imported) = fhir::import(&String::from_utf8_lossy(bytes)) else {
        return;
    };
    for earlier in &imported.earlier {
        let sections = earlier.sections();
        for section in &sections {
            let wrong = record::check(section);
            assert!(wrong.is_empty(), "{wrong:?}");
        }
    }
}
