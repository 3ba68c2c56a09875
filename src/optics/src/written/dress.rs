//! The customary ways of printing a lens. The same lens stands in each, and each can be read back.

use crate::SphereCyl;
use crate::format::{plain, power};
use std::fmt;

/// A cylinder that would print as 0.00 is not printed: its axis would be a random number.
const PRINTS_AS_ZERO: f64 = 0.005;

/// Which stroke stands for minus.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Minus {
    /// The true minus sign (U+2212).
    #[default]
    True,
    /// The hyphen of a typewriter, for what takes ASCII only.
    Hyphen,
}

/// What stands before the decimals.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Decimal {
    /// A point.
    #[default]
    Point,
    /// A comma.
    Comma,
}

/// What stands before the axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Mark {
    /// ×
    #[default]
    Times,
    /// x
    Letter,
    /// @
    At,
    /// ax
    Ax,
    /// axis
    Axis,
}

/// How a sphere of 0 is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Plano {
    /// 0.00
    #[default]
    Figures,
    /// plano
    Word,
    /// pl
    Short,
    /// ∞
    Infinity,
}

/// A way of printing a lens; the default is this project's own.
///
/// ```
/// use optics::SphereCyl;
/// use optics::written::{Decimal, Dress, Mark, Minus};
///
/// let lens = SphereCyl::parse("+2.00 / −1.00 × 5")?;
/// let typed = Dress { minus: Minus::Hyphen, mark: Mark::Letter, spaced: false, ..Dress::default() };
/// assert_eq!(lens.dressed(typed).to_string(), "+2.00/-1.00x5");
///
/// let spoken = Dress { decimal: Decimal::Comma, mark: Mark::Axis, units: true, three_digits: true, ..Dress::default() };
/// assert_eq!(lens.dressed(spoken).to_string(), "+2,00 DS / −1,00 DC axis 005");
/// # Ok::<(), optics::OpticsError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[expect(
    clippy::struct_excessive_bools,
    reason = "each is a habit of its own, and all combinations are met"
)]
pub struct Dress {
    /// Which stroke stands for minus.
    pub minus: Minus,
    /// What stands before the decimals.
    pub decimal: Decimal,
    /// What stands before the axis.
    pub mark: Mark,
    /// How a sphere of 0 is written.
    pub plano: Plano,
    /// Whether DS and DC stand behind sphere and cylinder; a sphere alone that is not 0 always has its DS.
    pub units: bool,
    /// Whether a stroke parts sphere and cylinder.
    pub stroke: bool,
    /// Whether there are spaces.
    pub spaced: bool,
    /// Whether a whole axis has three digits: 005.
    pub three_digits: bool,
}

impl Default for Dress {
    fn default() -> Self {
        Self {
            minus: Minus::True,
            decimal: Decimal::Point,
            mark: Mark::Times,
            plano: Plano::Figures,
            units: false,
            stroke: true,
            spaced: true,
            three_digits: false,
        }
    }
}

/// A lens in a dress, to be printed.
#[derive(Debug, Clone, Copy)]
pub struct Dressed {
    lens: SphereCyl,
    dress: Dress,
}

impl SphereCyl {
    /// The lens as it prints in a dress.
    pub const fn dressed(&self, dress: Dress) -> Dressed {
        Dressed { lens: *self, dress }
    }
}

impl fmt::Display for SphereCyl {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.dressed(Dress::default()).fmt(f)
    }
}

impl fmt::Display for Dressed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let dress = self.dress;
        let space = if dress.spaced { " " } else { "" };
        let cylinder = self.lens.cylinder;
        let Some(c) = cylinder.filter(|c| c.power().abs() >= PRINTS_AS_ZERO) else {
            return f.write_str(&dress.sphere(self.lens.mean_sphere(), true));
        };
        let stroke = if dress.stroke { "/" } else { "" };
        let gap = if dress.stroke { space } else { "" };
        let unit = if dress.units {
            format!("{space}DC")
        } else {
            String::new()
        };
        write!(
            f,
            "{}{space}{stroke}{gap}{}{unit}{space}{}{space}{}",
            dress.sphere(self.lens.sphere, dress.units),
            dress.figures(c.power()),
            dress.mark(),
            dress.axis(c.axis().degrees()),
        )
    }
}

impl Dress {
    fn figures(self, value: f64) -> String {
        let mut text = power(value);
        if self.minus == Minus::Hyphen {
            text = text.replace('−', "-");
        }
        self.decimals(text)
    }

    fn decimals(self, text: String) -> String {
        match self.decimal {
            Decimal::Point => text,
            Decimal::Comma => text.replace('.', ","),
        }
    }

    fn sphere(self, value: f64, with_unit: bool) -> String {
        let figures = self.figures(value);
        let is_plano = !figures.starts_with(['+', '−', '-']);
        match (is_plano, self.plano) {
            (true, Plano::Word) => "plano".to_owned(),
            (true, Plano::Short) => "pl".to_owned(),
            (true, Plano::Infinity) => "∞".to_owned(),
            (false, _) if with_unit => format!("{figures}{}DS", if self.spaced { " " } else { "" }),
            (true, Plano::Figures) | (false, _) => figures,
        }
    }

    const fn mark(self) -> &'static str {
        match self.mark {
            Mark::Times => "×",
            Mark::Letter => "x",
            Mark::At => "@",
            Mark::Ax => "ax",
            Mark::Axis => "axis",
        }
    }

    /// Degrees to one decimal, with 180 where rounding gives 0.
    fn axis(self, degrees: f64) -> String {
        let text = match plain(degrees, 1) {
            zero if zero == "0" => "180".to_owned(),
            text => text,
        };
        let is_whole = !text.contains('.');
        if is_whole && self.three_digits {
            format!("{text:0>3}")
        } else {
            self.decimals(text)
        }
    }
}
