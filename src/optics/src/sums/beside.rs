//! Sums that stand beside the one equation: over a worn lens, in the dark, from beside, and how the reflex runs.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{lens, number, power, working_distance};
use super::retinoscopy::{CELL, CM, HELD, SPACING, minded, setup};
use super::shared::{dioptres, in_dioptres, mind, nearest, size};
use crate::format::{plain, signed};
use crate::retinoscopy::reflex::{self, Light, Pace};
use crate::retinoscopy::{Motion, near_technique, off_sight, over_lens};
use crate::{Line, limits};
use ::words::optics::sums_retinoscopy as say;

const WORN: Ask = Ask::new("worn", say::ask_lens_worn, "+2.50 / −1.00 × 90", Kind::Lens);
const OVER: Ask = Ask::new(
    "over",
    say::ask_lens_that_was_neutral_over_it,
    "+0.50",
    Kind::Lens,
);
const GAP: Ask = Ask::new(
    "gap",
    say::ask_gap_between_the_lenses,
    "10 mm",
    Kind::Number(limits::OVER_GAP_MM),
)
.or(say::or_touching);

/// Retinoscopy over a worn lens.
pub(super) const OVER_LENS: Sum = Sum {
    slug: "over-lens",
    name: say::title_over_lens,
    about: say::about_over_lens,
    asks: &[WORN, OVER, CM, HELD, GAP, CELL, SPACING],
    answer: over_worn,
};

fn over_worn(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let worn = asked.need(&WORN, lens)?;
    let over = asked.need(&OVER, lens)?;
    let gap = asked.find(&GAP, number)?.unwrap_or(0.0);
    let found = over_lens::found(&worn, &over, &setup(asked)?, gap)?;
    let sentence = found.sentence();
    let mut lines = found.working;
    lines.push(Line::new(say::conclusion(), sentence));
    lines.extend(minded(&found.cautions));
    Ok(lines)
}

const GROSS: Ask = Ask::new("lens", say::ask_lens_that_was_neutral, "+3.00", Kind::Lens);
const AGE: Ask = Ask::new("age", say::ask_age, "6", Kind::Number(limits::AGE));
const FIFTY: Ask = Ask::new(
    "distance",
    say::ask_working_distance,
    "50 cm",
    Kind::Number(limits::DISTANCE_CM),
);

/// Near retinoscopy in the dark.
pub(super) const NEAR_TECHNIQUE: Sum = Sum {
    slug: "near-technique",
    name: say::title_near_technique,
    about: say::about_near_technique,
    asks: &[GROSS, AGE, FIFTY],
    answer: in_the_dark,
};

fn in_the_dark(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let gross = asked.need(&GROSS, lens)?;
    let age = asked.need(&AGE, number)?;
    let allowance = near_technique::allowance(age, asked.need(&FIFTY, working_distance)?)?;
    let net = allowance.net(&gross);
    let mut lines = vec![
        Line::new(say::take_off(), dioptres(-allowance.taken_off())),
        Line::new(say::net(), net),
    ];
    lines.extend(nearest(&net));
    for caution in allowance.cautions() {
        lines.push(mind(caution.sentence()));
    }
    Ok(lines)
}

const BESIDE: Ask = Ask::new(
    "beside",
    say::ask_distance_beside_the_line_of_sight,
    "6 cm",
    Kind::Number(limits::BESIDE_CM),
);

/// From beside the line of sight.
pub(super) const OFF_SIGHT: Sum = Sum {
    slug: "off-sight",
    name: say::title_off_sight,
    about: say::about_off_sight,
    asks: &[BESIDE, CM],
    answer: from_beside,
};

fn from_beside(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let beside = asked.need(&BESIDE, number)?;
    let degrees = off_sight::degrees(beside, asked.need(&CM, working_distance)?)?;
    let shift = off_sight::shift(degrees)?;
    let aim = if off_sight::is_close_enough(degrees) {
        say::close_enough()
    } else {
        say::too_far()
    };
    let give_or_take = |by: f64, within: f64| say::give_or_take(&dioptres(by), &size(within));
    Ok(vec![
        Line::new(say::off_by(), say::degrees(&plain(degrees, 1))),
        Line::new(say::that_is(), aim),
        Line::new(
            say::mean_sphere_by(),
            give_or_take(shift.mean_sphere, shift.mean_sphere_within),
        ),
        Line::new(
            say::sphere_by(),
            give_or_take(shift.sphere, shift.sphere_within),
        ),
        Line::new(
            say::cylinder_reads(),
            say::times_as_large(&plain(shift.cylinder_times, 2)),
        ),
    ])
}

const ALONG: Ask = Ask::new(
    "refraction",
    say::ask_refraction_along_the_meridian,
    "+2.00",
    Kind::Power(limits::MERIDIAN_POWER),
);
const IN_PATH: Ask = Ask::new(
    "in-path",
    say::ask_power_in_the_frame_along_the_meridian,
    "+2.50",
    Kind::Power(limits::MERIDIAN_POWER),
);

/// How the reflex runs.
pub(super) const REFLEX: Sum = Sum {
    slug: "reflex",
    name: say::title_reflex,
    about: say::about_reflex,
    asks: &[ALONG, IN_PATH, CM],
    answer: runs,
};

fn runs(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (refraction, in_path) = (asked.need(&ALONG, power)?, asked.need(&IN_PATH, power)?);
    let distance = asked.need(&CM, working_distance)?;
    let run = reflex::run(Light::PARALLEL, distance, refraction, in_path)?;
    let shows = match run.motion() {
        Motion::With => say::with(),
        Motion::Against => say::against(),
        Motion::Neutral => say::neutral(),
        Motion::CannotTell => say::cannot_tell(),
    };
    let pace = match run.pace() {
        Pace::Times(times) => say::times_as_fast(&plain(times.abs(), 2)),
        Pace::Endless => "the whole pupil at once".to_owned(),
        Pace::Still => "it stands still".to_owned(),
    };
    Ok(vec![
        Line::new(say::neutral_with(), dioptres(in_path + run.from_neutral())),
        Line::new(
            say::still_to_come(),
            in_dioptres(&signed(run.from_neutral(), 2)),
        ),
        Line::new(say::eye_shows(), shows),
        Line::new(say::pace(), pace),
    ])
}
