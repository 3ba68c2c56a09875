//! The decision in words.

use super::{Lines, Reads};
use crate::sections::{Decision, Glasses};
use ::words::record::reading as say;

impl Reads for Decision {
    fn read(&self, lines: &mut Lines) {
        let glasses = self.glasses.map(|glasses| match glasses {
            Glasses::Prescribe => say::prescribe().to_owned(),
            Glasses::LeaveAlone => say::leave_alone().to_owned(),
        });
        lines.some(say::decided_glasses(), glasses);
        let refer = self.refer.as_ref();
        let refer = refer.map(|refer| format!("{}: {}", refer.urgency.word(), refer.to));
        lines.some(say::refer(), refer);
        lines.one(say::told(), &*self.advice);
        let recall = self.recall.as_ref();
        let recall = recall.map(|recall| say::recall_in(&recall.months, &recall.reason));
        lines.some(say::see_again(), recall);
        lines.one(say::note(), &*self.note);
    }
}
