//! Near in words.

use ::words::record::reading as say;
use optics::format::{plain, power};

use super::{Lines, Reads, filled};
use crate::sections::{ClearBetween, Magnified, Near, PrintRead, PrintSize};

impl PrintSize {
    /// Sizes of print in points as reading cards have them; common practice, no source.
    pub const POINTS: [f64; 10] = [5.0, 6.0, 8.0, 10.0, 12.0, 14.0, 18.0, 24.0, 36.0, 48.0];

    /// "N8", "1.25 M".
    pub fn in_words(&self) -> String {
        match self {
            Self::N(points) => format!("N{}", plain(*points, 1)),
            Self::M(units) => format!("{} M", plain(*units, 2)),
        }
    }
}

impl PrintRead {
    /// "N8 at 40 cm".
    pub fn in_words(&self) -> String {
        say::print_at(&self.print.in_words(), &plain(self.at_cm, 1))
    }
}

impl ClearBetween {
    /// "28 to 55 cm".
    pub fn in_words(&self) -> String {
        let [nearest, farthest] = [self.nearest_cm, self.farthest_cm].map(|cm| plain(cm, 1));
        say::clear_range(&nearest, &farthest)
    }
}

impl Magnified {
    /// "4 times, a stand magnifier".
    pub fn in_words(&self) -> String {
        let by = filled(&self.by).map(|by| format!(", {by}"));
        say::times(&plain(self.times, 1), &by.unwrap_or_default())
    }
}

impl Reads for Near {
    fn read(&self, lines: &mut Lines) {
        lines.one(say::task(), &*self.task);
        let cm = |cm: &f64| format!("{} cm", plain(*cm, 1));
        lines.finding(say::task_distance(), &self.distance_cm, cm);
        let dioptres = |dioptres: &f64| say::power(&plain(*dioptres, 2));
        lines.finding(say::amplitude(), &self.amplitude_d, dioptres);
        let add = |add: &f64| power(*add);
        lines.findings(say::addition(), &self.accepted_d, |add| add, add);
        lines.finding(say::clear(), &self.clear, ClearBetween::in_words);
        lines.finding(say::reads(), &self.read, PrintRead::in_words);
        lines.finding(say::magnified(), &self.magnified, Magnified::in_words);
    }
}
