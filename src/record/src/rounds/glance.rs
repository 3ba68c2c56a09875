//! A round's status at a glance.

use ::words::record::rounds as say;
use std::fmt;

use super::{Round, Standing, VisitState};
use crate::sections::OneOf;
use crate::stamp::Stamp;
use crate::story::Story;

/// How many of a round stand how.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Glance {
    /// Still to be seen.
    pub to_see: usize,
    /// With an open exam.
    pub under_way: usize,
    /// With a signed exam.
    pub seen: usize,
    /// Marked otherwise: each mark that was given, and to how many.
    pub marked: Vec<(VisitState, usize)>,
    /// When the first exam was opened, if any was.
    pub started: Option<Stamp>,
}

impl Story {
    /// How many of a round stand how.
    pub fn glance(&self, round: &Round) -> Glance {
        let mut glance = Glance::default();
        let mut marks = [0; VisitState::MARKS.len()];
        for person in self.people_of(round) {
            let exam = match self.standing(round, &person.id()) {
                Standing::ToSee => {
                    glance.to_see += 1;
                    continue;
                }
                Standing::Marked(visit) => {
                    let mark = VisitState::MARKS
                        .iter()
                        .position(|mark| *mark == visit.state);
                    if let Some(at) = mark {
                        marks[at] += 1;
                    }
                    continue;
                }
                Standing::UnderWay(exam) => {
                    glance.under_way += 1;
                    exam
                }
                Standing::Seen(exam) => {
                    glance.seen += 1;
                    exam
                }
            };
            let opened = exam.opening.stamp;
            glance.started = Some(glance.started.map_or(opened, |first| first.min(opened)));
        }
        let given = VisitState::MARKS.into_iter().zip(marks);
        glance.marked = given.filter(|(_, count)| *count > 0).collect();
        glance
    }
}

impl Glance {
    /// Whether nobody is left to be seen and no exam is open.
    pub const fn is_done(&self) -> bool {
        self.to_see == 0 && self.under_way == 0
    }
}

impl fmt::Display for Glance {
    /// `12 to see · 1 under way · 4 done · 1 asleep`, leaving out what nobody is.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let ours = [
            (self.to_see, say::to_see()),
            (self.under_way, say::under_way()),
            (self.seen, say::done()),
        ];
        let marked = self
            .marked
            .iter()
            .map(|(state, count)| (*count, state.in_words()));
        let parts: Vec<String> = ours
            .into_iter()
            .chain(marked)
            .filter(|(count, _)| *count > 0)
            .map(|(count, word)| format!("{count} {word}"))
            .collect();
        if parts.is_empty() {
            return f.write_str(say::nobody_yet());
        }
        f.write_str(&parts.join(" \u{b7} "))
    }
}
