//! Every paper of the sample visit as PDF, in both languages, into the folder that is named, to be looked at.

use chrono::{DateTime, NaiveDateTime};
use papers::sample::{Desk, day, lens, orla, subjective};
use papers::{
    Document, InFrame, Letter, NoteOptions, Prescription, care_staff_note, fitting_sheet,
    lab_order, person_note, visit_summary, whole_record,
};
use record::{Eyes, Finding, Name, PersonDetails, Section, Stamp};
use std::path::Path;
use words::{Language, in_language};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = std::env::args().nth(1).ok_or("name a folder")?;
    let folder = Path::new(&folder);
    std::fs::create_dir_all(folder)?;
    for (language, short) in [(Language::English, "en"), (Language::German, "de")] {
        in_language(language, || write(folder, short))?;
    }
    Ok(())
}

fn write(folder: &Path, language: &str) -> Result<(), Box<dyn std::error::Error>> {
    for (name, document) in every()? {
        for (paper, size) in [(pdf::Paper::A4, "a4"), (pdf::Paper::Letter, "letter")] {
            let made = pdf::pdf(&document, paper)?;
            let name = format!("{language}-{name}-{size}.pdf");
            std::fs::write(folder.join(name), made.bytes)?;
        }
    }
    Ok(())
}

type Named = Vec<(String, Document)>;

fn every() -> Result<Named, papers::PaperError> {
    let full = Desk::full();
    let mut papers = of(&full, "")?;
    let far = PersonDetails {
        name: Name {
            given: "Zsófia-Éléonore d’Ærøskøbing".into(),
            family: "Ó Conchobhair-Šťastná of Lantern Quay".into(),
        },
        ..orla()
    };
    papers.extend(of(&Desk::full_of(far.clone()), "long-")?);
    let mut open = Desk::unsigned(far);
    let mut chosen = subjective();
    let Eyes { left, .. } = &mut chosen.eyes;
    *left = Finding::Unable {
        reason: "no view of the fundus, asleep at the end of the day, and would not be woken"
            .into(),
    };
    if let Finding::Done(right) = &mut chosen.eyes.right {
        right.lens = lens("−12.75 / +3.25 × 22.5");
    }
    open.put(Section::Subjective(chosen));
    let (person, exam, on) = (open.person(), open.exam(), day(2026, 3, 7));
    papers.push(("open-summary".into(), visit_summary(person, exam, on)?));
    papers.push((
        "open-letter".into(),
        Letter::proposed(person, exam)?.document(person, exam, on)?,
    ));
    for (name, given, family) in [
        ("hebrew-", "תמר", "בן־נמל"),
        ("arabic-", "نور الهدى", "المرفأ"),
    ] {
        let details = PersonDetails {
            name: Name {
                given: given.into(),
                family: family.into(),
            },
            ..orla()
        };
        papers.extend(of(&Desk::full_of(details), name)?);
    }
    Ok(papers)
}

fn of(desk: &Desk, of: &str) -> Result<Named, papers::PaperError> {
    let (person, exam, on) = (desk.person(), desk.exam(), day(2026, 3, 7));
    let frame = InFrame {
        middles_mm: Some(68.0),
        compensate: true,
    };
    let note = NoteOptions {
        contact: "Call the eye team if you are not sure.".into(),
        words: String::new(),
    };
    let papers = [
        (
            "prescription",
            Prescription::from_exam(person, exam, on)?.document(),
        ),
        (
            "order",
            lab_order(person, exam, &[frame, InFrame::default()], on)?,
        ),
        (
            "letter",
            Letter::proposed(person, exam)?.document(person, exam, on)?,
        ),
        ("person", person_note(person, exam, &note, on)?),
        ("staff", care_staff_note(person, exam, &note, on)?),
        ("summary", visit_summary(person, exam, on)?),
        ("fitting", fitting_sheet(person, exam, on)?),
    ];
    let whole = desk.story.whole(&person.id());
    let whole = whole.map(|whole| ("record", whole_record(&whole, &in_universal_time, on)));
    let named = papers
        .into_iter()
        .chain(whole)
        .map(|(name, paper)| (format!("{of}{name}"), paper));
    Ok(named.collect())
}

fn in_universal_time(stamp: Stamp) -> NaiveDateTime {
    let ms = stamp.wall_ms.try_into().ok();
    let time = ms.and_then(DateTime::from_timestamp_millis);
    time.unwrap_or_default().naive_utc()
}
