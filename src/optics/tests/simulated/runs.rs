//! Many eyes swept to the end.

use crate::examiner::{Chance, Examiner, From};
use optics::retinoscopy::bracket::{Advice, Bracket, Source, Start};
use optics::retinoscopy::{Circumstances, Setup, Sweep, WorkingDistance};
use optics::{Meridian, SphereCyl, Step};
use std::fmt;

/// What became of one eye.
#[derive(Clone, Copy)]
pub struct Run {
    /// The sweep after which the most likely power was first within a quarter dioptre of the truth; none if never.
    pub to_a_quarter: Option<usize>,
    /// All its sweeps.
    pub sweeps: usize,
    /// Whether the interval held the truth at the end.
    pub held: bool,
    /// Whether the interval was at the end narrower than 0.50 D and more than 0.50 D from the truth.
    pub confident_and_wrong: bool,
    /// How wide the interval was at the end.
    pub width: f64,
}

/// What became of many.
pub struct Runs(pub Vec<Run>);

impl Runs {
    pub fn median_to_a_quarter(&self) -> usize {
        self.to_a_quarter(0.5)
    }

    /// So many sweeps reach a quarter dioptre in this share of the eyes.
    pub fn to_a_quarter(&self, share: f64) -> usize {
        let counts = self
            .0
            .iter()
            .map(|run| run.to_a_quarter.unwrap_or(usize::MAX));
        quantile(counts.collect(), share)
    }

    pub fn held(&self) -> f64 {
        self.share(|run| run.held)
    }

    pub fn confident_and_wrong(&self) -> f64 {
        self.share(|run| run.confident_and_wrong)
    }

    fn share(&self, is: impl Fn(&Run) -> bool) -> f64 {
        self.0.iter().filter(|run| is(run)).count() as f64 / self.0.len() as f64
    }
}

impl fmt::Display for Runs {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sweeps = |share| quantile(self.0.iter().map(|run| run.sweeps).collect(), share);
        let width = self.0.iter().map(|run| run.width).sum::<f64>() / self.0.len() as f64;
        write!(
            f,
            "to a quarter {} (nine in ten {}), in all {} ({}), interval held {:.3}, {width:.2} D wide, confident and wrong {:.4}",
            self.median_to_a_quarter(),
            self.to_a_quarter(0.9),
            sweeps(0.5),
            sweeps(0.9),
            self.held(),
            self.confident_and_wrong(),
        )
    }
}

pub fn quantile(mut counts: Vec<usize>, share: f64) -> usize {
    counts.sort_unstable();
    counts[((counts.len() - 1) as f64 * share) as usize]
}

/// Sweeps so many eyes on both halves of the machine.
pub fn run(eyes: u64, from: From, examiner: Examiner, circumstances: Circumstances) -> Runs {
    let swept = |seeds: std::ops::Range<u64>| {
        seeds
            .map(|seed| one(seed, from, examiner, &circumstances))
            .collect::<Vec<_>>()
    };
    let both = std::thread::scope(|scope| {
        let halves = [0..eyes / 2, eyes / 2..eyes].map(|half| scope.spawn(move || swept(half)));
        halves.map(|half| half.join().unwrap())
    });
    Runs(both.concat())
}

/// The eye's power, and what it starts from.
pub fn eye(from: From, chance: &mut Chance) -> (f64, Option<Start>) {
    match from {
        From::Anywhere => (24.0 * chance.even() - 12.0, None),
        From::LastTime => {
            let last = 12.0 * chance.even() - 6.0;
            let moved = if chance.even() < 0.9 {
                0.5 * chance.normal()
            } else {
                1.5 * chance.normal() - 1.5
            };
            let start = Start {
                lens: SphereCyl::sphere(last),
                from: Source::LastTime,
            };
            (last + moved, Some(start))
        }
    }
}

pub fn setup() -> Setup {
    Setup::new(WorkingDistance::from_cm(67.0).unwrap(), None)
}

fn one(seed: u64, from: From, observer: Examiner, circumstances: &Circumstances) -> Run {
    let mut chance = Chance(seed << 20);
    let (truth, start) = eye(from, &mut chance);
    let setup = setup();
    let meridian = Meridian::new(90.0).unwrap();
    let mut bracket = Bracket::new(meridian, &[], start.as_ref(), circumstances);
    let expected = start.map_or(0.0, |start| setup.lens_for(start.lens.sphere));
    let mut in_place = Step::Quarter.nearest(expected);
    let mut to_a_quarter = None;
    while let Advice::Sweep(next) = bracket.advice(&setup, Step::Quarter, in_place) {
        in_place = next.lens;
        let called = observer.call(truth - setup.refraction(in_place), &mut chance);
        bracket.add(Sweep::new(meridian, in_place, setup, called).unwrap());
        if to_a_quarter.is_none() && (bracket.likeliest() - truth).abs() <= 0.25 {
            to_a_quarter = Some(bracket.sweeps().len());
        }
    }
    let interval = bracket.interval();
    let beyond = (interval.low - truth).max(truth - interval.high);
    Run {
        to_a_quarter,
        sweeps: bracket.sweeps().len(),
        held: beyond <= 0.0,
        confident_and_wrong: interval.width() < 0.5 && beyond > 0.5,
        width: interval.width(),
    }
}
