//! The ruler's arithmetic: which stretch of dioptres it shows, where a power lies, which ticks stand.

use ::words::app::widgets as say;
use optics::format::signed;

/// The motion that a lens showed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Motion {
    /// With: more plus is needed.
    With,
    /// Against: less plus is needed.
    Against,
    /// Neither: the lens is right.
    Neutral,
    /// Could not be told.
    Unsure,
}

impl Motion {
    /// The word.
    pub fn word(self) -> &'static str {
        match self {
            Self::With => say::with(),
            Self::Against => say::against(),
            Self::Neutral => say::neutral(),
            Self::Unsure => say::cannot_tell(),
        }
    }

    /// What a normal beam would show in place of this. A reversed beam shows with and against in each other's place.
    #[must_use]
    pub fn with_normal_beam(self, reversed: bool) -> Self {
        match (self, reversed) {
            (Self::With, true) => Self::Against,
            (Self::Against, true) => Self::With,
            (motion, _) => motion,
        }
    }
}

/// A lens tried and what it showed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark {
    /// Dioptres.
    pub power: f64,
    /// What was seen.
    pub motion: Motion,
    /// Whether the beam was reversed, so that with and against change places.
    pub reversed: bool,
}

impl Mark {
    /// What was seen with a normal beam.
    pub fn new(power: f64, motion: Motion) -> Self {
        Self {
            power,
            motion,
            reversed: false,
        }
    }

    /// What was seen, in words.
    pub fn words(&self) -> String {
        let word = self.motion.word();
        if self.reversed {
            say::reversed(&word)
        } else {
            word.to_owned()
        }
    }

    /// The motion that a normal beam would have shown.
    pub fn points(&self) -> Motion {
        self.motion.with_normal_beam(self.reversed)
    }
}

/// The stretch of dioptres that a ruler shows, plus at the top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    low: f64,
    high: f64,
}

/// One tick of a ruler.
#[derive(Clone, Debug, PartialEq)]
pub struct Tick {
    /// Dioptres.
    pub power: f64,
    /// The figure beside it, where it has one.
    pub figure: Option<String>,
    /// Whether it is a whole dioptre, or the coarsest of a long scale.
    pub long: bool,
}

impl Scale {
    /// The least that is shown, dioptres: nearer in, the ticks would say more than a sweep can tell.
    const LEAST: f64 = 2.0;

    /// The stretch that holds all these powers with half a dioptre to spare, on whole half dioptres. With no power, from
    /// −3.00 to +3.00.
    pub fn around(powers: impl IntoIterator<Item = f64>) -> Self {
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for power in powers.into_iter().filter(|p| p.is_finite()) {
            (low, high) = (low.min(power), high.max(power));
        }
        if low > high {
            return Self {
                low: -3.0,
                high: 3.0,
            };
        }
        let spare = ((Self::LEAST - (high - low)) / 2.0).max(0.5);
        Self {
            low: ((low - spare) * 2.0).floor() / 2.0,
            high: ((high + spare) * 2.0).ceil() / 2.0,
        }
    }

    /// The powers that a ruler zooms to: the ends of what is still possible, and of the lenses tried and last time's those
    /// that lie beside it, up to half as far away as it is wide, and a dioptre in any case.
    pub fn near((low, high): (f64, f64), marks: &[Mark], last: Option<f64>) -> Vec<f64> {
        let aside = ((high - low) / 2.0).max(1.0);
        let tried = marks.iter().map(|mark| mark.power);
        let beside = tried
            .chain(last)
            .filter(|p| (low - aside..=high + aside).contains(p));
        beside.chain([low, high]).collect()
    }

    /// This stretch while it still serves these powers, else the one [`around`](Self::around) them. It serves while all
    /// lie within it, a quarter dioptre from its ends, and it is no more than half again as long as they need: so the ruler does
    /// not slide under the finger at each step.
    #[must_use]
    pub fn kept(self, powers: &[f64]) -> Self {
        let near = Self::around(powers.iter().copied());
        let within = powers
            .iter()
            .all(|p| (self.low + 0.25..=self.high - 0.25).contains(p));
        let long = self.high - self.low > (near.high - near.low) * 1.5;
        if within && !long { self } else { near }
    }

    /// From the top (0) to the bottom (1); none where the power is off the ruler.
    pub fn place(&self, power: f64) -> Option<f64> {
        (self.low..=self.high)
            .contains(&power)
            .then(|| (self.high - power) / (self.high - self.low))
    }

    /// The place of a power, or of the end that it lies beyond.
    pub fn place_within(&self, power: f64) -> f64 {
        self.place(power.clamp(self.low, self.high)).unwrap_or(0.0)
    }

    /// The ticks from the top down, on a ruler so many units tall: the finest whose figures keep clear of one another.
    pub fn ticks(&self, tall: f64) -> Vec<Tick> {
        /// Fine ticks and figures, each so many dioptres apart, and the longest ruler that they are for.
        const LADDER: [(f64, f64, f64); 4] = [
            (0.25, 0.5, 3.0),
            (0.5, 1.0, 8.0),
            (1.0, 2.0, 18.0),
            (2.5, 5.0, 45.0),
        ];
        /// How tall a line of figures is, in units.
        const FIGURE: f64 = 17.0;
        let span = self.high - self.low;
        let serves = |&(_, figures, longest): &(f64, f64, f64)| {
            span <= longest && tall * figures / span >= FIGURE
        };
        let (fine, figures, _) = LADDER.into_iter().find(serves).unwrap_or((5.0, 10.0, span));
        let decimals = if figures < 1.0 { 2 } else { 0 };
        let (first, last) = (
            (self.low / fine).ceil() as i32,
            (self.high / fine).floor() as i32,
        );
        let every = |power: f64, of: f64| (power / of).fract() == 0.0;
        (first..=last)
            .rev()
            .map(|n| f64::from(n) * fine)
            .map(|power| Tick {
                power,
                figure: every(power, figures).then(|| signed(power, decimals)),
                long: every(power, figures.max(1.0)),
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::{Mark, Motion, Scale};

    #[test]
    fn the_ruler_zooms_to_what_it_must_hold() {
        let scale = Scale::around([4.0, 2.5, 3.0]);
        assert_eq!((scale.low, scale.high), (2.0, 4.5));
        let scale = Scale::around([3.25]);
        assert_eq!((scale.low, scale.high), (2.0, 4.5));
        assert_eq!(
            Scale::around([]),
            Scale {
                low: -3.0,
                high: 3.0
            }
        );
        assert_eq!(
            Scale::around([f64::NAN]),
            Scale {
                low: -3.0,
                high: 3.0
            }
        );
    }

    #[test]
    fn the_ruler_stays_while_it_serves() {
        let scale = Scale::around([3.25]);
        assert_eq!(scale.kept(&[3.5]), scale);
        assert_eq!(scale.kept(&[4.25, 2.25]), scale);
        assert_eq!(scale.kept(&[4.5]), Scale::around([4.5]));
        assert_eq!(
            Scale::around([-6.0, 6.0]).kept(&[1.0]),
            Scale::around([1.0])
        );
    }

    #[test]
    fn the_ruler_leaves_out_what_lies_far_from_what_is_possible() {
        let tried = [1.0, 2.5, 4.0, 9.0].map(|power| Mark::new(power, Motion::With));
        let near = Scale::near((3.0, 3.5), &tried, Some(-2.0));
        assert_eq!(near, [2.5, 4.0, 3.0, 3.5]);
    }

    #[test]
    fn plus_is_at_the_top() {
        let scale = Scale {
            low: 2.0,
            high: 4.0,
        };
        assert_eq!(scale.place(4.0), Some(0.0));
        assert_eq!(scale.place(2.5), Some(0.75));
        assert_eq!(scale.place(4.25), None);
        assert_eq!(scale.place_within(9.0), 0.0);
    }

    #[test]
    fn quarters_stand_on_a_short_ruler() {
        let ticks = Scale {
            low: 2.0,
            high: 4.5,
        }
        .ticks(250.0);
        assert_eq!(ticks.len(), 11);
        assert_eq!(ticks[0].figure.as_deref(), Some("+4.50"));
        assert_eq!(ticks[1].figure, None);
        assert!(ticks[2].long && !ticks[0].long);
    }

    #[test]
    fn figures_keep_clear_of_one_another_on_a_short_ruler() {
        for tall in [60.0, 90.0, 150.0, 300.0] {
            for half in 2..60 {
                let high = f64::from(half) / 2.0;
                let ticks = Scale { low: 0.0, high }.ticks(tall);
                let figures: Vec<f64> = ticks
                    .iter()
                    .filter(|tick| tick.figure.is_some())
                    .map(|tick| tick.power)
                    .collect();
                assert!(
                    figures
                        .windows(2)
                        .all(|two| (two[0] - two[1]) * tall / high >= 15.0),
                    "{tall} units for {high} D: {figures:?}"
                );
            }
        }
    }

    #[test]
    fn a_long_ruler_is_never_crowded() {
        for half in 1..80 {
            let high = f64::from(half) / 2.0;
            let figures = Scale { low: -high, high }
                .ticks(250.0)
                .iter()
                .filter(|t| t.figure.is_some())
                .count();
            assert!((3..=17).contains(&figures), "{high}: {figures}");
        }
    }
}
