//! What a file is said to hold is what it holds. No outside source: the sentence is held against the file's own content.

use papers::log::Column;
use papers::sample::{Desk, day};
use papers::{PaperKind, Wording, holds};

#[test]
fn a_paper_names_what_its_head_tells_of_somebody() {
    let desk = Desk::full();
    let paper = |kind: PaperKind| {
        let wording = Wording::default();
        let made = kind.document(desk.person(), desk.exam(), &wording, day(2026, 3, 7));
        holds::paper(&made.unwrap())
    };
    assert!(paper(PaperKind::Summary).contains("name and date of birth"));
    // The note in large print tells the name alone.
    assert!(paper(PaperKind::Person).contains("the person’s name. "));
    assert!(paper(PaperKind::Person).contains("not encrypted any more"));
}

#[test]
fn a_log_without_personal_columns_does_not_promise_that_nobody_can_be_told() {
    let bare = Column::without_personal(Column::ALL);
    let said = holds::log(3, &bare);
    assert!(said.contains("3 visits without names"));
    assert!(said.contains("may still be told"));
    assert!(
        holds::log(1, &[Column::Date, Column::Person])
            .contains("one visit with what says who somebody is: person")
    );
}
