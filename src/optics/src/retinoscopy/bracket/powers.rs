//! What is thought of a meridian's power: a weight for every sixteenth of a dioptre, under three widths of the neutral zone.
//!
//! Bayes' rule on a grid, in closed form: no sampling, so the same sweeps always give the same answer.

use super::constants as k;
use super::seeing::Likelihood;
use super::start::Expected;
use crate::exact;

/// The grid reaches this many dioptres either side.
const REACH: f64 = 26.0;
/// How many points of the grid make a dioptre. Trial lenses of a quarter and an eighth stand on it.
pub const PER_DIOPTRE: f64 = 16.0;
const STEP: f64 = 1.0 / PER_DIOPTRE;
const POINTS: usize = 833;
const ZONES: usize = k::ZONE_FACTORS.len();

/// The power at a point of the grid.
fn at(point: usize) -> f64 {
    point as f64 * STEP - REACH
}

/// The weights after some sweeps.
#[derive(Clone, Debug, PartialEq)]
pub struct Powers {
    /// Of each power under each zone; together 1.
    joint: Vec<[f64; ZONES]>,
    /// The part of each in which no call was wrong.
    right: Vec<[f64; ZONES]>,
    /// Of each power; together 1.
    marginal: Vec<f64>,
}

impl Powers {
    /// Before any sweep.
    pub fn before(expected: Option<Expected>) -> Self {
        let anywhere = normal_to_one(|power| {
            let beyond = (power.abs() - k::KNOWN_NOTHING).max(0.0);
            exact::exp(-beyond / k::TAIL)
        });
        let marginal = match expected {
            None => anywhere,
            Some(Expected { power, deviation }) => {
                let near =
                    normal_to_one(|at| exact::exp(-exact::squared((at - power) / deviation) / 2.0));
                let both = near.iter().zip(&anywhere);
                both.map(|(near, any)| (1.0 - k::ANYWHERE) * near + k::ANYWHERE * any)
                    .collect()
            }
        };
        let joint: Vec<_> = marginal
            .iter()
            .map(|weight| k::ZONE_FACTORS.map(|(_, share)| weight * share))
            .collect();
        Self {
            right: joint.clone(),
            joint,
            marginal,
        }
    }

    /// After one more sweep, whose likelihood at each power under each zone is given.
    pub fn observe(&mut self, likelihood: impl Fn(f64, usize) -> Likelihood) {
        for (point, (joint, right)) in self.joint.iter_mut().zip(&mut self.right).enumerate() {
            for zone in 0..ZONES {
                let likely = likelihood(at(point), zone);
                joint[zone] *= likely.called;
                right[zone] *= likely.right;
            }
        }
        let total: f64 = self.joint.iter().flatten().sum();
        for weight in self.joint.iter_mut().chain(&mut self.right).flatten() {
            *weight /= total;
        }
        self.marginal = self.joint.iter().map(|zones| zones.iter().sum()).collect();
    }

    /// The chance that no call so far was wrong.
    pub fn all_right(&self) -> f64 {
        self.right.iter().flatten().sum()
    }

    /// How likely each width of the zone is.
    pub fn zones(&self) -> [f64; ZONES] {
        let mut sums = [0.0; ZONES];
        for zones in &self.joint {
            for (sum, weight) in sums.iter_mut().zip(zones) {
                *sum += weight;
            }
        }
        sums
    }

    /// The power below which this share of the weight lies.
    pub fn quantile(&self, share: f64) -> f64 {
        let mut below = 0.0;
        for (point, weight) in self.marginal.iter().enumerate() {
            if below + weight >= share {
                return at(point) + STEP * ((share - below) / weight - 0.5);
            }
            below += weight;
        }
        REACH
    }

    /// The share of the weight between two powers.
    pub fn between(&self, low: f64, high: f64) -> f64 {
        let inside = self
            .weighed()
            .filter(|(power, _)| *power >= low && *power <= high);
        inside.map(|(_, weight)| weight).sum()
    }

    /// Every power with its weight.
    pub fn weighed(&self) -> impl Iterator<Item = (f64, f64)> {
        let points = self.marginal.iter().enumerate();
        points.map(|(point, weight)| (at(point), *weight))
    }

    /// The most likely power: the middle of the heaviest half dioptre, which on the flat top of a neutral zone is its middle.
    pub fn likeliest(&self) -> f64 {
        const HALF: usize = 4;
        let mass = |window: &[f64]| window.iter().sum::<f64>();
        let windows = self.marginal.windows(2 * HALF + 1).map(mass);
        let heaviest = windows
            .enumerate()
            .fold((0, 0.0), |best, (start, mass)| {
                if mass > best.1 + 1e-12 {
                    (start, mass)
                } else {
                    best
                }
            })
            .0;
        let from = heaviest.saturating_sub(HALF);
        let to = (heaviest + 3 * HALF + 1).min(POINTS);
        let around = || (from..to).map(|point| (at(point), self.marginal[point]));
        let weight: f64 = around().map(|(_, weight)| weight).sum();
        around().map(|(power, weight)| power * weight).sum::<f64>() / weight
    }
}

/// A curve over the grid, made to sum to 1.
fn normal_to_one(curve: impl Fn(f64) -> f64) -> Vec<f64> {
    let heights: Vec<f64> = (0..POINTS).map(|point| curve(at(point))).collect();
    let total: f64 = heights.iter().sum();
    heights.iter().map(|height| height / total).collect()
}
