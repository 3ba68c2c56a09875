//! Measures, as a table for people and as JSON for whatever watches them.

use anyhow::{Context, Result};
use serde_json::{Value, json};
use std::fmt::Write;
use std::path::Path;

/// What a number counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Bytes.
    Bytes,
    /// Milliseconds.
    Milliseconds,
    /// Nanoseconds.
    Nanoseconds,
    /// Taps of a thumb.
    Taps,
    /// How far a thumb goes, in CSS pixels.
    Pixels,
    /// Frames a second.
    Frames,
}

/// One number, beside another from the same run where there is one.
#[derive(Clone, Debug, PartialEq)]
pub struct Measure {
    name: String,
    unit: Unit,
    ours: f64,
    against: Option<(String, f64)>,
    aim: Option<Aim>,
}

/// What a number should not go beyond.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Aim {
    /// The most that it should be.
    Budget(f64),
    /// The least.
    Floor(f64),
}

impl Measure {
    /// A number alone.
    pub fn new(name: &str, unit: Unit, ours: f64) -> Self {
        Self {
            name: name.to_owned(),
            unit,
            ours,
            against: None,
            aim: None,
        }
    }

    /// Beside another.
    pub fn against(mut self, what: &str, theirs: f64) -> Self {
        self.against = Some((what.to_owned(), theirs));
        self
    }

    /// With the most that it should be.
    pub fn within(mut self, budget: f64) -> Self {
        self.aim = Some(Aim::Budget(budget));
        self
    }

    fn from_json(value: &Value) -> Option<Self> {
        let unit = match value["unit"].as_str()? {
            "bytes" => Unit::Bytes,
            "ms" => Unit::Milliseconds,
            "ns" => Unit::Nanoseconds,
            "taps" => Unit::Taps,
            "px" => Unit::Pixels,
            "frames/s" => Unit::Frames,
            _ => return None,
        };
        let against = match (value["against"].as_str(), value["theirs"].as_f64()) {
            (Some(what), Some(theirs)) => Some((what.to_owned(), theirs)),
            _ => None,
        };
        let budget = value["budget"].as_f64().map(Aim::Budget);
        let floor = value["floor"].as_f64().map(Aim::Floor);
        Some(Self {
            name: value["name"].as_str()?.to_owned(),
            unit,
            ours: value["ours"].as_f64()?,
            against,
            aim: budget.or(floor),
        })
    }

    fn to_json(&self) -> Value {
        let (what, theirs) = self
            .against
            .as_ref()
            .map(|(what, theirs)| (what.as_str(), *theirs))
            .unzip();
        let (budget, floor) = match self.aim {
            Some(Aim::Budget(most)) => (Some(most), None),
            Some(Aim::Floor(least)) => (None, Some(least)),
            None => (None, None),
        };
        json!({
            "name": self.name, "unit": self.unit.short(), "ours": self.ours,
            "against": what, "theirs": theirs, "budget": budget, "floor": floor,
        })
    }

    /// Whether the aim is met, in the words of the table.
    fn judged(&self) -> String {
        let (word, what, bound) = match self.aim {
            None => return String::new(),
            Some(Aim::Budget(most)) if self.ours <= most => ("within", "budget", most),
            Some(Aim::Budget(most)) => ("over", "budget", most),
            Some(Aim::Floor(least)) if self.ours >= least => ("above", "floor", least),
            Some(Aim::Floor(least)) => ("below", "floor", least),
        };
        format!("   {word} the {what} of {}", self.unit.written(bound))
    }
}

impl Unit {
    fn short(self) -> &'static str {
        match self {
            Self::Bytes => "bytes",
            Self::Milliseconds => "ms",
            Self::Nanoseconds => "ns",
            Self::Taps => "taps",
            Self::Pixels => "px",
            Self::Frames => "frames/s",
        }
    }

    fn written(self, number: f64) -> String {
        match self {
            Self::Bytes => format!("{:.1} kB", number / 1000.0),
            Self::Milliseconds => format!("{number:.1} ms"),
            Self::Nanoseconds => format!("{number:.1} ns"),
            Self::Frames => format!("{number:.1} {}", self.short()),
            Self::Taps | Self::Pixels => format!("{number:.0} {}", self.short()),
        }
    }
}

/// Reads the measures that another program left: a JSON array of `{ "name", "unit", "ours" }`, each with
/// `"against"` and `"theirs"`, or `"budget"` (the most that it should be) or `"floor"` (the least), where there is one.
///
/// # Errors
/// Where the file isn't there or one of them can't be understood.
pub fn read(path: &Path) -> Result<Vec<Measure>> {
    let text = std::fs::read_to_string(path)
        .with_context(|| format!("what was to measure left no {}", path.display()))?;
    let left: Value =
        serde_json::from_str(&text).with_context(|| format!("{} is not JSON", path.display()))?;
    let items = left
        .as_array()
        .with_context(|| format!("{} is not an array", path.display()))?;
    items
        .iter()
        .map(|item| {
            Measure::from_json(item)
                .with_context(|| format!("{} holds what is no measure: {item}", path.display()))
        })
        .collect()
}

/// The whole report as JSON.
pub fn json(measures: &[Measure], compiler: &str) -> String {
    let measures: Vec<Value> = measures.iter().map(Measure::to_json).collect();
    let report = json!({ "compiler": compiler.trim(), "measures": measures });
    format!("{report:#}\n")
}

/// The whole report as a table.
pub fn table(measures: &[Measure]) -> String {
    let width = measures
        .iter()
        .map(|measure| measure.name.chars().count())
        .max()
        .unwrap_or(0);
    measures.iter().fold(String::new(), |mut table, measure| {
        let ours = measure.unit.written(measure.ours);
        let beside = measure
            .against
            .as_ref()
            .map_or_else(String::new, |(what, theirs)| {
                format!(
                    "   {:>12}  {what} (× {:.2})",
                    measure.unit.written(*theirs),
                    measure.ours / theirs
                )
            });
        let judged = measure.judged();
        // Writing into a string can't fail.
        let _ = writeln!(
            table,
            "{:<width$}  {ours:>12}{beside}{judged}",
            measure.name
        );
        table
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sample() -> Vec<Measure> {
        vec![
            Measure::new("first load", Unit::Bytes, 200_000.0)
                .against("one-button app", 20_000.0)
                .within(450_000.0),
            Measure::new("tap to paint", Unit::Milliseconds, 31.25),
            Measure::new("adding two lenses", Unit::Nanoseconds, 86.0)
                .against("one sine and cosine", 21.5),
            Measure {
                aim: Some(Aim::Floor(500.0)),
                ..Measure::new("frames in", Unit::Frames, 499.0)
            },
        ]
    }

    #[test]
    fn a_table_says_how_many_times_the_other_and_whether_within_budget() {
        let table = table(&sample());
        let lines: Vec<&str> = table.lines().collect();
        assert_eq!(
            lines[0],
            "first load             200.0 kB        20.0 kB  one-button app (× 10.00)   within the budget of 450.0 kB"
        );
        assert_eq!(lines[1], "tap to paint            31.2 ms");
        assert_eq!(
            lines[2],
            "adding two lenses       86.0 ns        21.5 ns  one sine and cosine (× 4.00)"
        );
        assert_eq!(
            lines[3],
            "frames in          499.0 frames/s   below the floor of 500.0 frames/s"
        );
    }

    #[test]
    fn what_is_written_can_be_read_back() {
        let report: Value = serde_json::from_str(&json(&sample(), "rustc 1.95.0\n")).unwrap();
        assert_eq!(report["compiler"], "rustc 1.95.0");
        let again: Vec<Measure> = report["measures"]
            .as_array()
            .unwrap()
            .iter()
            .filter_map(Measure::from_json)
            .collect();
        assert_eq!(again, sample());
    }

    #[test]
    fn a_measure_without_its_number_or_in_an_unknown_unit_is_refused() {
        assert_eq!(
            Measure::from_json(&json!({ "name": "x", "unit": "ms" })),
            None
        );
        assert_eq!(
            Measure::from_json(&json!({ "name": "x", "unit": "furlongs", "ours": 1 })),
            None
        );
    }
}
