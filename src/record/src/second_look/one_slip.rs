//! One slip, one question: what follows from a slip that is asked about is not asked about as well.
//!
//! Swapped eyes make spheres flip and changes large; ten questions would hide the one that helps. Once the slip is put right
//! or answered, what is left is asked.

use super::{Raised, Rule};

/// Leaves out what follows from a graver question that stands.
pub(super) fn one_question_a_slip(raised: Vec<Raised>) -> Vec<Raised> {
    let follows = |asked: &Raised| raised.iter().any(|graver| explains(graver, asked));
    let kept: Vec<bool> = raised.iter().map(|asked| !follows(asked)).collect();
    let both = raised.into_iter().zip(kept);
    both.filter_map(|(asked, kept)| kept.then_some(asked))
        .collect()
}

fn explains(graver: &Raised, asked: &Raised) -> bool {
    let same_eye = graver.eye.is_none() || asked.eye.is_none() || graver.eye == asked.eye;
    same_eye && follow_from(graver.rule).contains(&asked.rule)
}

const fn follow_from(rule: Rule) -> &'static [Rule] {
    match rule {
        Rule::EyesSwapped => &[
            Rule::SignFlipped,
            Rule::AxisCrossed,
            Rule::LargeChange,
            Rule::NewAnisometropia,
        ],
        Rule::DistanceSlip | Rule::SignFlipped | Rule::AxisCrossed => {
            &[Rule::LargeChange, Rule::NewAnisometropia]
        }
        Rule::NuclearShift => &[Rule::LargeChange],
        _ => &[],
    }
}
