//! Sums of the one equation, of its distance, and of slips in it.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{cell, lens, number, working_distance};
use super::shared::{dioptres, length, size};
use crate::format::plain;
use crate::retinoscopy::slips::{Slip, moved};
use crate::retinoscopy::{
    self, Caution, Neutral, Setup, WorkingDistance, WorkingLens as Held, expected_neutral,
};
use crate::{Cell, Line, Meridian, limits, vergence};

pub(super) const CM: Ask = Ask::new(
    "distance",
    "working distance",
    "67 cm",
    Kind::Number(limits::DISTANCE_CM),
);
pub(super) const HELD: Ask = Ask::new(
    "working-lens",
    "working lens in the frame",
    "+1.50",
    Kind::Number(limits::WORKING_LENS),
)
.or("none stood there");
pub(super) const CELL: Ask =
    Ask::new("cell", "cell that it stood in", "back", Kind::Cell).or("the back cell is taken");
pub(super) const SPACING: Ask = Ask::new(
    "spacing",
    "distance between cells",
    "4 mm",
    Kind::Number(limits::CELL_SPACING_MM),
)
.or("4 mm is taken");

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
    cautions
        .iter()
        .map(|caution| Line::new("mind", caution.sentence()))
}

const NEUTRAL: Ask = Ask::new(
    "lens",
    "lens that was neutral",
    "+4.00 / −1.50 × 90",
    Kind::Lens,
);

/// The one equation.
pub(super) const NET: Sum = Sum {
    slug: "net",
    name: "From neutral to the net",
    about: "The refraction from the lens that was neutral, without the working lens; two meridians are written +4.00 @ 90 / +2.50 @ 180.",
    asks: &[NEUTRAL, CM, HELD, CELL, SPACING],
    answer: net,
};

fn net(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let lens = asked.need(&NEUTRAL, lens)?;
    let setup = setup(asked)?;
    let found = retinoscopy::net(&Neutral::InFrame(lens), &setup);
    let mut lines = found.working;
    lines.push(Line::new("now", found.hand.sentence()));
    lines.extend(minded(&found.cautions));
    Ok(lines)
}

/// What a distance is worth.
pub(super) const DISTANCE: Sum = Sum {
    slug: "working-distance",
    name: "A working distance in dioptres",
    about: "What a working distance is in dioptres, and what a centimetre of it costs.",
    asks: &[CM],
    answer: distance,
};

fn distance(asked: &Asked) -> Result<Vec<Line>, SumError> {
    Ok(worth(asked.need(&CM, working_distance)?))
}

fn worth(distance: WorkingDistance) -> Vec<Line> {
    let mut lines = vec![
        Line::new(
            format!("take off for {}", length(distance.cm(), "cm")),
            format!("{} D", size(distance.dioptres())),
        ),
        Line::new("usually called", distance.usual()),
        Line::new(
            "each centimetre out costs",
            format!("{} D", plain(distance.dioptres_per_cm(), 3)),
        ),
    ];
    if !distance.is_usual() {
        lines.push(Line::new(
            "mind",
            "outside the usual 40 to 80 cm: measure it",
        ));
    }
    lines
}

const GOES_WITH: Ask = Ask::new(
    "working-lens",
    "working lens",
    "+1.50",
    Kind::Number(limits::WORKING_LENS),
);

/// Where a working lens belongs.
pub(super) const WORKING_LENS: Sum = Sum {
    slug: "working-lens",
    name: "The distance of a working lens",
    about: "How far away a working lens wants the retinoscope to be.",
    asks: &[GOES_WITH],
    answer: belongs_to,
};

fn belongs_to(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let distance = vergence::working_distance(asked.need(&GOES_WITH, number)?)?;
    let mut lines = vec![Line::new("belongs to", length(distance.cm(), "cm"))];
    lines.extend(worth(distance));
    Ok(lines)
}

const STANDS: Ask = Ask::new(
    "streak",
    "angle at which the streak stands",
    "120°",
    Kind::Number(limits::MERIDIAN),
);

/// What a streak tests.
pub(super) const STREAK: Sum = Sum {
    slug: "streak",
    name: "What a streak tests",
    about: "The meridian that a streak tests by sweeping across itself, and the axis of a cylinder that acts there alone.",
    asks: &[STANDS],
    answer: streak,
};

fn streak(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let tested = Meridian::tested_by_streak(asked.need(&STANDS, number)?)?;
    let axis = |axis: crate::Axis| plain(axis.degrees(), 1);
    Ok(vec![
        Line::new("it tests", tested.name()),
        Line::new(
            "a cylinder that acts there alone has its axis at",
            axis(tested.crossed().as_axis()),
        ),
        Line::new(
            "one that leaves it alone has its axis at",
            axis(tested.as_axis()),
        ),
    ])
}

const TRULY: Ask = Ask::new(
    "truly",
    "distance that it was",
    "62 cm",
    Kind::Number(limits::DISTANCE_CM),
);
const TAKEN: Ask = Ask::new(
    "taken",
    "distance that was taken off",
    "67 cm",
    Kind::Number(limits::DISTANCE_CM),
);
const VERTEX: Ask = Ask::new(
    "vertex",
    "vertex distance",
    "12 mm",
    Kind::Number(limits::VERTEX_MM),
)
.or("measuring to the cornea is not reckoned");

/// What a slip of distance leaves.
pub(super) const WRONG_DISTANCE: Sum = Sum {
    slug: "wrong-distance",
    name: "A wrong working distance",
    about: "What the net is off by where another distance was taken off, none, or the same one twice.",
    asks: &[TRULY, TAKEN, VERTEX],
    answer: wrong_distance,
};

fn wrong_distance(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let truly = asked.need(&TRULY, working_distance)?;
    let assumed = asked.need(&TAKEN, working_distance)?;
    let mut slips = vec![
        ("another distance", Slip::WrongDistance { truly, assumed }),
        ("forgotten", Slip::Forgotten(truly)),
        ("taken off twice", Slip::Doubled(truly)),
    ];
    if let Some(vertex) = asked.find(&VERTEX, number)? {
        slips.push((
            "measured to the cornea",
            Slip::to_the_cornea(assumed, vertex)?,
        ));
    }
    let said = slips
        .iter()
        .map(|(what, slip)| Line::new(*what, slip.sentence()));
    Ok(said.collect())
}

const WAS_NEUTRAL: Ask = Ask::new(
    "from",
    "distance at which it was neutral",
    "67 cm",
    Kind::Number(limits::DISTANCE_CM),
);
const MOVED_TO: Ask = Ask::new(
    "to",
    "distance moved to",
    "57 cm",
    Kind::Number(limits::DISTANCE_CM),
);
const REFRACTION: Ask =
    Ask::new("lens", "refraction", "+2.00 / −1.00 × 90", Kind::Lens).or("no lens is foretold");

/// Moving in or out to prove neutrality.
pub(super) const MOVING: Sum = Sum {
    slug: "moving-in",
    name: "Moving in or out of neutral",
    about: "What a neutral eye must show once you have moved, and the lens that would be neutral there.",
    asks: &[WAS_NEUTRAL, MOVED_TO, REFRACTION],
    answer: moving,
};

fn moving(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let from = asked.need(&WAS_NEUTRAL, working_distance)?;
    let to = asked.need(&MOVED_TO, working_distance)?;
    let off = moved(from, to);
    let shows = match off {
        0.0 => "neutral",
        off if off > 0.0 => "with, in every meridian",
        _ => "against, in every meridian",
    };
    let mut lines = vec![
        Line::new("from neutral", dioptres(off)),
        Line::new("the eye must show", shows),
    ];
    if let Some(refraction) = asked.find(&REFRACTION, lens)? {
        let neutral = |distance| expected_neutral(&refraction, &Setup::new(distance, None));
        lines.push(Line::new("neutral before with", neutral(from)));
        lines.push(Line::new("neutral now with", neutral(to)));
    }
    Ok(lines)
}
