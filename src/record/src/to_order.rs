//! The pair that an exam's lenses make, for an order to begin with.

use crate::exam::Exam;
use crate::finding::Eye;
use crate::sections::{LensForm, OrderedLens, OrderedPair, UsedFor};

impl Exam {
    /// A pair for this use, with the exam's lenses: for near with the addition in it, for both with it beside. For in between
    /// nobody has said how much of the addition is wanted, so the lenses are those for far. Of an eye without a lens it has
    /// none.
    pub fn pair_to_order(&self, used_for: UsedFor) -> OrderedPair {
        let chosen = self.subjective().latest().map(|version| version.value);
        let add = chosen.and_then(|chosen| chosen.add).map(|add| add.power);
        let mut pair = OrderedPair {
            used_for,
            vertex_mm: chosen.and_then(|chosen| chosen.vertex_mm),
            ..OrderedPair::default()
        };
        if used_for == UsedFor::FarAndNear {
            pair.form = LensForm::Bifocal;
        }
        for eye in Eye::BOTH {
            let found = self.final_lens(eye);
            *pair.lenses.of_mut(eye) = found.map(|found| {
                let mut ordered = OrderedLens::new(found.lens);
                match (used_for, add) {
                    (UsedFor::Near, Some(add)) => ordered.lens.sphere += add,
                    (UsedFor::FarAndNear, add) => ordered.add_d = add,
                    _ => {}
                }
                ordered
            });
        }
        pair
    }
}
