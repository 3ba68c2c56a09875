//! Sums that stand beside the one equation: over a worn lens, in the dark, from beside, and how the reflex runs.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{lens, number, power, working_distance};
use super::retinoscopy::{CELL, CM, HELD, SPACING, minded, setup};
use super::shared::{dioptres, nearest, size};
use crate::format::{plain, signed};
use crate::retinoscopy::reflex::{self, Light, Pace};
use crate::retinoscopy::{Motion, near_technique, off_sight, over_lens};
use crate::{Line, limits};

const WORN: Ask = Ask::new("worn", "lens worn", "+2.50 / −1.00 × 90", Kind::Lens);
const OVER: Ask = Ask::new("over", "lens that was neutral over it", "+0.50", Kind::Lens);
const GAP: Ask = Ask::new(
    "gap",
    "gap between the lenses",
    "10 mm",
    Kind::Number(limits::OVER_GAP_MM),
)
.or("they are taken as touching");

/// Retinoscopy over a worn lens.
pub(super) const OVER_LENS: Sum = Sum {
    slug: "over-lens",
    name: "Retinoscopy over a worn lens",
    about: "The refraction from glasses that stayed on and what was neutral over them, without the working lens.",
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
    lines.push(Line::new("so", sentence));
    lines.extend(minded(&found.cautions));
    Ok(lines)
}

const GROSS: Ask = Ask::new("lens", "lens that was neutral", "+3.00", Kind::Lens);
const AGE: Ask = Ask::new("age", "age", "6", Kind::Number(limits::AGE));
const FIFTY: Ask = Ask::new(
    "distance",
    "working distance",
    "50 cm",
    Kind::Number(limits::DISTANCE_CM),
);

/// Near retinoscopy in the dark.
pub(super) const NEAR_TECHNIQUE: Sum = Sum {
    slug: "near-technique",
    name: "Near retinoscopy in the dark",
    about: "The net from what was neutral while the eye looked at the dim light, with the allowance of its age.",
    asks: &[GROSS, AGE, FIFTY],
    answer: in_the_dark,
};

fn in_the_dark(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let gross = asked.need(&GROSS, lens)?;
    let age = asked.need(&AGE, number)?;
    let allowance = near_technique::allowance(age, asked.need(&FIFTY, working_distance)?)?;
    let net = allowance.net(&gross);
    let mut lines = vec![
        Line::new("take off", dioptres(-allowance.taken_off())),
        Line::new("net", net),
    ];
    lines.extend(nearest(&net));
    for caution in allowance.cautions() {
        lines.push(Line::new("mind", caution.sentence()));
    }
    Ok(lines)
}

const BESIDE: Ask = Ask::new(
    "beside",
    "distance beside the line of sight",
    "6 cm",
    Kind::Number(limits::BESIDE_CM),
);

/// From beside the line of sight.
pub(super) const OFF_SIGHT: Sum = Sum {
    slug: "off-sight",
    name: "Off the line of sight",
    about: "How many degrees off the line of sight you are, and how eight adults' eyes read from there.",
    asks: &[BESIDE, CM],
    answer: from_beside,
};

fn from_beside(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let beside = asked.need(&BESIDE, number)?;
    let degrees = off_sight::degrees(beside, asked.need(&CM, working_distance)?)?;
    let shift = off_sight::shift(degrees)?;
    let aim = if off_sight::is_close_enough(degrees) {
        "close enough"
    } else {
        "too far: move your head, never correct for it"
    };
    let give_or_take =
        |by: f64, within: f64| format!("{}, give or take {}", dioptres(by), size(within));
    Ok(vec![
        Line::new("off by", format!("{} degrees", plain(degrees, 1))),
        Line::new("that is", aim),
        Line::new(
            "mean sphere reads otherwise by",
            give_or_take(shift.mean_sphere, shift.mean_sphere_within),
        ),
        Line::new(
            "sphere reads otherwise by",
            give_or_take(shift.sphere, shift.sphere_within),
        ),
        Line::new(
            "cylinder reads",
            format!("{} times as large", plain(shift.cylinder_times, 2)),
        ),
    ])
}

const ALONG: Ask = Ask::new(
    "refraction",
    "refraction along the meridian",
    "+2.00",
    Kind::Power(limits::MERIDIAN_POWER),
);
const IN_PATH: Ask = Ask::new(
    "in-path",
    "power in the frame along the meridian",
    "+2.50",
    Kind::Power(limits::MERIDIAN_POWER),
);

/// How the reflex runs.
pub(super) const REFLEX: Sum = Sum {
    slug: "reflex",
    name: "How the reflex runs",
    about: "With or against, how fast beside the patch of light, and how far from neutral, in a parallel beam.",
    asks: &[ALONG, IN_PATH, CM],
    answer: runs,
};

fn runs(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let (refraction, in_path) = (asked.need(&ALONG, power)?, asked.need(&IN_PATH, power)?);
    let distance = asked.need(&CM, working_distance)?;
    let run = reflex::run(Light::PARALLEL, distance, refraction, in_path)?;
    let shows = match run.motion() {
        Motion::With => "with",
        Motion::Against => "against",
        Motion::Neutral => "neutral",
        Motion::CannotTell => "nothing that can be told",
    };
    let pace = match run.pace() {
        Pace::Times(times) => format!("{} times as fast as the patch", plain(times.abs(), 2)),
        Pace::Endless => "the whole pupil at once".to_owned(),
        Pace::Still => "it stands still".to_owned(),
    };
    Ok(vec![
        Line::new("neutral with", dioptres(in_path + run.from_neutral())),
        Line::new(
            "still to come",
            format!("{} D", signed(run.from_neutral(), 2)),
        ),
        Line::new("the eye shows", shows),
        Line::new("pace", pace),
    ])
}
