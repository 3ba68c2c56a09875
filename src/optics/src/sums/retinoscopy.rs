//! Sums of the one equation, of its distance, and of slips in it.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{cell, lens, number, working_distance};
use super::shared::{dioptres, in_dioptres, length, mind, sized};
use crate::format::plain;
use crate::retinoscopy::slips::{Slip, moved};
use crate::retinoscopy::{
    self, Caution, Neutral, Setup, WorkingDistance, WorkingLens as Held, expected_neutral,
};
use crate::{Cell, Line, Meridian, limits, vergence};
use ::words::optics::sums_retinoscopy as say;

pub(super) const CM: Ask = Ask::new(
    "distance",
    say::ask_working_distance,
    "67 cm",
    Kind::Number(limits::DISTANCE_CM),
);
pub(super) const HELD: Ask = Ask::new(
    "working-lens",
    say::ask_working_lens_in_the_frame,
    "+1.50",
    Kind::Number(limits::WORKING_LENS),
)
.or(say::or_none_stood);
pub(super) const CELL: Ask =
    Ask::new("cell", say::ask_cell_that_it_stood_in, "back", Kind::Cell).or(say::or_back_cell);
pub(super) const SPACING: Ask = Ask::new(
    "spacing",
    say::ask_distance_between_cells,
    "4 mm",
    Kind::Number(limits::CELL_SPACING_MM),
)
.or(say::or_four_mm);

/// Distance, working lens, cell and spacing as they were given.
pub(super) fn setup(asked: &Asked) -> Result<Setup, SumError> {
    let distance = asked.need(&CM, working_distance)?;
    let cell = asked.find(&CELL, cell)?.unwrap_or(Cell::Back);
    let held = asked.find(&HELD, number)?;
    let held = held.map(|power| Held::new(power, cell)).transpose()?;
    let mut setup = Setup::new(distance, held);
    if let Some(spacing) = asked.find(&SPACING, number)? {
        setup.cell_spacing_mm = spacing;
    }
    Ok(setup)
}

/// What is worth a second thought, as lines.
pub(super) fn minded(cautions: &[Caution]) -> impl Iterator<Item = Line> {
    cautions.iter().map(|caution| mind(caution.sentence()))
}

const NEUTRAL: Ask = Ask::new(
    "lens",
    say::ask_lens_that_was_neutral,
    "+4.00 / −1.50 × 90",
    Kind::Lens,
);

/// The one equation.
pub(super) const NET: Sum = Sum {
    slug: "net",
    name: say::title_net,
    about: say::about_net,
    asks: &[NEUTRAL, CM, HELD, CELL, SPACING],
    answer: net,
};

fn net(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let lens = asked.need(&NEUTRAL, lens)?;
    let setup = setup(asked)?;
    let found = retinoscopy::net(&Neutral::InFrame(lens), &setup);
    let mut lines = found.working;
    lines.push(Line::new(say::now(), found.hand.sentence()));
    lines.extend(minded(&found.cautions));
    Ok(lines)
}

/// What a distance is worth.
pub(super) const DISTANCE: Sum = Sum {
    slug: "working-distance",
    name: say::title_working_distance,
    about: say::about_working_distance,
    asks: &[CM],
    answer: distance,
};

fn distance(asked: &Asked) -> Result<Vec<Line>, SumError> {
    Ok(worth(asked.need(&CM, working_distance)?))
}

fn worth(distance: WorkingDistance) -> Vec<Line> {
    let mut lines = vec![
        Line::new(
            say::take_off_for(&length(distance.cm(), "cm")),
            sized(distance.dioptres()),
        ),
        Line::new(say::usually_called(), distance.usual()),
        Line::new(
            say::each_centimetre(),
            in_dioptres(&plain(distance.dioptres_per_cm(), 3)),
        ),
    ];
    if !distance.is_usual() {
        lines.push(mind(say::measure_it()));
    }
    lines
}

const GOES_WITH: Ask = Ask::new(
    "working-lens",
    say::ask_working_lens,
    "+1.50",
    Kind::Number(limits::WORKING_LENS),
);

/// Where a working lens belongs.
pub(super) const WORKING_LENS: Sum = Sum {
    slug: "working-lens",
    name: say::title_working_lens,
    about: say::about_working_lens,
    asks: &[GOES_WITH],
    answer: belongs_to,
};

fn belongs_to(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let distance = vergence::working_distance(asked.need(&GOES_WITH, number)?)?;
    let mut lines = vec![Line::new(say::belongs_to(), length(distance.cm(), "cm"))];
    lines.extend(worth(distance));
    Ok(lines)
}

const STANDS: Ask = Ask::new(
    "streak",
    say::ask_angle_at_which_the_streak_stands,
    "120°",
    Kind::Number(limits::MERIDIAN),
);

/// What a streak tests.
pub(super) const STREAK: Sum = Sum {
    slug: "streak",
    name: say::title_streak,
    about: say::about_streak,
    asks: &[STANDS],
    answer: streak,
};

fn streak(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let tested = Meridian::tested_by_streak(asked.need(&STANDS, number)?)?;
    let axis = |axis: crate::Axis| plain(axis.degrees(), 1);
    Ok(vec![
        Line::new(say::it_tests(), tested.name()),
        Line::new(say::acts_there(), axis(tested.crossed().as_axis())),
        Line::new(say::leaves_it(), axis(tested.as_axis())),
    ])
}

const TRULY: Ask = Ask::new(
    "truly",
    say::ask_distance_that_it_was,
    "62 cm",
    Kind::Number(limits::DISTANCE_CM),
);
const TAKEN: Ask = Ask::new(
    "taken",
    say::ask_distance_that_was_taken_off,
    "67 cm",
    Kind::Number(limits::DISTANCE_CM),
);
const VERTEX: Ask = Ask::new(
    "vertex",
    say::ask_vertex_distance,
    "12 mm",
    Kind::Number(limits::VERTEX_MM),
)
.or(say::or_no_cornea);

/// What a slip of distance leaves.
pub(super) const WRONG_DISTANCE: Sum = Sum {
    slug: "wrong-distance",
    name: say::title_wrong_distance,
    about: say::about_wrong_distance,
    asks: &[TRULY, TAKEN, VERTEX],
    answer: wrong_distance,
};

fn wrong_distance(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let truly = asked.need(&TRULY, working_distance)?;
    let assumed = asked.need(&TAKEN, working_distance)?;
    let mut slips = vec![
        (
            say::another_distance(),
            Slip::WrongDistance { truly, assumed },
        ),
        (say::forgotten(), Slip::Forgotten(truly)),
        (say::twice(), Slip::Doubled(truly)),
    ];
    if let Some(vertex) = asked.find(&VERTEX, number)? {
        slips.push((say::to_the_cornea(), Slip::to_the_cornea(assumed, vertex)?));
    }
    let said = slips
        .iter()
        .map(|(what, slip)| Line::new(*what, slip.sentence()));
    Ok(said.collect())
}

const WAS_NEUTRAL: Ask = Ask::new(
    "from",
    say::ask_distance_at_which_it_was_neutral,
    "67 cm",
    Kind::Number(limits::DISTANCE_CM),
);
const MOVED_TO: Ask = Ask::new(
    "to",
    say::ask_distance_moved_to,
    "57 cm",
    Kind::Number(limits::DISTANCE_CM),
);
const REFRACTION: Ask = Ask::new(
    "lens",
    say::ask_refraction,
    "+2.00 / −1.00 × 90",
    Kind::Lens,
)
.or(say::or_no_lens_foretold);

/// Moving in or out to prove neutrality.
pub(super) const MOVING: Sum = Sum {
    slug: "moving-in",
    name: say::title_moving_in,
    about: say::about_moving_in,
    asks: &[WAS_NEUTRAL, MOVED_TO, REFRACTION],
    answer: moving,
};

fn moving(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let from = asked.need(&WAS_NEUTRAL, working_distance)?;
    let to = asked.need(&MOVED_TO, working_distance)?;
    let off = moved(from, to);
    let shows = match off {
        0.0 => say::neutral(),
        off if off > 0.0 => say::with_everywhere(),
        _ => say::against_everywhere(),
    };
    let mut lines = vec![
        Line::new(say::from_neutral(), dioptres(off)),
        Line::new(say::must_show(), shows),
    ];
    if let Some(refraction) = asked.find(&REFRACTION, lens)? {
        let neutral = |distance| expected_neutral(&refraction, &Setup::new(distance, None));
        lines.push(Line::new(say::neutral_before(), neutral(from)));
        lines.push(Line::new(say::neutral_now(), neutral(to)));
    }
    Ok(lines)
}
