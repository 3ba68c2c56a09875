//! What a field accepts, with one plain sentence for what it does not.
//!
//! The ranges are wide enough for any eye that is met and narrow enough to stop a slipped finger or a lost decimal
//! point. They are this project's choice (common practice, no source) save where a line below says otherwise.

use crate::SphereCyl;
use crate::format::{plain, signed};
use ::words::optics::limits as say;
use std::fmt;
use thiserror::Error;

/// How a limited quantity is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unit {
    /// Dioptres, signed, two decimals.
    Dioptres,
    /// Degrees.
    Degrees,
    /// Centimetres.
    Centimetres,
    /// Millimetres.
    Millimetres,
    /// Metres.
    Metres,
    /// Prism dioptres.
    PrismDioptres,
    /// Parts of the whole.
    Share,
    /// A plain number without a unit.
    Number,
    /// logMAR, the scale of acuity.
    LogMar,
    /// Letters read.
    Letters,
    /// Printer's points.
    Points,
    /// M units of print.
    MUnits,
    /// Years of age.
    Years,
    /// A ratio.
    Times,
    /// Millimetres of mercury.
    Mercury,
    /// Parts of a hundred.
    Percent,
}

impl Unit {
    /// The unit as it stands behind a number, with the space before it.
    pub(crate) fn symbol(self) -> &'static str {
        match self {
            Self::Dioptres => say::unit_dioptres(),
            Self::Degrees => say::unit_degrees(),
            Self::Centimetres => " cm",
            Self::Millimetres => " mm",
            Self::Metres => " m",
            Self::PrismDioptres => " Δ",
            Self::Share => say::unit_of_the_whole(),
            Self::Number => "",
            Self::LogMar => " logMAR",
            Self::Letters => say::unit_letters(),
            Self::Points => say::unit_points(),
            Self::MUnits => " M",
            Self::Years => say::unit_years(),
            Self::Times => say::unit_times(),
            Self::Mercury => " mmHg",
            Self::Percent => say::unit_percent(),
        }
    }

    fn write(self, value: f64) -> String {
        match self {
            Self::Dioptres => signed(value, 2),
            _ => plain(value, 2),
        }
    }
}

/// The range that one field accepts, both ends included.
#[derive(Debug, Clone, Copy)]
pub struct Limit {
    /// The field in the trade's word, after "the", in the language spoken.
    pub what: fn() -> &'static str,
    /// The unit of the ends.
    pub unit: Unit,
    /// The least accepted.
    pub low: f64,
    /// The most accepted.
    pub high: f64,
}

/// The same field, in whatever language, with the same ends.
impl PartialEq for Limit {
    fn eq(&self, other: &Self) -> bool {
        (self.what)() == (other.what)()
            && (self.unit, self.low, self.high) == (other.unit, other.low, other.high)
    }
}

impl Limit {
    const fn new(what: fn() -> &'static str, unit: Unit, low: f64, high: f64) -> Self {
        Self {
            what,
            unit,
            low,
            high,
        }
    }

    /// Gives the value back where the field accepts it.
    ///
    /// # Errors
    /// [`OutOfRange`] outside the range or for what is not a number.
    pub fn check(self, value: f64) -> Result<f64, OutOfRange> {
        if value >= self.low && value <= self.high {
            Ok(value)
        } else {
            Err(OutOfRange { limit: self, value })
        }
    }
}

/// A value that a field does not accept. Prints as one plain sentence to stand beside the field.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub struct OutOfRange {
    /// The range that was left.
    pub limit: Limit,
    /// The value as it came.
    pub value: f64,
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Limit {
            what,
            unit,
            low,
            high,
        } = self.limit;
        let what = what();
        if self.value.is_nan() {
            return f.write_str(&say::not_a_number(&what));
        }
        let [low, high, value] = [low, high, self.value].map(|value| unit.write(value));
        f.write_str(&say::outside(&what, &low, &high, &unit.symbol(), &value))
    }
}

macro_rules! fields {
    ($($(#[$doc:meta])* $name:ident, $limit:ident = $what:ident, $unit:ident, $low:literal..=$high:literal;)*) => {$(
        $(#[$doc])*
        pub const $limit: Limit = Limit::new(say::$what, Unit::$unit, $low, $high);

        $(#[$doc])*
        ///
        /// # Errors
        /// [`OutOfRange`] with a sentence for the field.
        pub fn $name(value: f64) -> Result<f64, OutOfRange> {
            $limit.check(value)
        }
    )*};
}

fields! {
    /// A sphere in dioptres.
    sphere, SPHERE = sphere, Dioptres, -40.0..=40.0;
    /// A cylinder in dioptres; 0 means none.
    cylinder, CYLINDER = cylinder, Dioptres, -15.0..=15.0;
    /// The axis of a cylinder in degrees; 0 is taken and written 180.
    axis, AXIS = axis, Degrees, 0.0..=180.0;
    /// How far a lens has turned in degrees, anticlockwise positive.
    turn, TURN = turn, Degrees, -90.0..=90.0;
    /// A meridian in degrees; 0 is taken and written 180.
    meridian, MERIDIAN = meridian, Degrees, 0.0..=180.0;
    /// The power that neutralises one meridian, in dioptres: a sphere and a cylinder together.
    meridian_power, MERIDIAN_POWER = power_in_a_meridian, Dioptres, -55.0..=55.0;
    /// The standard deviation of what was found in a meridian, in dioptres.
    meridian_sd, MERIDIAN_SD = uncertainty_of_a_meridian, Dioptres, 0.01..=10.0;
    /// A probability that stands for an ellipse.
    probability, PROBABILITY = probability, Number, 0.0001..=0.9999;
    /// The working distance in centimetres, from the retinoscope to the trial lens nearest the eye.
    distance_cm, DISTANCE_CM = working_distance, Centimetres, 10.0..=120.0;
    /// A working lens in dioptres: +10.00 goes with the shortest distance.
    working_lens, WORKING_LENS = working_lens, Dioptres, 0.25..=10.0;
    /// The distance between neighbouring cells of a trial frame in millimetres; 3 to 5 is usual.
    cell_spacing_mm, CELL_SPACING_MM = distance_between_cells, Millimetres, 0.0..=10.0;
    /// The distance from the back of the lens to the cornea in millimetres; 10 to 14 is usual.
    vertex_mm, VERTEX_MM = vertex_distance, Millimetres, 5.0..=25.0;
    /// The same for any place that a lens can be moved to, in millimetres: a contact lens is at 0.
    worn_mm, WORN_MM = distance_from_the_cornea, Millimetres, 0.0..=25.0;
    /// Where the streak stands, in millimetres from the pupil's middle.
    streak_mm, STREAK_MM = place_of_the_streak, Millimetres, -100.0..=100.0;
    /// How far the retinoscope is off the line of sight, in degrees: the table ends at 20.
    off_sight, OFF_SIGHT = angle_off_the_line_of_sight, Degrees, 0.0..=20.0;
    /// How far the retinoscope stands beside the line of sight, in centimetres.
    beside_cm, BESIDE_CM = distance_beside_the_line_of_sight, Centimetres, 0.0..=50.0;
    /// How far before a lens the thing is that sends the light, in centimetres.
    object_cm, OBJECT_CM = distance_before_the_lens, Centimetres, 1.0..=1000.0;
    /// A lens held over a worn one, in any meridian, in dioptres: with the strongest working lens it stays far from its focus.
    held_over, HELD_OVER = lens_held_over, Dioptres, -20.0..=20.0;
    /// Between a worn lens and one held over it, in millimetres.
    over_gap_mm, OVER_GAP_MM = gap_between_the_lenses, Millimetres, 0.0..=30.0;
    /// The width of a pupil in millimetres.
    pupil_mm, PUPIL_MM = pupil, Millimetres, 0.5..=10.0;
    /// The thickness of a lens at its middle, in millimetres.
    thickness_mm, THICKNESS_MM = thickness, Millimetres, 0.0..=30.0;
    /// The refractive index of a lens: the lightest plastics are about 1.49, the densest glass about 1.9.
    index, INDEX = refractive_index, Number, 1.3..=2.0;
    /// The power of one surface of a lens in dioptres, in any meridian.
    surface, SURFACE = surface_power, Dioptres, -60.0..=60.0;
    /// A reading addition in dioptres, low-vision additions included.
    add, ADD = addition, Dioptres, 0.25..=20.0;
    /// The distance of a near task in centimetres.
    near_cm, NEAR_CM = near_distance, Centimetres, 5.0..=100.0;
    /// The number under the 6 of a line's label: the smallest letters to the largest.
    chart_label, CHART_LABEL = label_of_the_line, Number, 2.0..=600.0;
    /// The distance that a letter chart is made for, or is used at, in metres.
    chart_m, CHART_M = chart_distance, Metres, 0.25..=10.0;
    /// A prism in prism dioptres, or one of its components, without its base.
    prism, PRISM = prism, PrismDioptres, 0.0..=50.0;
    /// Where the base of a prism lies, in degrees.
    prism_base, PRISM_BASE = base_of_the_prism, Degrees, 0.0..=360.0;
    /// The angle by which a prism turns a ray, in degrees.
    deviation, DEVIATION = angle_of_deviation, Degrees, 0.0..=45.0;
    /// How far the centre of a lens stands from the eye's line, along one direction, in millimetres.
    decentration_mm, DECENTRATION_MM = decentration, Millimetres, -40.0..=40.0;
    /// How far below the centres of the lenses the eyes read, in millimetres; 8 to 12 is usual.
    reading_drop_mm, READING_DROP_MM = drop_to_the_reading_point, Millimetres, 0.0..=30.0;
    /// From the middle of the bridge to one pupil or one lens's centre, in millimetres.
    half_distance_mm, HALF_DISTANCE_MM = distance_from_the_bridge, Millimetres, 15.0..=50.0;
    /// Between the two pupils, or the two middles of a frame, in millimetres.
    centre_distance_mm, CENTRE_DISTANCE_MM = distance_between_centres, Millimetres, 30.0..=100.0;
    /// The part of a prism that stays before the eye it is written for.
    share, SHARE = share_of_the_prism, Share, 0.0..=1.0;
    /// The height of a segment or of a fitting cross above the lowest point of the lens, in millimetres.
    segment_mm, SEGMENT_MM = segment_height, Millimetres, 2.0..=50.0;
    /// An acuity in logMAR: charts end at about −0.30 and 1.70, and a far chart read close by at about 2.60.
    logmar, LOGMAR = acuity, LogMar, -1.0..=3.0;
    /// The letter count of an even chart.
    letters, LETTERS = letter_count, Letters, 0.0..=100.0;
    /// Letters read at 4 m: fourteen lines of five.
    letters_at_4_m, LETTERS_AT_4_M = letter_count_at_4_m, Letters, 0.0..=70.0;
    /// Letters read at 1 m, of the six largest lines.
    letters_at_1_m, LETTERS_AT_1_M = letter_count_at_1_m, Letters, 0.0..=30.0;
    /// Letters missed of a line, or read of the next.
    letters_of_a_line, LETTERS_OF_A_LINE = letters_missed_or_gained, Letters, 0.0..=7.0;
    /// The distance at which fingers were counted, in centimetres.
    fingers_cm, FINGERS_CM = distance_of_the_fingers, Centimetres, 1.0..=600.0;
    /// The size of print in points.
    print_points, PRINT_POINTS = size_of_print, Points, 1.0..=200.0;
    /// The size of print in M units.
    print_m_units, PRINT_M_UNITS = size_of_print, MUnits, 0.1..=25.0;
    /// The age of a person in years.
    age, AGE = age, Years, 0.0..=120.0;
    /// The amplitude of accommodation in dioptres; 25 is the most at birth by any formula.
    amplitude, AMPLITUDE = amplitude_of_accommodation, Dioptres, 0.0..=25.0;
    /// A reading addition in dioptres, or none.
    add_or_none, ADD_OR_NONE = addition, Dioptres, 0.0..=20.0;
    /// The power of a magnifier in dioptres.
    magnifier, MAGNIFIER = power_of_the_magnifier, Dioptres, 0.25..=80.0;
    /// The farthest that is clear with an addition, in centimetres; 4 m is as far as a room.
    clear_to_cm, CLEAR_TO_CM = farthest_clear_distance, Centimetres, 5.0..=400.0;
    /// How many times something magnifies: from hardly to what a screen does.
    magnified, MAGNIFIED = magnification, Times, 1.0..=100.0;
    /// The pressure in an eye in mmHg: emergencies reach 70 and more.
    pressure_mmhg, PRESSURE_MMHG = pressure, Mercury, 0.0..=80.0;
    /// The cup's height as a part of the disc's.
    cup_to_disc, CUP_TO_DISC = cup_to_disc_ratio, Number, 0.0..=1.0;
    /// The depth of the chamber at the limbus, in percent of the cornea's thickness: 100 stands for that and more.
    limbal_percent, LIMBAL_PERCENT = depth_at_the_limbus, Percent, 0.0..=150.0;
    /// The strength of a drop in percent.
    strength_percent, STRENGTH_PERCENT = strength_of_the_drop, Percent, 0.01..=20.0;
    /// Nuclear opalescence on the Lens Opacities Classification System III (range as widely cited, from memory).
    locs_nuclear, LOCS_NUCLEAR = nuclear_grade, Number, 0.1..=6.9;
    /// Cortical or posterior subcapsular opacity on the same scale (range as widely cited, from memory).
    locs_other, LOCS_OTHER = opacity_grade, Number, 0.1..=5.9;
    /// How many times larger than the threshold print is to be.
    acuity_reserve, ACUITY_RESERVE = acuity_reserve, Times, 1.0..=10.0;
}

/// Both powers of a lens as a field takes them.
///
/// # Errors
/// [`OutOfRange`] for the sphere, else for the cylinder.
pub fn lens(lens: &SphereCyl) -> Result<(), OutOfRange> {
    sphere(lens.sphere)?;
    cylinder(lens.cylinder_power())?;
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_ends_are_accepted() {
        assert_eq!(sphere(40.0), Ok(40.0));
        assert_eq!(sphere(-40.0), Ok(-40.0));
        assert_eq!(axis(0.0), Ok(0.0));
        assert_eq!(distance_cm(10.0), Ok(10.0));
        assert_eq!(add(20.0), Ok(20.0));
    }

    #[test]
    fn each_refusal_is_one_sentence_with_range_and_value() {
        let said = |result: Result<f64, OutOfRange>| result.unwrap_err().to_string();
        assert_eq!(
            said(axis(200.0)),
            "the axis can be 0 to 180 degrees, and 200 is outside that"
        );
        assert_eq!(
            said(sphere(90.0)),
            "the sphere can be −40.00 to +40.00 D, and +90.00 is outside that"
        );
        assert_eq!(
            said(distance_cm(0.0)),
            "the working distance can be 10 to 120 cm, and 0 is outside that"
        );
        assert_eq!(said(cylinder(f64::NAN)), "the cylinder is not a number");
    }

    #[test]
    fn endless_values_are_refused() {
        for value in [f64::INFINITY, f64::NEG_INFINITY, f64::NAN] {
            assert!(sphere(value).is_err());
            assert!(distance_cm(value).is_err());
        }
    }
}
