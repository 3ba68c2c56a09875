//! The papers, one a file. Each is built from a folded record with the functions that the screen uses, and says nothing that
//! the record does not.

mod care_staff;
mod fitting;
mod kind;
mod note;
mod order;
mod person_note;
mod plain_words;
mod prescription;
mod referral;
mod summary;
mod told;
mod whole_record;

use ::words::papers::documents as say;
pub use care_staff::care_staff_note;
pub use fitting::fitting_sheet;
pub use kind::{PaperKind, Wording};
pub use note::NoteOptions;
pub use order::{InFrame, lab_order};
pub use person_note::person_note;
pub use referral::{Finding, Letter};
pub use summary::visit_summary;
pub use told::Told;
pub use whole_record::whole_record;

use chrono::NaiveDate;
use optics::format::{plain, power};
use optics::{Axis, SphereCyl};
use record::{Exam, Person};

use crate::day::day;
use crate::document::{Block, Callout, Fact, Sign, Standing, Weight};
use crate::error::PaperError;
use crate::prescription::{amended, born};

/// The label of somebody's name.
pub(crate) fn name() -> &'static str {
    say::name()
}

/// The label of a number by which others know the person.
pub(crate) fn number() -> &'static str {
    say::number()
}

/// Refuses a paper about somebody else's exam.
fn same_person(person: &Person, exam: &Exam) -> Result<(), PaperError> {
    if exam.person() == person.id() {
        Ok(())
    } else {
        Err(PaperError::OtherPerson)
    }
}

/// Whom a paper is about, and when and where they were examined.
fn who(person: &Person, exam: &Exam) -> Vec<Fact> {
    let details = person.details();
    let born = born(person, exam.opened_on());
    let room = details.room.trim();
    let place = match (exam.place().trim(), room) {
        (place, "") => place.to_owned(),
        ("", room) => say::only_room(&room),
        (place, room) => say::place_room(&place, &room),
    };
    let mut facts = vec![
        Fact::new(say::name(), details.name.to_string()),
        Fact::new(born.label, born.value),
        Fact::new(say::seen(), day(exam.opened_on())),
        Fact::new(say::at(), place),
    ];
    facts.push(Fact::new(number(), details.numbers_in_words()));
    facts.retain(|fact| !fact.value.trim().is_empty());
    facts
}

/// What stands at the foot of every page, so that loose pages find one another.
fn foot(person: &Person, exam: &Exam) -> String {
    say::foot_seen(&person.details().name, &day(exam.opened_on()))
}

/// What was changed after signing; nothing for an exam as first signed.
fn amendments(exam: &Exam) -> Option<Block> {
    let lines: Vec<String> = exam.amendments().iter().map(amended).collect();
    (!lines.is_empty()).then(|| mind(say::changed_after_signing(), lines))
}

/// Who signed the exam, else a line for a pen.
fn signed(exam: &Exam, written_on: NaiveDate) -> Block {
    let last = exam.signatures().last().map(|last| last.signer.to_owned());
    Block::Sign(match last {
        Some(by) => Sign::Signed {
            by,
            on: say::written_on(&day(written_on)),
        },
        None => Sign::Open {
            whom: say::the_examiner().to_owned(),
        },
    })
}

fn mind(title: &str, lines: Vec<String>) -> Block {
    callout(Weight::Mind, title, lines)
}

fn act(title: &str, lines: Vec<String>) -> Block {
    callout(Weight::Act, title, lines)
}

fn callout(weight: Weight, title: &str, lines: Vec<String>) -> Block {
    Block::Callout(Callout {
        weight,
        title: title.to_owned(),
        lines,
    })
}

/// Sphere, cylinder and axis as three cells.
fn cells(lens: &SphereCyl) -> [String; 3] {
    let sphere = power(lens.sphere);
    match lens.cylinder {
        Some(cylinder) => [sphere, power(cylinder.power()), axis(cylinder.axis())],
        None => [sphere, String::new(), String::new()],
    }
}

/// `90`, `22.5`; never 0, which is written 180.
pub(crate) fn axis(axis: Axis) -> String {
    match plain(axis.degrees(), 1).as_str() {
        "0" => "180".to_owned(),
        text => text.to_owned(),
    }
}

/// How a paper stands, and why a paper can't be made of what is unsettled.
fn standing(person: &Person, exam: &Exam) -> Result<Standing, PaperError> {
    same_person(person, exam)?;
    if exam.has_unread() {
        return Err(PaperError::WrittenByNewer);
    }
    match exam.unsettled().first() {
        Some(kind) => Err(PaperError::TwoVersions(*kind)),
        None => Ok(Standing::of(exam)),
    }
}
