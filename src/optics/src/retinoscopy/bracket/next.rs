//! The lens whose sweep would tell most.
//!
//! ```text
//! told = H(call) − Σ weight · H(call | power)
//! ```
//!
//! in bits: how much a call is expected to tell of the power (mutual information; Lindley 1956, Ann Math Stat 27:986-1005, from
//! memory). Every lens on the trial-lens step within what is still possible is weighed, first coarsely where much is possible.

use super::constants as k;
use super::powers::{PER_DIOPTRE, Powers};
use super::seeing::Seeing;
use crate::Step;
use crate::exact;
use crate::retinoscopy::Setup;

/// The next sweep worth making.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Next {
    /// The lens to put in place, without the working lens, in dioptres.
    pub lens: f64,
    /// How much its sweep is expected to tell, in bits.
    pub bits: f64,
    /// How much a sweep with the lens that is in place now would tell, in bits.
    pub bits_in_place: f64,
}

/// Beyond what is still possible, in dioptres, no lens is weighed.
const MARGIN: f64 = 1.0;
/// A wider range is weighed by whole dioptres first.
const COARSE_FROM: f64 = 8.0;
/// Powers lighter than this tell nothing.
const LIGHT: f64 = 1e-7;

/// The lens to sweep next with the lens `in_place` now, under a set-up, on a step.
pub fn next(powers: &Powers, seeing: Seeing, setup: &Setup, step: Step, in_place: f64) -> Next {
    let low = setup.lens_for(powers.quantile(0.002)) - MARGIN;
    let high = setup.lens_for(powers.quantile(0.998)) + MARGIN;
    let heavy: Vec<(i32, f64)> = powers
        .weighed()
        .filter(|(_, weight)| *weight > LIGHT)
        .map(|(power, weight)| (points(power), weight))
        .collect();
    let ends = [heavy.first(), heavy.last()].map(|end| end.map_or(0, |(power, _)| *power));
    // A lens may stand a coarse step beyond the range.
    let apart = [
        ends[0] - points(high.max(in_place) + 2.0),
        ends[1] - points(low.min(in_place) - 2.0),
    ];
    let sums = heavy.iter().scan(0.0, |sum, (_, weight)| {
        *sum += weight;
        Some(*sum)
    });
    let weighing = Weighing {
        before: std::iter::once(0.0).chain(sums).collect(),
        heavy,
        in_place,
        calls: Calls::new(powers, seeing, setup, apart),
    };
    let fine = step.dioptres();
    let (lens, bits) = if high - low < COARSE_FROM {
        weighing.best(low, high, fine)
    } else {
        let (coarse, _) = weighing.best(low, high, 1.0);
        weighing.best(coarse - 1.0, coarse + 1.0, fine)
    };
    Next {
        lens,
        bits,
        bits_in_place: weighing.told(in_place),
    }
}

/// A power on the grid, in its points from zero. Trial lenses stand on the grid.
fn points(power: f64) -> i32 {
    (power * PER_DIOPTRE).round() as i32
}

struct Weighing {
    /// Powers in points of the grid with their weights, least first.
    heavy: Vec<(i32, f64)>,
    /// The weight of all before each of them, and at last of all.
    before: Vec<f64>,
    in_place: f64,
    calls: Calls,
}

impl Weighing {
    /// The lens most worth sweeping, and what it would tell.
    fn best(&self, low: f64, high: f64, step: f64) -> (f64, f64) {
        let first = (low / step).floor() * step;
        let count = ((high - first) / step).ceil().max(0.0) as usize;
        let lenses = (0..=count).map(|at| first + at as f64 * step);
        let weighed = lenses.map(|lens| (lens, self.told(lens)));
        weighed.fold((self.in_place, 0.0), |best, one| {
            if self.worth(one) > self.worth(best) {
                one
            } else {
                best
            }
        })
    }

    fn worth(&self, (lens, bits): (f64, f64)) -> f64 {
        bits * (1.0 - k::CHANGE_COSTS * (lens - self.in_place).abs())
    }

    /// What a sweep of this lens is expected to tell, in bits. Powers far from the lens are all called alike: only their
    /// weight counts.
    fn told(&self, lens: f64) -> f64 {
        let lens = points(lens);
        let Calls { first, last, .. } = self.calls;
        let until = |apart: i32| {
            self.heavy
                .partition_point(|(power, _)| power - lens < apart)
        };
        let (low, high) = (until(first), until(last + 1));
        let below = (first, self.before[low]);
        let above = (last, self.before[self.heavy.len()] - self.before[high]);
        let between = self.heavy[low..high].iter();
        let between = between.map(|(power, weight)| (power - lens, *weight));
        let mut sums = [0.0; 3];
        let mut known = 0.0;
        for (apart, weight) in [below, above].into_iter().chain(between) {
            let call = self.calls.at(apart);
            known += weight * call.bits;
            for (sum, chance) in sums.iter_mut().zip(call.chances) {
                *sum += weight * chance;
            }
        }
        (bits(sums) - known).max(0.0)
    }
}

/// What would be called, and how uncertain that is.
#[derive(Clone, Copy)]
struct Call {
    chances: [f64; 3],
    bits: f64,
}

/// The calls for every difference between an eye's power and a lens, reckoned once: lenses and powers share a grid. Beyond
/// what is doubtful to anybody, every difference is called like the last that is reckoned.
struct Calls {
    first: i32,
    last: i32,
    each: Vec<Call>,
}

impl Calls {
    /// For differences between two ends, in points of the grid.
    fn new(powers: &Powers, seeing: Seeing, setup: &Setup, [first, last]: [i32; 2]) -> Self {
        let shares = powers.zones();
        let seeings = k::ZONE_FACTORS.map(|(factor, _)| seeing.zoned(factor));
        let without_lens = setup.refraction(0.0);
        let ends = seeings.map(|seeing| seeing.plain_beyond());
        let doubtful = ends.into_iter().fold([0.0, 0.0], |[low, high], end| {
            [f64::min(low, end[0]), f64::max(high, end[1])]
        });
        let doubtful = doubtful.map(|error| points(error + without_lens));
        // One point beyond either end stands for all that lie there.
        let first = first.max(doubtful[0] - 1).min(last);
        let last = last.min(doubtful[1] + 1).max(first);
        let call = |apart: i32| {
            let error = f64::from(apart) / PER_DIOPTRE - without_lens;
            let mut chances = [0.0; 3];
            for (seeing, share) in seeings.iter().zip(shares) {
                for (sum, chance) in chances.iter_mut().zip(seeing.called(error)) {
                    *sum += share * chance;
                }
            }
            Call {
                chances,
                bits: bits(chances),
            }
        };
        Self {
            first,
            last,
            each: (first..=last).map(call).collect(),
        }
    }

    /// The call for a difference between the ends.
    fn at(&self, apart: i32) -> Call {
        self.each[(apart - self.first) as usize]
    }
}

/// The uncertainty of a choice among chances, in bits.
fn bits(chances: [f64; 3]) -> f64 {
    let each = chances.into_iter().filter(|chance| *chance > 0.0);
    -each.map(|chance| chance * exact::log2(chance)).sum::<f64>()
}
