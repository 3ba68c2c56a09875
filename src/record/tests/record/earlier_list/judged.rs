//! Whose it is, which day, and what becomes of the good rows.

use record::earlier_list::{Earlier, Fault, Mapping, Table, judge, kept_aside};
use record::home_list::ToWrite;
use record::{ExamId, Story};
use uuid::Uuid;

use super::{ORLA, desk, judged, one};
use crate::desk::{Desk, day};

fn faults(text: &str, story: &Story) -> Vec<Option<String>> {
    let judged = judged(text, story);
    let first = |faults: &Vec<Fault>| faults[0].to_string();
    judged
        .iter()
        .map(|each| each.verdict.as_ref().err().map(first))
        .collect()
}

#[test]
fn whose_it_is_must_be_certain() {
    let text = "\
Name,DOB,Number,Exam date,RE Rx
Orla Pennyquick,31/01/1940,,04/03/2025,-1.00
,,1-3,04/03/2025,-1.00
Orla Pennyquick,31/01/1941,,04/03/2025,-1.00
Orla Pennyquick,,,04/03/2025,-1.00
Orla Pennyquick,,13,04/03/2025,-1.00
,04/02/1934,13,05/03/2025,-1.00
,,99,04/03/2025,-1.00
";
    let said = faults(text, &desk().story);
    let expected = [
        None,
        None,
        Some("line 4, Name: nobody on record is this: put them down first"),
        Some("line 5, Name: it needs a number, or a name and a date of birth"),
        Some("line 6, Number: on record this number is Ambrose Tidewell’s"),
        Some("line 7, Number: on record Ambrose Tidewell was born on another day"),
        Some("line 8, Number: nobody on record is this: put them down first"),
    ];
    assert_eq!(said, expected.map(|one| one.map(str::to_owned)));
}

#[test]
fn which_day_must_be_certain() {
    let mut desk = desk();
    desk.open(ExamId::from_uuid(Uuid::from_u128(5)), ORLA, day(2024, 6, 1));
    let text = "\
Number,Exam date,RE Rx
12,04/03/25,-1.00
12,,-1.00
12,31/02/2025,-1.00
12,05/03/2026,-1.00
12,01/06/2024,-1.00
12,04/03/2025,-2.00
";
    let said = faults(text, &desk.story);
    let expected = [
        None,
        Some("line 3, Exam date: it does not say on which day this was found"),
        Some("line 4, Exam date: “31/02/2025” is no date"),
        Some("line 5, Exam date: 5 March 2026 is still to come"),
        Some("line 6, Exam date: an exam of 1 June 2024 is on record already"),
        Some("line 7: the same person and day stand on line 2 already"),
    ];
    assert_eq!(said, expected.map(|one| one.map(str::to_owned)));
}

#[test]
fn a_row_is_taken_whole_or_not_at_all() {
    let faults = one("RE Rx;LE Rx;R IOP", "-1.00;1.00;900").unwrap_err();
    assert_eq!(
        faults.len(),
        2,
        "everything that is amiss is said: {faults:?}"
    );
    let nothing = one("RE Rx", "").unwrap_err();
    assert_eq!(nothing, ["line 2: it tells no finding"]);
}

#[test]
fn what_is_kept_aside_can_be_read_again() {
    let text = "Number;Exam date;RE Rx\n99;04/03/2025;-1.00\n12;04/03/2025;-1.00\n";
    let table = Table::read(text.as_bytes()).unwrap();
    let judged = judge(
        &table,
        &Mapping::guess(&table),
        &desk().story,
        day(2026, 3, 4),
    );
    let aside = kept_aside(&table, &judged, record::DateOrder::MonthFirst);
    let again = Table::read(aside.as_bytes()).unwrap();
    assert_eq!(again.rows.len(), 1);
    assert_eq!(again.rows[0].cells[2..], table.rows[0].cells);
}

/// Takes the rows; says how many entries that made.
fn take(desk: &mut Desk, rows: &[Earlier]) -> usize {
    let mut exams = 100_u128;
    let taken = desk.story.take_earlier(rows, || {
        exams += 1;
        ExamId::from_uuid(Uuid::from_u128(exams))
    });
    let taken = taken.unwrap();
    let count = taken.len();
    for ToWrite { planned, about } in taken {
        assert!(about.is_some(), "sealed under the person’s own key");
        desk.write(planned);
    }
    count
}

/// The same file once more: every row is known again, and rows that were judged before the first taking change nothing.
#[test]
fn taken_twice_it_stands_once() {
    let mut desk = desk();
    let text = "Number,Exam date,RE Rx\n12,04/03/2025,+2.50/-1.00x90\n13,05/03/2025,-1.00\n";
    let before = judged(text, &desk.story).into_iter();
    let rows: Vec<Earlier> = before.map(|each| each.verdict.unwrap()).collect();
    assert_eq!(take(&mut desk, &rows), 4);
    assert_eq!(
        faults(text, &desk.story),
        [
            Some("line 2, Exam date: findings of 4 March 2025 were taken over already".to_owned()),
            Some("line 3, Exam date: findings of 5 March 2025 were taken over already".to_owned()),
        ]
    );
    assert_eq!(take(&mut desk, &rows), 0);
    assert_eq!(desk.story.exams_of(&ORLA).len(), 1);
}

#[test]
fn taken_it_stands_as_last_times_findings() {
    let mut desk = desk();
    let text = "\
Number,Exam date,RE Rx,RE VA
12,04/03/2025,+2.50/-1.00x90,6/12
13,05/03/2025,-1.00,6/6
";
    let rows: Vec<_> = judged(text, &desk.story)
        .into_iter()
        .map(|each| each.verdict.unwrap())
        .collect();
    take(&mut desk, &rows);
    assert_eq!(desk.story.waiting(), 0, "each rests on the one before");

    let today = ExamId::from_uuid(Uuid::from_u128(200));
    desk.open(today, ORLA, day(2026, 3, 4));
    let exams = desk.story.exams_of(&ORLA);
    assert_eq!(exams.len(), 2);
    assert_eq!(exams[1].opened_on(), day(2025, 3, 4));
    assert!(exams[1].is_from_elsewhere(), "so it is no visit");
    assert!(!exams[1].is_signed(), "nobody here found it");
    let lens = exams[1]
        .subjective()
        .settled()
        .unwrap()
        .value
        .eyes
        .right
        .done();
    assert_eq!(lens.unwrap().lens.to_string(), "+2.50 / −1.00 × 90");
    let last = desk
        .story
        .last_before(&today, record::SectionKind::Subjective);
    assert!(last.is_some(), "it stands beside today’s");
}
