//! A number as a widget handles it: how it is shown, said, typed and stepped.

use ::words::app::widgets as say;
use optics::format;

/// What a number counts; chosen for the ear as much as for the eye.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Unit {
    /// Lens power. Shown bare, because the sign already tells what it is.
    Dioptres,
    /// An axis or a meridian. Shown bare, as the trade writes it.
    Degrees,
    /// A length in centimetres.
    Centimetres,
    /// A length in millimetres.
    Millimetres,
    /// A length in metres.
    Metres,
    /// A length in feet.
    Feet,
    /// A time in months.
    Months,
    /// A time in minutes.
    Minutes,
    /// A prism in prism dioptres.
    PrismDioptres,
    /// A pressure in millimetres of mercury.
    Mercury,
    /// Parts of a hundred.
    Percent,
    /// How many times larger.
    Times,
    /// A bare count.
    #[default]
    Count,
}

impl Unit {
    /// The unit as read aloud; empty for a count.
    pub fn spoken(self) -> &'static str {
        match self {
            Self::Dioptres => say::dioptres(),
            Self::Degrees => say::degrees(),
            Self::Centimetres => say::centimetres(),
            Self::Millimetres => say::millimetres(),
            Self::Metres => say::metres(),
            Self::Feet => say::feet(),
            Self::Months => say::months(),
            Self::Minutes => say::minutes(),
            Self::PrismDioptres => say::prism_dioptres(),
            Self::Mercury => say::millimetres_mercury(),
            Self::Percent => say::percent(),
            Self::Times => say::times(),
            Self::Count => "",
        }
    }

    /// The unit as written after the number; empty where the trade writes none.
    pub fn written(self) -> &'static str {
        match self {
            Self::Dioptres | Self::Degrees | Self::Count => "",
            Self::Centimetres => say::cm(),
            Self::Millimetres => say::mm(),
            Self::Metres => "m",
            Self::Feet => say::ft(),
            Self::Months => say::months(),
            Self::Minutes => say::min(),
            Self::PrismDioptres => "\u{394}",
            Self::Mercury => say::mmhg(),
            Self::Percent => "%",
            Self::Times => "\u{d7}",
        }
    }
}

/// How one field's number is stepped, shown and said. Limits of the trade stay in `check`; these bound the buttons.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rules {
    /// One tap. More than zero.
    pub step: f64,
    /// One page key.
    pub page: f64,
    /// The least that a button, drag or key reaches.
    pub min: f64,
    /// The most that a button, drag or key reaches.
    pub max: f64,
    /// Decimals shown, and the most that may be typed.
    pub decimals: usize,
    /// Whether decimals that are all zero are left away (axes: 90, but 87.5).
    pub trimmed: bool,
    /// Whether the sign always stands.
    pub signed: bool,
    /// Whether the number goes round: after `max` comes the first step above `min` (axes: after 180 comes 5).
    pub round: bool,
    /// What it counts.
    pub unit: Unit,
}

/// Binary fractions of a step drift by far less than this part of it; a lens is off the grid by far more.
const OFF_GRID: f64 = 1e-6;

impl Rules {
    /// A lens power from `-most` to `most` dioptres. A page key is one dioptre.
    pub fn lens(most: f64, step: f64) -> Self {
        let (min, max) = (-most, most);
        Self {
            step,
            page: 1.0,
            min,
            max,
            decimals: 2,
            trimmed: false,
            signed: true,
            round: false,
            unit: Unit::Dioptres,
        }
    }

    /// An axis: 180 stands for 0, and it goes round. A page key is 30 degrees.
    pub fn axis(step: f64) -> Self {
        let (min, max) = (0.0, 180.0);
        Self {
            step,
            page: 30.0,
            min,
            max,
            decimals: 1,
            trimmed: true,
            signed: false,
            round: true,
            unit: Unit::Degrees,
        }
    }

    /// The number as written: a true minus, a sign on everything but nought where `signed`.
    pub fn show(&self, value: f64) -> String {
        let text = match (self.unit, self.trimmed) {
            (Unit::Dioptres, _) => format::power(value),
            (_, true) => format::plain(value, self.decimals),
            (_, false) => format::signed(value, self.decimals),
        };
        if self.signed {
            text
        } else {
            text.trim_start_matches('+').to_owned()
        }
    }

    /// The number as read aloud: "plus 3.25 dioptres".
    pub fn say(&self, value: f64) -> String {
        let spelt = self
            .show(value)
            .replace('\u{2212}', say::minus_spoken())
            .replace('+', say::plus_spoken());
        format!("{spelt} {}", self.unit.spoken())
            .trim_end()
            .to_owned()
    }

    /// The value `steps` steps away, on the step's own grid: from 3.12 one quarter up is 3.25. Never beyond the ends.
    pub fn stepped(&self, value: f64, steps: i32) -> f64 {
        if steps == 0 {
            return value;
        }
        let place = value / self.step;
        let from = if steps > 0 {
            (place + OFF_GRID).floor()
        } else {
            (place - OFF_GRID).ceil()
        };
        self.held((from + f64::from(steps)) * self.step)
    }

    /// The value a page key away, up or down.
    pub fn paged(&self, value: f64, pages: i32) -> f64 {
        Self {
            step: self.page,
            ..*self
        }
        .stepped(value, pages)
    }

    /// Brought within the ends, or round them.
    fn held(&self, value: f64) -> f64 {
        if !self.round {
            return value.clamp(self.min, self.max);
        }
        let turned = (value - self.min).rem_euclid(self.max - self.min) + self.min;
        if turned <= self.min { self.max } else { turned }
    }

    /// Reads what was typed: a sign of any kind, digits, one dot or comma.
    ///
    /// # Errors
    /// One sentence for the field, where it is no number or has more decimals than the field keeps.
    pub fn read(&self, typed: &str) -> Result<f64, String> {
        let plain: String = typed
            .trim()
            .chars()
            .filter(|c| !c.is_whitespace())
            .map(plain_char)
            .collect();
        let digits = plain.trim_start_matches(['+', '-']);
        let signs = plain.len() - digits.len();
        let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
        let all_digits = |text: &str| text.chars().all(|c| c.is_ascii_digit());
        if signs > 1
            || !all_digits(whole)
            || !all_digits(part)
            || (whole.is_empty() && part.is_empty())
        {
            return Err(say::no_number_like(&typed.trim(), &self.sample()));
        }
        if part.len() > self.decimals {
            return Err(match self.decimals {
                0 => say::whole_numbers_only().to_owned(),
                1 => say::one_decimal_most().to_owned(),
                n => say::decimals_at_most(&n),
            });
        }
        let value = plain
            .trim_start_matches('+')
            .parse()
            .map_err(|_| say::no_number(&plain))?;
        Ok(if self.unit == Unit::Dioptres {
            as_lens(value)
        } else {
            value
        })
    }

    fn sample(&self) -> String {
        if self.signed {
            self.show(-1.25)
        } else {
            self.show(if self.max < 10.0 { 1.0 } else { 10.0 })
        }
    }
}

/// A power written like an eighth of a dioptre is that eighth: 0.12 on the lens is 0.125 in the path.
fn as_lens(value: f64) -> f64 {
    let eighth = optics::Step::Eighth.nearest(value);
    if format::power(eighth) == format::power(value) {
        eighth
    } else {
        value
    }
}

/// Keyboards and pasted text write the minus and the decimal mark in several ways.
fn plain_char(c: char) -> char {
    match c {
        '\u{2212}' | '\u{2012}' | '\u{2013}' | '\u{2014}' | '\u{2010}' | '\u{2011}' => '-',
        ',' => '.',
        other => other,
    }
}

#[cfg(test)]
mod tests {
    use super::{Rules, Unit};

    fn count(decimals: usize, max: f64) -> Rules {
        Rules {
            decimals,
            max,
            min: 0.0,
            signed: false,
            unit: Unit::Centimetres,
            ..Rules::lens(40.0, 1.0)
        }
    }

    // How a power is written (sign always, two decimals, true minus): common practice, no source.
    #[test]
    fn a_power_is_written_with_its_sign() {
        let lens = Rules::lens(40.0, 0.25);
        assert_eq!(lens.show(3.25), "+3.25");
        assert_eq!(lens.show(-0.5), "\u{2212}0.50");
        assert_eq!(lens.show(0.0), "0.00");
        assert_eq!(lens.show(-0.0), "0.00");
        assert_eq!(lens.show(-0.004), "0.00");
    }

    #[test]
    fn a_number_is_said_in_words() {
        assert_eq!(Rules::lens(40.0, 0.25).say(3.25), "plus 3.25 dioptres");
        assert_eq!(Rules::lens(40.0, 0.25).say(-1.5), "minus 1.50 dioptres");
        assert_eq!(Rules::lens(40.0, 0.25).say(0.0), "0.00 dioptres");
        assert_eq!(Rules::axis(5.0).say(87.5), "87.5 degrees");
        assert_eq!(count(0, 120.0).say(67.0), "67 centimetres");
    }

    #[test]
    fn a_step_lands_on_the_grid() {
        let lens = Rules::lens(40.0, 0.25);
        assert_eq!(lens.stepped(3.12, 1), 3.25);
        assert_eq!(lens.stepped(3.12, -1), 3.0);
        assert_eq!(lens.stepped(3.25, 1), 3.5);
        assert_eq!(lens.stepped(0.25, -2), -0.25);
        assert_eq!(lens.stepped(39.9, 3), 40.0);
        assert_eq!(lens.paged(3.25, 1), 4.0);
        assert_eq!(lens.paged(3.25, -1), 3.0);
    }

    #[test]
    fn small_steps_do_not_drift() {
        let lens = Rules::lens(40.0, 0.1);
        let walked = (0..300).fold(0.0, |at, _| lens.stepped(at, 1));
        assert!((walked - 30.0).abs() < 1e-9, "{walked}");
    }

    // 0 and 180 are one meridian and 180 is the way to write it: ISO 8429 as the design cites it.
    #[test]
    fn an_axis_goes_round() {
        let axis = Rules::axis(5.0);
        assert_eq!(axis.stepped(180.0, 1), 5.0);
        assert_eq!(axis.stepped(5.0, -1), 180.0);
        assert_eq!(axis.stepped(87.0, 1), 90.0);
        assert_eq!(axis.stepped(180.0, -1), 175.0);
        assert_eq!(axis.show(180.0), "180");
        assert_eq!(axis.show(87.5), "87.5");
        assert_eq!(axis.show(100.0), "100");
    }

    #[test]
    fn what_hands_type_is_read() {
        let lens = Rules::lens(40.0, 0.25);
        for (typed, value) in [
            ("-1.25", -1.25),
            ("\u{2212}1,25", -1.25),
            ("\u{2013}1.25", -1.25),
            ("+3.5", 3.5),
            (" 3 ", 3.0),
            (".5", 0.5),
            ("- 2.", -2.0),
            ("0", 0.0),
        ] {
            assert_eq!(lens.read(typed), Ok(value), "{typed}");
        }
    }

    // Eighth-dioptre lenses are engraved with the last figure cut: common practice, no source.
    #[test]
    fn an_eighth_typed_as_engraved_is_that_eighth() {
        let lens = Rules::lens(40.0, 0.125);
        assert_eq!(lens.read("0.12"), Ok(0.125));
        assert_eq!(lens.read("-0.87"), Ok(-0.875));
        assert_eq!(lens.read("0.30"), Ok(0.3));
        assert_eq!(lens.show(lens.stepped(0.125, 1)), "+0.25");
    }

    #[test]
    fn what_is_no_number_is_refused_in_one_sentence() {
        let lens = Rules::lens(40.0, 0.25);
        for typed in [
            "", "-", ".", "abc", "1.2.3", "--1", "+-1", "1e3", "inf", "NaN", "1-2", "\u{0663}",
        ] {
            assert!(lens.read(typed).is_err(), "{typed}");
        }
        assert_eq!(
            lens.read("plano").unwrap_err(),
            "\u{201c}plano\u{201d} is not a number: write it like \u{2212}1.25"
        );
        assert_eq!(lens.read("1.125").unwrap_err(), "2 decimals at most");
        assert_eq!(
            count(0, 120.0).read("66.7").unwrap_err(),
            "whole numbers only"
        );
    }
}
