//! The note for the care staff: which glasses when, which drops were given and what to watch for.

use ::words::papers::notes as say;
use chrono::NaiveDate;
use record::{Drops, Exam, Given, Glasses, Person, WornGlasses};

use super::note::NoteOptions;
use super::person_note::months;
use super::plain_words::{Effects, SIGNS, how_soon, mind_with, pairs, used_for};
use super::{act, who};
use crate::document::{Block, Document};
use crate::error::PaperError;

/// The note for the care staff, in large print, as written on a day.
///
/// # Errors
/// [`PaperError`], one sentence for each reason.
pub fn care_staff_note(
    person: &Person,
    exam: &Exam,
    options: &NoteOptions,
    written_on: NaiveDate,
) -> Result<Document, PaperError> {
    let blocks = [drops(exam), glasses(exam), next(exam)].concat();
    let who = who(person, exam);
    options.note(
        say::for_care_staff(),
        who,
        blocks,
        (person, exam),
        written_on,
    )
}

fn drops(exam: &Exam) -> Vec<Block> {
    let drops = exam.part::<Drops>().settled().map(|version| version.value);
    let Some(drops) = drops.filter(|drops| drops.each().next().is_some()) else {
        return vec![Block::Paragraph(say::no_drops().to_owned())];
    };
    let effects = Effects::of(drops);
    let mut blocks = vec![
        Block::Heading(say::drops_today().to_owned()),
        Block::List(drops.each().map(Given::in_words).collect()),
    ];
    if effects.wide {
        blocks.push(Block::Paragraph(say::pupils_wide(&effects.how_long())));
    }
    if effects.numb {
        blocks.push(Block::Paragraph(say::eyes_numb().to_owned()));
    }
    if effects.wide || effects.other {
        let mut signs = SIGNS.map(|sign| sign().to_owned()).to_vec();
        signs.push(say::needs_doctor().to_owned());
        blocks.push(act(say::help_at_once(), signs));
    }
    if !drops.told_staff.trim().is_empty() {
        blocks.push(Block::Paragraph(drops.told_staff.trim().to_owned()));
    }
    blocks
}

fn glasses(exam: &Exam) -> Vec<Block> {
    let decision = exam.decision().settled().map(|version| version.value);
    let mut lines = Vec::new();
    match decision.and_then(|decision| decision.glasses) {
        None => {}
        Some(Glasses::LeaveAlone) => {
            lines.push(say::glasses_stay().to_owned());
            lines.extend(worn(exam));
        }
        Some(Glasses::Prescribe) => {
            lines.push(say::new_glasses_come().to_owned());
            lines.extend(pairs(exam).iter().map(|(used, form, engraved)| {
                let named = engraved.as_ref();
                let named = named.map(|name| say::name_on_it(&name.trim()));
                let mind = mind_with(*used, *form).map(|mind| format!(" {mind}"));
                say::one_pair_named(
                    &used_for(*used),
                    &named.unwrap_or_default(),
                    &mind.unwrap_or_default(),
                )
            }));
            lines.push(say::clean_daily().to_owned());
        }
    }
    if lines.is_empty() {
        return Vec::new();
    }
    vec![
        Block::Heading(say::which_glasses().to_owned()),
        Block::List(lines),
    ]
}

/// The pairs that the person has, each with what it is for.
fn worn(exam: &Exam) -> Vec<String> {
    let worn = exam
        .part::<WornGlasses>()
        .settled()
        .map(|version| version.value);
    let pairs = worn
        .and_then(|worn| worn.pairs.done())
        .into_iter()
        .flatten();
    pairs
        .map(|pair| {
            let named = pair.name_on_it.done().map(|name| name.trim());
            let named = named.filter(|name| !name.is_empty());
            let named = named.map(|name| say::name_on_it(&name));
            say::one_pair_then(&used_for(pair.used_for), &named.unwrap_or_default())
        })
        .collect()
}

fn next(exam: &Exam) -> Vec<Block> {
    let Some(decision) = exam.decision().settled().map(|version| version.value) else {
        return Vec::new();
    };
    let mut lines = Vec::new();
    if let Some(refer) = &decision.refer {
        let soon = how_soon(refer.urgency);
        lines.push(say::sent_to(&refer.to.trim(), &soon));
    }
    if !decision.advice.trim().is_empty() {
        lines.push(decision.advice.trim().to_owned());
    }
    if let Some(recall) = &decision.recall {
        lines.push(say::seen_again(&months(recall.months)));
    }
    if lines.is_empty() {
        return Vec::new();
    }
    vec![
        Block::Heading(say::what_next().to_owned()),
        Block::List(lines),
    ]
}
