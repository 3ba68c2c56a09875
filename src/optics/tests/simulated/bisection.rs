//! Halving what is possible on the trial-lens step: the plain way, to be no worse than.

use crate::examiner::{Chance, Examiner, From};
use crate::runs::{eye, setup};
use optics::Step;
use optics::retinoscopy::Motion;

/// After how many sweeps the middle of what is left was first within a quarter dioptre of the truth, eye by eye; `usize::MAX`
/// where it never was.
pub fn to_a_quarter(eyes: u64, examiner: Examiner) -> Vec<usize> {
    (0..eyes)
        .map(|seed| {
            let mut chance = Chance(seed << 20);
            let (truth, _) = eye(From::Anywhere, &mut chance);
            one(truth, examiner, &mut chance)
        })
        .collect()
}

fn one(truth: f64, examiner: Examiner, chance: &mut Chance) -> usize {
    let setup = setup();
    let (mut low, mut high) = (-12.0, 12.0);
    let mut sweeps = 0;
    while high - low > Step::Quarter.dioptres() {
        let lens = Step::Quarter.nearest(setup.lens_for(f64::midpoint(low, high)));
        let middle = setup.refraction(lens);
        sweeps += 1;
        match examiner.call(truth - middle, chance) {
            Motion::With => low = middle,
            Motion::Against => high = middle,
            Motion::Neutral | Motion::CannotTell => (low, high) = (middle, middle),
        }
        if (f64::midpoint(low, high) - truth).abs() <= 0.25 {
            return sweeps;
        }
    }
    usize::MAX
}
