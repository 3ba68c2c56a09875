//! The decision in words.

use super::{Lines, Reads};
use crate::sections::{Decision, Glasses};

impl Reads for Decision {
    fn read(&self, lines: &mut Lines) {
        let glasses = self.glasses.map(|glasses| match glasses {
            Glasses::Prescribe => "prescribe".to_owned(),
            Glasses::LeaveAlone => "leave alone".to_owned(),
        });
        lines.some("glasses", glasses);
        let refer = self.refer.as_ref();
        let refer = refer.map(|refer| format!("{}: {}", refer.urgency.word(), refer.to));
        lines.some("refer", refer);
        lines.one("said", &*self.advice);
        let recall = self.recall.as_ref();
        let recall = recall.map(|recall| format!("in {} months: {}", recall.months, recall.reason));
        lines.some("see again", recall);
        lines.one("note", &*self.note);
    }
}
