//! The glasses that came, each measure drawn against its limit, and how they were fitted.

use ::words::papers::documents as say;
use chrono::NaiveDate;
use optics::tolerance::{Basis, Outcome, Report, Verdict};
use record::{Exam, Fitted, Fitting, OneOf, Order, Person, Section};

use super::summary::set;
use super::{act, foot, mind, signed, standing, who};
use crate::document::{Against, Block, Document, Measure, Print};
use crate::error::PaperError;

/// The sheet of an exam's fitting, as written on a day.
///
/// # Errors
/// [`PaperError`], one sentence for each reason; [`PaperError::NoFitting`] where no glasses came.
pub fn fitting_sheet(
    person: &Person,
    exam: &Exam,
    written_on: NaiveDate,
) -> Result<Document, PaperError> {
    let standing = standing(person, exam)?;
    let fitting = exam
        .part::<Fitting>()
        .settled()
        .map(|version| version.value);
    let fitting = fitting.filter(|fitting| !fitting.pairs.is_empty());
    let fitting = fitting.ok_or(PaperError::NoFitting)?;
    let order = exam.part::<Order>().settled().map(|version| version.value);
    let mut blocks = Vec::new();
    for (place, pair) in fitting.pairs.iter().enumerate() {
        blocks.push(Block::Heading(heading(pair, order)));
        let alone = Fitting {
            pairs: vec![pair.clone()],
        };
        blocks.extend(set(Section::Fitting(alone).lines()));
        match order.and_then(|order| fitting.report(place, order)) {
            Some(report) => blocks.extend(judged(&report)),
            None => blocks.push(mind(
                say::not_judged(),
                vec![say::both_lenses_needed().into()],
            )),
        }
    }
    blocks.push(signed(exam, written_on));
    Ok(Document {
        title: say::fitting().to_owned(),
        standing,
        print: Print::Ordinary,
        who: who(person, exam),
        blocks,
        foot: foot(person, exam),
    })
}

/// `Pair 1: near, single vision, judged by ISO 21987`.
fn heading(pair: &Fitted, order: Option<&Order>) -> String {
    let place = usize::from(pair.pair);
    let ordered = order.and_then(|order| order.pairs.get(place));
    let what = ordered.map_or_else(
        || say::not_in_order().to_owned(),
        record::OrderedPair::heading,
    );
    say::pair_judged(&(place + 1), &what, &pair.judged_by.in_words())
}

fn judged(report: &Report) -> Vec<Block> {
    let mut blocks: Vec<Block> = Vec::new();
    let outside = report
        .verdicts
        .iter()
        .filter(|verdict| verdict.outcome == Outcome::Outside);
    let outside: Vec<String> = outside.map(|verdict| verdict.what.to_string()).collect();
    if !outside.is_empty() {
        blocks.push(act(say::do_not_fit(), outside));
    }
    blocks.extend(
        report
            .verdicts
            .iter()
            .map(|verdict| Block::Measure(drawn(verdict))),
    );
    blocks.extend(report.unjudged.iter().map(|left| {
        Block::Measure(Measure {
            label: left.what.to_string(),
            part: None,
            against: Against::NotJudged,
            stands: say::not_judged().to_owned(),
            sentence: without_label(&left.sentence()),
        })
    }));
    let from_memory = |verdict: &Verdict| verdict.basis == Basis::FromMemory;
    if report.verdicts.iter().any(from_memory) {
        blocks.push(Block::Paragraph(say::limit_from_memory().to_owned()));
    }
    blocks
}

/// Marks a limit that nobody has seen in print.
const FROM_MEMORY: &str = "*";

/// The comparison in words; where its limit is from memory a mark stands for that.
fn marked(verdict: &Verdict) -> String {
    let said = without_label(&verdict.sentence());
    match (verdict.basis, said.split_once(" (")) {
        (Basis::FromMemory, Some((said, _))) => format!("{said} {FROM_MEMORY}"),
        _ => said,
    }
}

fn drawn(verdict: &Verdict) -> Measure {
    let (against, stands) = match verdict.outcome {
        Outcome::Within => (Against::Within, say::within()),
        Outcome::Borderline => (Against::Borderline, say::borderline()),
        Outcome::Outside => (Against::Outside, say::outside()),
    };
    let limit = verdict.limit.value();
    Measure {
        label: verdict.what.to_string(),
        part: (limit > 0.0).then(|| verdict.off.value() / limit),
        against,
        stands: stands.to_owned(),
        sentence: marked(verdict),
    }
}

/// The label stands beside it already.
fn without_label(sentence: &str) -> String {
    let said = sentence.split_once(": ");
    said.map_or(sentence, |(_, said)| said).to_owned()
}
