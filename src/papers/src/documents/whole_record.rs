//! Everything that is on record of one person, for the person or for whoever keeps the record next: details, rounds, and each
//! exam with every version of every section. Nothing is chosen and nothing is left out.

use ::words::papers::{documents, whole_record as say};
use chrono::{NaiveDate, NaiveDateTime};
use record::{
    Exam, FarUnit, Line, Local, Manner, OnRound, OneOf, Person, PersonDetails, Rule, Said,
    SectionKind, Version, VisitState, Whole, Written,
};

use super::summary::set;
use super::{amendments, mind};
use crate::day::day;
use crate::document::{Block, Document, Fact, Print, Standing};
use crate::prescription::born;

/// The record as it stands on a day. A stamp has no time zone: `local` gives it one.
pub fn whole_record(whole: &Whole<'_>, local: Local<'_>, written_on: NaiveDate) -> Document {
    let name = &whole.person.details().name;
    let mut blocks = vec![mind(say::what_this_is(), vec![about(whole)])];
    blocks.extend(who_it_is(whole, local));
    blocks.extend(rounds(&whole.rounds, local));
    for exam in &whole.exams {
        blocks.extend(one_exam(exam, local));
    }
    Document {
        title: say::title().to_owned(),
        standing: Standing::Gathered,
        print: Print::Ordinary,
        who: who(whole.person, written_on),
        foot: say::foot(name, &day(written_on)),
        blocks,
    }
}

fn who(person: &Person, on: NaiveDate) -> Vec<Fact> {
    let born = born(person, on);
    vec![
        Fact::new(documents::name(), person.details().name.to_string()),
        Fact::new(born.label, born.value),
        Fact::new(say::written_on(), day(on)),
    ]
}

fn about(whole: &Whole<'_>) -> String {
    say::about(&say::exams(whole.exams.len()))
}

/// `4 March 2026, 09:10`.
fn moment(at: NaiveDateTime) -> String {
    Manner::default().moment(at)
}

fn wrote<T>(version: &Version<'_, T>, local: Local<'_>) -> String {
    let at = moment(local(version.entry.stamp));
    say::written_by(&version.entry.author, &at)
}

/// `: because`, or nothing.
fn because(why: &str) -> String {
    match why.trim() {
        "" => String::new(),
        why => format!(": {why}"),
    }
}

/// The details, every version, and which records are one person.
fn who_it_is(whole: &Whole<'_>, local: Local<'_>) -> Vec<Block> {
    let mut blocks = vec![Block::Heading(say::who_person_is().to_owned())];
    let all = whole.details.len();
    for (at, version) in whole.details.iter().enumerate() {
        let wrote = wrote(version, local);
        blocks.push(Block::Paragraph(match all {
            1 => wrote,
            _ => say::version_written(&(at + 1), &all, &wrote),
        }));
        blocks.push(Block::Facts(details(version.value)));
    }
    let joined = whole.joined.iter().map(|joined| {
        let (by, at) = (&joined.entry.author, moment(local(joined.entry.stamp)));
        let why = because(&joined.same.why);
        say::said_one_person(by, &at, &why)
    });
    let joined: Vec<String> = joined.collect();
    blocks.extend((!joined.is_empty()).then_some(Block::List(joined)));
    blocks
}

fn details(details: &PersonDetails) -> Vec<Fact> {
    let mut facts = vec![
        Fact::new(documents::name(), details.name.to_string()),
        Fact::new(say::lives_at(), details.place.clone()),
        Fact::new(say::room(), details.room.clone()),
        Fact::new(say::before_knocking(), details.note.clone()),
    ];
    facts.extend(details.lines().into_iter().map(fact));
    facts.retain(|fact| !fact.value.trim().is_empty());
    facts
}

fn fact(Line { label, said }: Line) -> Fact {
    let value = match said {
        Said::One(words) => words,
        Said::Eyes(eyes) => say::right_left(&eyes.right, &eyes.left),
    };
    Fact::new(label, value)
}

/// The rounds on which the person was to be visited, with what was marked at the door.
fn rounds(rounds: &[OnRound<'_>], local: Local<'_>) -> Vec<Block> {
    if rounds.is_empty() {
        return Vec::new();
    }
    let lines = rounds.iter().map(|on| one_round(on, local));
    vec![
        Block::Heading(say::rounds().to_owned()),
        Block::List(lines.collect()),
    ]
}

fn one_round(on: &OnRound<'_>, local: Local<'_>) -> String {
    let details = on.round.details();
    let place = on.place.map(|place| place.details().name.clone());
    let off = details.called_off.then(|| say::called_off().to_owned());
    let round = [Some(day(details.date)), place, off];
    let round: Vec<String> = round.into_iter().flatten().collect();
    let marks = on.marks.iter().map(|mark| {
        let state = match mark.value.state {
            VisitState::ToSee => say::mark_taken_back(),
            state => state.in_words(),
        };
        let word = because(&mark.value.word);
        format!("{state}{word} ({})", wrote(mark, local))
    });
    let said: Vec<String> = std::iter::once(round.join(", ")).chain(marks).collect();
    said.join("; ")
}

fn one_exam(exam: &Exam, local: Local<'_>) -> Vec<Block> {
    let on = day(exam.opened_on());
    let place = match exam.place().trim() {
        "" => String::new(),
        place => format!(", {place}"),
    };
    let heading = if exam.is_from_elsewhere() {
        say::elsewhere_of(&on, &place)
    } else {
        say::exam_of(&on, &place)
    };
    let mut blocks = vec![
        Block::Heading(heading),
        Block::List(signatures(exam, local)),
    ];
    blocks.extend(amendments(exam));
    if exam.has_unread() {
        blocks.push(mind(say::not_all_of_it(), vec![say::unread().to_owned()]));
    }
    for kind in SectionKind::ALL {
        blocks.extend(section(exam, kind, &on, local));
    }
    blocks.extend(answers(exam, local));
    blocks
}

fn signatures(exam: &Exam, local: Local<'_>) -> Vec<String> {
    let signed = exam.signatures().into_iter().map(|signature| {
        let at = moment(local(signature.entry.stamp));
        say::signed_by(&signature.signer, &at)
    });
    let signed: Vec<String> = signed.collect();
    if signed.is_empty() {
        vec![documents::not_signed().to_owned()]
    } else {
        signed
    }
}

/// Every version of a section.
fn section(exam: &Exam, kind: SectionKind, on: &str, local: Local<'_>) -> Vec<Block> {
    let versions = exam.versions(kind, local, FarUnit::Metres);
    if versions.is_empty() {
        return Vec::new();
    }
    let mut blocks = vec![Block::Heading(format!("{}, {on}", kind.title()))];
    for version in &versions {
        blocks.push(Block::Paragraph(told(version, versions.len())));
        let lines = version.version.value.lines();
        if lines.is_empty() {
            blocks.push(Block::Paragraph(say::nothing_filled_in().to_owned()));
        }
        blocks.extend(set(lines));
    }
    blocks
}

/// `version 1 of 2, replaced; written by M. Farrow, 4 March 2026, 09:10; signed by M. Farrow, optometrist`.
fn told(version: &Written<'_>, all: usize) -> String {
    let number = match (all, version.stands) {
        (1, _) => String::new(),
        (_, true) => say::version_holds(&version.number, &all),
        (_, false) => say::version_replaced(&version.number, &all),
    };
    let why = version.reason.map(because).unwrap_or_default();
    let signed = match version.signed_by.as_slice() {
        [] => String::new(),
        by => say::and_signed_by(&by.join(", ")),
    };
    let (by, at) = (version.author(), moment(version.at));
    let wrote = say::written_by(&by, &at);
    format!("{number}{wrote}{why}{signed}")
}

/// What the second look asked, with what was answered.
fn answers(exam: &Exam, local: Local<'_>) -> Vec<Block> {
    let lines = exam.answers().into_iter().map(|answer| {
        let asked = answer.rule().map_or_else(say::newer_question, Rule::name);
        let eye = answer.answered.eye.map(|eye| say::of_eye(&eye.said()));
        let eye = eye.unwrap_or_default();
        let (by, at) = (&answer.entry.author, moment(local(answer.entry.stamp)));
        let why = because(&answer.answered.reason);
        format!("{asked}{eye}{why} ({by}, {at})")
    });
    let lines: Vec<String> = lines.collect();
    if lines.is_empty() {
        return Vec::new();
    }
    vec![
        Block::Heading(say::second_look().to_owned()),
        Block::List(lines),
    ]
}
