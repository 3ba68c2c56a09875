//! The cup as a part of the disc, with how it was viewed: through a narrow pupil it is a guess.

use super::{Measure, Noted, settled};
use crate::exam::Exam;
use crate::finding::Eye;
use crate::sections::{OneOf, Posterior};
use ::words::record::story as say;

pub(super) fn cup(exam: &Exam, eye: Eye) -> Noted {
    let seen = match settled(&exam.part::<Posterior>()) {
        Ok(Some(section)) => section.eyes.of(eye),
        Ok(None) => return Noted::default(),
        Err(why) => return Noted::missing(Some(why)),
    };
    let Some(ratio) = seen.cup_to_disc.done() else {
        return Noted::missing(seen.cup_to_disc.why_not());
    };
    let size = seen.disc_size.map(|size| say::disc(&size.in_words()));
    let how: Vec<String> = [seen.viewed_in_words(), size]
        .into_iter()
        .flatten()
        .collect();
    Noted::found(*ratio, Measure::CupToDisc.with_unit(*ratio), how.join(", "))
}
