//! Where things lie on the strip: years from left to right, one thin lane a measure.
//!
//! Across, a place is a percentage of the plot's width, so that the drawing fills whatever room there is; upright it is a part of
//! the lane's height, 0 at the top.

use std::sync::Arc;

/// The whole years that hold every day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Years {
    from: f64,
    to: f64,
}

impl Years {
    /// From the new year before the first day to the one after the last; days are in years, such as 2026.5.
    pub fn holding(days: impl IntoIterator<Item = f64>) -> Self {
        let (mut from, mut to) = (f64::INFINITY, f64::NEG_INFINITY);
        for day in days.into_iter().filter(|day| day.is_finite()) {
            (from, to) = (from.min(day.floor()), to.max(day.floor() + 1.0));
        }
        if from > to {
            (from, to) = (0.0, 1.0);
        }
        Self { from, to }
    }

    /// How far along a day lies, in percent.
    pub fn along(&self, day: f64) -> f64 {
        (day - self.from) / (self.to - self.from) * 100.0
    }

    /// The years that get a figure, at most so many, evenly apart.
    pub fn figures(&self, most: u32) -> Vec<f64> {
        let many = self.to - self.from;
        let apart = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0];
        let apart = apart
            .into_iter()
            .find(|apart| many / apart <= f64::from(most.max(1)))
            .unwrap_or(many);
        let first = (self.from / apart).ceil() as i64;
        let last = ((self.to - 0.5) / apart).floor() as i64;
        (first..=last).map(|year| year as f64 * apart).collect()
    }

    /// Which of these days lies nearest to a place, in percent.
    pub fn nearest(&self, days: &[f64], percent: f64) -> Option<usize> {
        let away = |day: &f64| (self.along(*day) - percent).abs();
        let places = days.iter().enumerate();
        let nearest = places.min_by(|one, other| away(one.1).total_cmp(&away(other.1)));
        nearest.map(|(place, _)| place)
    }
}

/// The stretch of values that a lane shows, on round figures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    low: f64,
    high: f64,
    step: f64,
}

/// Figures beside a lane at most.
const FIGURES: f64 = 4.0;

impl Stretch {
    /// The round stretch that holds all these values, at least so long. Nothing where there is no value.
    pub fn around(values: impl IntoIterator<Item = f64>, least: f64) -> Option<Self> {
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for value in values.into_iter().filter(|value| value.is_finite()) {
            (low, high) = (low.min(value), high.max(value));
        }
        if low > high {
            return None;
        }
        let spare = ((least - (high - low)) / 2.0).max(0.0);
        (low, high) = (low - spare, high + spare);
        let tens = (-2..=6).map(|ten| 10_f64.powi(ten));
        let steps = tens.flat_map(|ten| [ten, 2.5 * ten, 5.0 * ten]);
        let rounded = steps.map(|step| Self {
            low: (low / step + DUST).floor() * step,
            high: (high / step - DUST).ceil() * step,
            step,
        });
        let mut few = rounded.filter(|stretch| stretch.steps() + 1.0 <= FIGURES);
        few.next()
    }

    fn steps(&self) -> f64 {
        ((self.high - self.low) / self.step).round()
    }

    /// The round values, from the lowest up.
    pub fn figures(&self) -> Vec<f64> {
        let many = self.steps() as u32;
        (0..=many)
            .map(|at| self.low + f64::from(at) * self.step)
            .collect()
    }

    /// How far down a value lies, 0 at the top to 1. Where more is worse it lies lower.
    pub fn down(&self, value: f64, grows_downwards: bool) -> f64 {
        let up = (value - self.low) / (self.high - self.low);
        if grows_downwards { up } else { 1.0 - up }
    }
}

/// What lies so little beyond a round value lies on it.
const DUST: f64 = 1e-9;

/// Where a finding stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Place {
    /// At a value.
    At(f64),
    /// Worse than the scale can say: at the lane's lower edge.
    Beyond,
    /// Nowhere: nothing was found.
    Gap,
}

/// One finding of one eye.
#[derive(Clone, Debug, PartialEq)]
pub struct Spot {
    /// Where it stands.
    pub place: Place,
    /// In words; empty where nothing is to be said.
    pub words: String,
}

/// How a value is written beside a lane.
pub type Figure = Arc<dyn Fn(f64) -> String + Send + Sync>;

/// One measure through the years.
#[derive(Clone)]
pub struct Lane {
    /// The end of its ids.
    pub name: String,
    /// What is measured, with its unit.
    pub title: String,
    /// The least stretch of its scale.
    pub least: f64,
    /// Whether more is drawn lower.
    pub grows_downwards: bool,
    /// How a value is written.
    pub figure: Figure,
    /// What was found of the right eye and of the left, one for each column.
    pub eyes: [Vec<Spot>; 2],
}

/// A place in a lane: percent across, part of its height down.
pub type Dot = (f64, f64);

impl Lane {
    /// Its scale; where nothing was found in numbers, any.
    pub fn stretch(&self) -> Stretch {
        let spots = self.eyes.iter().flatten();
        let values = spots.filter_map(|spot| match spot.place {
            Place::At(value) => Some(value),
            Place::Beyond | Place::Gap => None,
        });
        Stretch::around(values, self.least).unwrap_or(Stretch {
            low: 0.0,
            high: self.least,
            step: self.least,
        })
    }

    /// Where each finding of an eye is drawn, given where the columns lie; nothing for a gap.
    pub fn dots(&self, eye: usize, columns: &[f64]) -> Vec<Option<Dot>> {
        let stretch = self.stretch();
        let spots = self.eyes[eye].iter().zip(columns);
        let dot = |(spot, across): (&Spot, &f64)| match spot.place {
            Place::At(value) => Some((*across, stretch.down(value, self.grows_downwards))),
            Place::Beyond => Some((*across, 1.0)),
            Place::Gap => None,
        };
        spots.map(dot).collect()
    }

    /// The lines between findings that follow one another. Over a gap, and to what lies beyond the scale, there is none.
    pub fn lines(&self, eye: usize, columns: &[f64]) -> Vec<(Dot, Dot)> {
        let dots = self.dots(eye, columns);
        let held = |at: usize| {
            let number = matches!(self.eyes[eye].get(at)?.place, Place::At(_));
            dots.get(at).copied().flatten().filter(|_| number)
        };
        (1..dots.len())
            .filter_map(|at| Some((held(at - 1)?, held(at)?)))
            .collect()
    }
}

/// Where two words are written that would stand on one another, as parts of the lane's height: moved apart from their middle.
pub fn apart(right: f64, left: f64, least: f64) -> (f64, f64) {
    let missing = (least - (right - left).abs()).max(0.0) / 2.0;
    if right <= left {
        (right - missing, left + missing)
    } else {
        (right + missing, left - missing)
    }
}

/// In which row each mark is drawn, so that none covers another: the first in which it has room.
pub fn rows(across: &[f64], room: f64) -> Vec<usize> {
    let mut ends: Vec<Vec<f64>> = Vec::new();
    let mut rows = Vec::new();
    for at in across {
        let free = |taken: &Vec<f64>| taken.iter().all(|other| (other - at).abs() >= room);
        let row = ends.iter().position(free).unwrap_or(ends.len());
        if row == ends.len() {
            ends.push(Vec::new());
        }
        ends[row].push(*at);
        rows.push(row);
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lane(right: &[Place]) -> Lane {
        let spots = right.iter().map(|place| Spot {
            place: *place,
            words: String::new(),
        });
        Lane {
            name: String::new(),
            title: String::new(),
            least: 1.0,
            grows_downwards: false,
            figure: Arc::new(|value| value.to_string()),
            eyes: [spots.collect(), Vec::new()],
        }
    }

    // Computed: from the start of 2022 to the end of 2026 is five years; the middle of 2024 lies half way.
    #[test]
    fn whole_years_hold_every_day() {
        let years = Years::holding([2022.4, 2026.9]);
        assert!((years.along(2024.5) - 50.0).abs() < 1e-9);
        assert_eq!(years.figures(6), [2022.0, 2023.0, 2024.0, 2025.0, 2026.0]);
        assert_eq!(years.figures(4), [2022.0, 2024.0, 2026.0]);
        assert_eq!(
            Years::holding([1989.0, 2026.2]).figures(4),
            [1990.0, 2000.0, 2010.0, 2020.0]
        );
        assert_eq!(Years::holding([2026.0]).figures(6), [2026.0]);
    }

    #[test]
    fn a_tap_finds_the_nearest_day() {
        let days = [2022.4, 2024.0, 2024.1, 2026.9];
        let years = Years::holding(days);
        assert_eq!(years.nearest(&days, years.along(2024.06)), Some(2));
        assert_eq!(years.nearest(&days, -20.0), Some(0));
        assert_eq!(years.nearest(&[], 50.0), None);
    }

    #[test]
    fn a_lane_stands_on_round_figures() {
        let figures = |values: &[f64], least| {
            Stretch::around(values.iter().copied(), least).map(|s| s.figures())
        };
        assert_eq!(figures(&[2.25, 2.75], 1.0), Some(vec![2.0, 2.5, 3.0]));
        assert_eq!(
            figures(&[15.0, 22.0], 10.0),
            Some(vec![10.0, 15.0, 20.0, 25.0])
        );
        assert_eq!(
            figures(&[-6.0, 3.5], 1.0),
            Some(vec![-10.0, -5.0, 0.0, 5.0])
        );
        assert_eq!(figures(&[], 1.0), None);
    }

    #[test]
    fn every_value_lies_on_its_lane_and_the_figures_are_few() {
        for low in -40..40 {
            for long in 0..60 {
                let (low, high) = (
                    f64::from(low) * 0.37,
                    f64::from(low) * 0.37 + f64::from(long) * 0.21,
                );
                let stretch = Stretch::around([low, high], 0.4).unwrap();
                assert!((2..=4).contains(&stretch.figures().len()), "{stretch:?}");
                for value in [low, high] {
                    let down = stretch.down(value, true);
                    assert!(
                        (-1e-6..=1.0 + 1e-6).contains(&down),
                        "{value} in {stretch:?}"
                    );
                }
            }
        }
    }

    #[test]
    fn better_sight_is_up() {
        let stretch = Stretch::around([0.0, 1.0], 0.4).unwrap();
        assert_eq!(stretch.down(0.0, true), 0.0);
        assert_eq!(stretch.down(0.0, false), 1.0);
    }

    #[test]
    fn a_gap_is_not_bridged_and_what_lies_beyond_is_joined_to_nothing() {
        use Place::{At, Beyond, Gap};
        let columns = [0.0, 25.0, 50.0, 75.0, 100.0];
        let lane = lane(&[At(1.0), Gap, At(2.0), At(2.5), Beyond]);
        let dots = lane.dots(0, &columns);
        assert_eq!(dots.iter().filter(|dot| dot.is_some()).count(), 4);
        assert_eq!(dots[4], Some((100.0, 1.0)));
        let lines = lane.lines(0, &columns);
        assert_eq!(lines.len(), 1);
        assert_eq!((lines[0].0.0, lines[0].1.0), (50.0, 75.0));
    }

    #[test]
    fn words_do_not_stand_on_one_another() {
        assert_eq!(apart(0.5, 0.5, 0.4), (0.3, 0.7));
        assert_eq!(apart(0.9, 0.2, 0.4), (0.9, 0.2));
        let (right, left) = apart(0.6, 0.5, 0.4);
        assert!((right - left - 0.4).abs() < 1e-9);
    }

    #[test]
    fn marks_of_one_day_are_stacked() {
        assert_eq!(rows(&[10.0, 10.0, 12.0, 40.0], 5.0), [0, 1, 2, 0]);
    }
}
