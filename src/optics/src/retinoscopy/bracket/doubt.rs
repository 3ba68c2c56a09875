//! Sweeps that cannot all be right.

use super::constants as k;
use super::seeing::Seeing;
use crate::format::power;
use crate::retinoscopy::{Beam, Motion, Sweep};
use ::words::optics::retinoscopy as say;

/// Two sweeps of one meridian that cannot both be right.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Contradiction {
    /// The earlier of the two.
    pub one: Sweep,
    /// The later.
    pub other: Sweep,
    /// The lens to sweep to settle it, in dioptres, without the working lens.
    pub settle: f64,
    /// Whether that lens was swept before.
    pub again: bool,
}

impl Contradiction {
    /// The contradiction in one sentence: "the vertical at +3.00 and at +3.50 can’t both be right: sweep +3.25 again".
    pub fn sentence(&self) -> String {
        let Self {
            one,
            other,
            settle,
            again,
        } = self;
        let which = one.meridian.name();
        let again = if *again { say::again() } else { "" };
        let settle = power(*settle);
        let (first, second) = (power(one.lens), power(other.lens));
        if first == second {
            say::cannot_be_two(&which, &first, &settle, &again)
        } else {
            say::cannot_both_be(&which, &first, &second, &settle, &again)
        }
    }
}

/// The two sweeps that agree least, and the lens that settles them; none where each two agree well enough.
pub fn contradiction(
    sweeps: &[Sweep],
    seeing: impl Fn(&Sweep) -> Seeing,
    settle: impl FnOnce() -> f64,
) -> Option<Contradiction> {
    let telling: Vec<&Sweep> = sweeps
        .iter()
        .enumerate()
        .filter(|(at, sweep)| sweep.seen != Motion::CannotTell && !answered(sweeps, *at))
        .map(|(_, sweep)| sweep)
        .collect();
    let pairs = telling.iter().enumerate().flat_map(|(at, one)| {
        let later = telling.iter().skip(at + 1);
        later.map(move |other| (**one, **other))
    });
    let agreement = |(one, other): &(Sweep, Sweep)| agree(one, other, &seeing);
    let (one, other) = pairs
        .min_by(|a, b| agreement(a).total_cmp(&agreement(b)))
        .filter(|pair| agreement(pair) < k::ALL_RIGHT)?;
    let settle = settle();
    let again = sweeps
        .iter()
        .any(|sweep| power(sweep.lens) == power(settle));
    Some(Contradiction {
        one,
        other,
        settle,
        again,
    })
}

/// Whether a neutral was looked at again with the beam reversed: that was the question, so the answer contradicts nothing.
fn answered(sweeps: &[Sweep], at: usize) -> bool {
    let one = &sweeps[at];
    let again = sweeps.get(at + 1);
    one.seen == Motion::Neutral
        && one.beam == Beam::Normal
        && again.is_some_and(|again| {
            again.beam == Beam::Reversed && power(again.lens) == power(one.lens)
        })
}

/// How well any one power explains both sweeps, 0 to 1.
fn agree(one: &Sweep, other: &Sweep, seeing: &impl Fn(&Sweep) -> Seeing) -> f64 {
    const AROUND: i32 = 32;
    let wide = k::ZONE_FACTORS[1].0;
    let middle = f64::midpoint(one.neutral_for(), other.neutral_for());
    let reach = (one.neutral_for() - other.neutral_for()).abs() + 2.0;
    let explained = |at: i32| {
        let power = middle + reach * f64::from(at) / f64::from(AROUND);
        let of = |sweep: &Sweep| {
            let seeing = seeing(sweep).zoned(wide);
            seeing.likelihood(sweep, power - sweep.neutral_for()).right
        };
        of(one) * of(other)
    };
    (-AROUND..=AROUND).map(explained).fold(0.0, f64::max)
}
