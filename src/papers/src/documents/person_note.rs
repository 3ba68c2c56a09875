//! The note for the person: what was done today, which glasses are for what, what to watch for.

use ::words::papers::notes as say;
use chrono::NaiveDate;
use record::{Drops, Exam, Glasses, Person};

use super::note::NoteOptions;
use super::plain_words::{Effects, how_soon, mind_with, pairs, used_for};
use super::{act, who};
use crate::day::day;
use crate::document::{Block, Document};
use crate::error::PaperError;

/// The note for the person, in large print, as written on a day.
///
/// # Errors
/// [`PaperError`], one sentence for each reason.
pub fn person_note(
    person: &Person,
    exam: &Exam,
    options: &NoteOptions,
    written_on: NaiveDate,
) -> Result<Document, PaperError> {
    let looked = Block::Paragraph(say::we_looked(&day(exam.opened_on())));
    let blocks = [vec![looked], glasses(exam), drops(exam), next(exam)].concat();
    let who = who(person, exam).into_iter().take(1).collect();
    options.note(
        say::about_your_eyes(),
        who,
        blocks,
        (person, exam),
        written_on,
    )
}

fn glasses(exam: &Exam) -> Vec<Block> {
    let decision = exam.decision().settled().map(|version| version.value);
    let heading = Block::Heading(say::your_glasses().to_owned());
    match decision.and_then(|decision| decision.glasses) {
        None => Vec::new(),
        Some(Glasses::LeaveAlone) => vec![heading, Block::Paragraph(say::keep_glasses().into())],
        Some(Glasses::Prescribe) => {
            let each: Vec<String> = pairs(exam)
                .iter()
                .map(|(used, form, engraved)| {
                    let named = engraved.as_ref().map(|name| say::has_on_it(&name.trim()));
                    let mind = mind_with(*used, *form).map(str::to_owned);
                    let first = say::one_pair(&used_for(*used));
                    let said = std::iter::once(first).chain(named).chain(mind);
                    said.collect::<Vec<_>>().join(" ")
                })
                .collect();
            let mut blocks = vec![heading, Block::Paragraph(say::new_glasses().into())];
            if !each.is_empty() {
                blocks.push(Block::List(each));
            }
            blocks
        }
    }
}

fn drops(exam: &Exam) -> Vec<Block> {
    let drops = exam.part::<Drops>().settled().map(|version| version.value);
    let Some(drops) = drops.filter(|drops| drops.each().next().is_some()) else {
        return Vec::new();
    };
    let effects = Effects::of(drops);
    let mut lines = Vec::new();
    if effects.wide {
        lines.push(say::sight_blurred(&effects.how_long()));
        lines.push(say::do_not_drive().to_owned());
        lines.push(say::take_care().to_owned());
    }
    if effects.numb {
        lines.push(say::eyes_were_numb().to_owned());
    }
    if effects.yellow {
        lines.push(say::eyes_yellow().to_owned());
    }
    let mut blocks = vec![Block::Heading(say::drops().to_owned())];
    blocks.push(Block::Paragraph(say::had_drops().to_owned()));
    if !lines.is_empty() {
        blocks.push(Block::List(lines));
    }
    if effects.wide || effects.other {
        blocks.push(act(
            say::tell_at_once(),
            [
                say::eye_hurts(),
                say::eye_goes_red(),
                say::rings_round_lights(),
                say::feel_sick(),
            ]
            .map(str::to_owned)
            .to_vec(),
        ));
    }
    blocks
}

fn next(exam: &Exam) -> Vec<Block> {
    let Some(decision) = exam.decision().settled().map(|version| version.value) else {
        return Vec::new();
    };
    let mut blocks = Vec::new();
    if let Some(refer) = &decision.refer {
        blocks.push(Block::Paragraph(say::somebody_else_looks(
            &refer.to.trim(),
            &how_soon(refer.urgency),
        )));
    }
    if !decision.advice.trim().is_empty() {
        blocks.push(Block::Paragraph(decision.advice.trim().to_owned()));
    }
    if let Some(recall) = &decision.recall {
        blocks.push(Block::Paragraph(say::look_again(&months(recall.months))));
    }
    if !blocks.is_empty() {
        blocks.insert(0, Block::Heading(say::what_next().to_owned()));
    }
    blocks
}

/// `6 months`, `a year`, `2 years`.
pub(super) fn months(months: u16) -> String {
    match (months / 12, months % 12) {
        (1, 0) => say::a_year().to_owned(),
        (years, 0) if years > 0 => say::years(&years),
        (0, 1) => say::a_month().to_owned(),
        _ => say::months(&months),
    }
}
