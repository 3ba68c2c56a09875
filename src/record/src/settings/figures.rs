//! Every figure of the second look that local rules may change, with its words and its unit.

use ::words::record::figures as say;
use optics::change::Threshold;
use optics::format::plain;

use crate::second_look::Thresholds;

/// What a figure counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FigureUnit {
    /// Dioptres.
    Dioptres,
    /// Degrees.
    Degrees,
    /// Years of age.
    Years,
    /// Steps of acuity in logMAR.
    LogMar,
    /// Metres.
    Metres,
    /// Millimetres.
    Millimetres,
    /// Millimetres of mercury.
    Mmhg,
    /// Parts of the disc.
    OfTheDisc,
    /// Falls in twelve months.
    Falls,
}

impl FigureUnit {
    /// As it is written after the figure.
    pub fn word(self) -> &'static str {
        match self {
            Self::Dioptres => say::unit_dioptres(),
            Self::Degrees => "°",
            Self::Years => say::unit_years(),
            Self::LogMar => "logMAR",
            Self::Metres => "m",
            Self::Millimetres => "mm",
            Self::Mmhg => "mmHg",
            Self::OfTheDisc => say::unit_of_the_disc(),
            Self::Falls => say::unit_falls(),
        }
    }

    /// A figure with its unit: "24 mmHg", "1 fall in twelve months".
    ///
    /// ```
    /// use record::FigureUnit;
    /// assert_eq!(FigureUnit::Mmhg.written(24.0), "24 mmHg");
    /// assert_eq!(FigureUnit::Falls.written(1.0), "1 fall in twelve months");
    /// assert_eq!(FigureUnit::Falls.written(2.0), "2 falls in twelve months");
    /// ```
    pub fn written(self, value: f64) -> String {
        let figure = plain(value, self.decimals());
        let word = match self {
            Self::Falls if figure == "1" => say::fall_in_twelve_months(),
            Self::Falls => say::falls_in_twelve_months(),
            Self::Years if figure == "1" => say::unit_year(),
            other => other.word(),
        };
        format!("{figure} {word}")
    }

    /// One step of a control.
    pub const fn step(self) -> f64 {
        match self {
            Self::Dioptres => 0.25,
            Self::LogMar | Self::OfTheDisc => 0.05,
            Self::Metres => 0.5,
            Self::Degrees | Self::Years | Self::Millimetres | Self::Mmhg | Self::Falls => 1.0,
        }
    }

    /// Decimals shown.
    pub const fn decimals(self) -> usize {
        match self {
            Self::Dioptres | Self::LogMar | Self::OfTheDisc => 2,
            Self::Metres => 1,
            Self::Degrees | Self::Years | Self::Millimetres | Self::Mmhg | Self::Falls => 0,
        }
    }

    /// As far as a control reaches; the second look takes any figure from 0 up.
    pub const fn most(self) -> f64 {
        match self {
            Self::Dioptres | Self::Falls => 20.0,
            Self::Degrees => 90.0,
            Self::Years => 125.0,
            Self::LogMar | Self::OfTheDisc => 1.0,
            Self::Metres => 10.0,
            Self::Millimetres => 40.0,
            Self::Mmhg => 80.0,
        }
    }
}

macro_rules! figures {
    ($($name:ident = $slug:literal, $($field:ident).+, $unit:ident, $words:path;)*) => {
        /// A figure at which the second look asks.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[allow(missing_docs, reason = "each is a field of `Thresholds`, and is described there")]
        pub enum Figure {
            $($name,)*
        }

        impl Figure {
            /// Every figure.
            pub const ALL: &[Self] = &[$(Self::$name,)*];

            /// The word by which settings know it. Never used again for another figure.
            pub const fn slug(self) -> &'static str {
                match self {
                    $(Self::$name => $slug,)*
                }
            }

            /// What it says, before the figure.
            pub fn words(self) -> &'static str {
                match self {
                    $(Self::$name => $words(),)*
                }
            }

            /// Its unit.
            pub const fn unit(self) -> FigureUnit {
                match self {
                    $(Self::$name => FigureUnit::$unit,)*
                }
            }

            /// It, among these.
            pub const fn of(self, all: &Thresholds) -> &Threshold {
                match self {
                    $(Self::$name => &all.$($field).+,)*
                }
            }

            pub(super) const fn of_mut(self, all: &mut Thresholds) -> &mut Threshold {
                match self {
                    $(Self::$name => &mut all.$($field).+,)*
                }
            }
        }
    };
}

figures! {
    FrailFromYears = "frail-from", frail_from_years, Years, say::frail_from;
    Sphere = "change-sphere", change.sphere, Dioptres, say::change_sphere;
    Cylinder = "change-cylinder", change.cylinder, Dioptres, say::change_cylinder;
    NewCylinder = "new-cylinder", change.new_cylinder, Dioptres, say::new_cylinder;
    AxisDegrees = "axis-turned", change.axis_degrees, Degrees, say::axis_turned;
    AxisCylinder = "axis-cylinder", change.axis_cylinder, Dioptres, say::axis_cylinder;
    AxisBlurFrom = "axis-blur", axis_blur_from, Dioptres, say::axis_blur;
    ObliqueBeyond = "oblique-beyond", change.oblique_beyond, Degrees, say::oblique_beyond;
    NewAnisometropia = "new-anisometropia", change.new_anisometropia, Dioptres, say::new_anisometropia;
    DistanceWithin = "distance-within", distance_within, Dioptres, say::distance_within;
    DistanceBeyond = "distance-beyond", distance_beyond, Dioptres, say::distance_beyond;
    SignFrom = "sign-from", sign_from, Dioptres, say::sign_from;
    CrossedWithin = "crossed-within", crossed_within, Degrees, say::crossed_within;
    CrossedCylinder = "crossed-cylinder", crossed_cylinder, Dioptres, say::crossed_cylinder;
    SwappedBy = "swapped-by", swapped_by, Dioptres, say::swapped_by;
    MyopicShift = "myopic-shift", myopic_shift, Dioptres, say::myopic_shift;
    PinholeWorse = "pinhole-worse", pinhole_worse, LogMar, say::pinhole_worse;
    AcuityWorse = "acuity-worse", acuity_worse, LogMar, say::acuity_worse;
    FarFrom = "far-from", far_from_m, Metres, say::far_from;
    AdditionFromYears = "addition-from", addition_from_years, Years, say::addition_from;
    AdditionWithin = "addition-within", addition_within, Dioptres, say::addition_within;
    ReadingDrop = "reading-drop", reading_drop_mm, Millimetres, say::reading_drop;
    FallsFrom = "falls-from", falls_from, Falls, say::falls_from;
    PressureHighMmhg = "pressure-high", pressure_high_mmhg, Mmhg, say::pressure_high;
    PressureVeryHighMmhg = "pressure-very-high", pressure_very_high_mmhg, Mmhg, say::pressure_very_high;
    PressureApartMmhg = "pressure-apart", pressure_apart_mmhg, Mmhg, say::pressure_apart;
    CupsApart = "cups-apart", cups_apart, OfTheDisc, say::cups_apart;
}
