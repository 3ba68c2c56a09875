//! The order as whoever makes the glasses reads it: every pair with its powers, its prism resolved, and how far each lens is
//! moved in its frame.

use ::words::papers::order as say;
use chrono::NaiveDate;
use optics::format::{plain, power, signed};
use optics::prism::{Decentration, Prism};
use optics::{Eye, SphereCyl, vertex};
use record::{Exam, Order, OrderedLens, OrderedPair, Person};

use super::{amendments, cells, foot, mind, signed as sign, standing, who};
use crate::cautions;
use crate::day::day;
use crate::document::{Block, Document, Fact, LensCells, LensRow, LensTable, Print};
use crate::error::PaperError;

/// What is told of a pair's frame beside the order, pair by pair.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct InFrame {
    /// Between the middles of the frame's two eyes, in millimetres. With it the paper says how far each lens is moved.
    pub middles_mm: Option<f64>,
    /// Whether the powers are to be made for the frame's vertex distance where it differs from the trial frame's.
    pub compensate: bool,
}

/// The order of a signed exam, as written on a day. `frames` goes with the order's pairs by place; a pair beyond its end has
/// nothing told.
///
/// # Errors
/// [`PaperError`], one sentence for each reason; [`PaperError::NoOrder`] where nothing is ordered.
pub fn lab_order(
    person: &Person,
    exam: &Exam,
    frames: &[InFrame],
    written_on: NaiveDate,
) -> Result<Document, PaperError> {
    let standing = standing(person, exam)?;
    let order = exam.part::<Order>().settled().map(|version| version.value);
    let order = order.filter(|order| !order.pairs.is_empty());
    let order = order.ok_or(PaperError::NoOrder)?;
    let subjective = exam.subjective().settled().map(|version| version.value);
    let tried_mm = subjective.and_then(|chosen| chosen.vertex_mm);
    let mut blocks = vec![];
    let sent = order
        .sent_on
        .map(|date| Fact::new(say::sent_on(), day(date)));
    let made_by = Some(Fact::new(say::made_by(), order.made_by.trim()));
    let facts: Vec<Fact> = [made_by.filter(|fact| !fact.value.is_empty()), sent]
        .into_iter()
        .flatten()
        .collect();
    if !facts.is_empty() {
        blocks.push(Block::Facts(facts));
    }
    for (place, pair) in order.pairs.iter().enumerate() {
        let frame = frames.get(place).copied().unwrap_or_default();
        blocks.extend(
            Pair {
                ordered: pair,
                frame,
                tried_mm,
            }
            .blocks(place),
        );
    }
    blocks.extend(amendments(exam));
    blocks.push(mind(say::for_makers(), cautions::all(exam, subjective)));
    blocks.push(sign(exam, written_on));
    Ok(Document {
        title: say::title().to_owned(),
        standing,
        print: Print::Ordinary,
        who: who(person, exam),
        blocks,
        foot: foot(person, exam),
    })
}

/// One pair with what is told of its frame.
struct Pair<'a> {
    ordered: &'a OrderedPair,
    frame: InFrame,
    tried_mm: Option<f64>,
}

impl Pair<'_> {
    fn blocks(&self, place: usize) -> Vec<Block> {
        let head = [
            say::sphere(),
            say::cylinder(),
            say::axis(),
            say::addition(),
            say::prism(),
            say::centre(),
            say::height(),
        ];
        let lenses = LensTable {
            head: head.map(str::to_owned).to_vec(),
            rows: Eye::BOTH.map(|eye| self.row(eye)).to_vec(),
        };
        let mut blocks = vec![
            Block::Heading(say::pair(&(place + 1), &self.ordered.heading())),
            Block::Lenses(lenses.without_empty_columns()),
        ];
        let facts = self.facts();
        if !facts.is_empty() {
            blocks.push(Block::Facts(facts));
        }
        let told: Vec<String> = Eye::BOTH.iter().flat_map(|eye| self.told(*eye)).collect();
        if !told.is_empty() {
            blocks.push(Block::List(told));
        }
        blocks
    }

    fn row(&self, eye: Eye) -> LensRow {
        let lens = match self.ordered.lenses.of(eye) {
            None => LensCells::Note(say::no_lens().to_owned()),
            Some(lens) => {
                let [sphere, cylinder, axis] = cells(&self.to_make(lens));
                let mm = |length: Option<f64>| {
                    length.map_or_else(String::new, |mm| format!("{} mm", plain(mm, 1)))
                };
                LensCells::Figures(vec![
                    sphere,
                    cylinder,
                    axis,
                    lens.add_d.map_or_else(String::new, power),
                    lens.prism
                        .map_or_else(String::new, |prism| prism.written(eye)),
                    mm(lens.centre_mm),
                    mm(lens.height_mm),
                ])
            }
        };
        LensRow {
            eye: eye.said().to_owned(),
            lens,
        }
    }

    /// Where the lens is to be made for another distance than it was tried at: from where to where, in millimetres.
    fn moved(&self) -> Option<(f64, f64)> {
        let (tried, worn) = (self.tried_mm?, self.ordered.vertex_mm?);
        (self.frame.compensate && (tried - worn).abs() > f64::EPSILON).then_some((tried, worn))
    }

    /// The power to make: as ordered, or what does the same at the frame's distance.
    fn to_make(&self, lens: &OrderedLens) -> SphereCyl {
        let moved = self.moved();
        let there = moved
            .and_then(|(tried, worn)| vertex::effective_sphero_cyl(&lens.lens, tried, worn).ok());
        there.unwrap_or(lens.lens)
    }

    fn facts(&self) -> Vec<Fact> {
        let pair = self.ordered;
        let mm = |mm: f64| format!("{} mm", plain(mm, 1));
        let mut facts = vec![
            Fact::new(say::frame(), pair.frame.trim()),
            Fact::new(
                say::between_middles(),
                self.frame.middles_mm.map_or_else(String::new, mm),
            ),
            Fact::new(say::lenses(), pair.lens_note.trim()),
            Fact::new(
                say::vertex_distance(),
                pair.vertex_mm.map_or_else(String::new, mm),
            ),
            Fact::new(
                say::engrave(),
                pair.engraved.as_deref().unwrap_or_default().trim(),
            ),
        ];
        facts.retain(|fact| !fact.value.is_empty());
        facts
    }

    /// What has to be said of one lens beside its figures, one sentence each.
    fn told(&self, eye: Eye) -> Vec<String> {
        let Some(lens) = self.ordered.lenses.of(eye) else {
            return Vec::new();
        };
        let made = self.to_make(lens);
        [
            self.compensated(eye, lens, &made),
            self.moved_in_frame(eye, lens),
            lens.prism.and_then(|prism| resolved(eye, prism)),
            lens.prism.and_then(|prism| by_moving(eye, &made, prism)),
        ]
        .into_iter()
        .flatten()
        .collect()
    }

    fn compensated(&self, eye: Eye, lens: &OrderedLens, made: &SphereCyl) -> Option<String> {
        let (tried, worn) = self.moved()?;
        let as_written = made.to_string();
        (as_written != lens.lens.to_string()).then(|| {
            say::tried_and_made(
                &eye.said(),
                &lens.lens,
                &plain(tried, 1),
                &as_written,
                &plain(worn, 1),
            )
        })
    }

    fn moved_in_frame(&self, eye: Eye, lens: &OrderedLens) -> Option<String> {
        let (middles, centre) = (self.frame.middles_mm?, lens.centre_mm?);
        let moved = Decentration::to_pupil(eye, middles, centre)
            .ok()?
            .in_mm(eye);
        let way = if moved < 0.0 {
            say::move_out()
        } else {
            say::move_in()
        };
        Some(say::move_from_middle(
            &eye.said(),
            &plain(moved.abs(), 1),
            &way,
        ))
    }
}

/// A prism that stands askew, by the compass beside its parts.
fn resolved(eye: Eye, prism: Prism) -> Option<String> {
    let askew = prism.written(eye).contains('&');
    askew.then(|| say::prism_as_one(&eye.said(), &prism.written(eye), &prism))
}

/// How far the lens would have to be moved to have its prism; nothing where moving does not give it.
fn by_moving(eye: Eye, lens: &SphereCyl, prism: Prism) -> Option<String> {
    if prism.amount() == 0.0 {
        return None;
    }
    let word = eye.said();
    let Ok(moved) = Decentration::wanted(lens, prism) else {
        return Some(say::grind_prism(&word));
    };
    let (inward, up) = (moved.in_mm(eye), moved.up_mm());
    let part = |mm: f64, [ahead, back]: [&str; 2]| {
        let written = signed(mm.abs(), 1);
        let way = if mm < 0.0 { back } else { ahead };
        (mm.abs() >= SHOWN_MM).then(|| format!("{} mm {way}", written.trim_start_matches('+')))
    };
    let parts: Vec<String> = [
        part(up, [say::up(), say::down()]),
        part(inward, [say::in_ward(), say::out_ward()]),
    ]
    .into_iter()
    .flatten()
    .collect();
    (!parts.is_empty()).then(|| say::prism_by_moving(&word, &parts.join(say::and())))
}

/// Less than this is written 0.0.
const SHOWN_MM: f64 = 0.05;
