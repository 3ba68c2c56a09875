//! Sums of lenses that stand before one another, before the eye, or before a chart.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{lens, number, power, surface};
use super::shared::{blur, dioptres, length, mind, nearest};
use crate::cells::{CHECK_ON_FOCIMETER_FROM, USUAL_SPACING_MM};
use crate::{Cell, Line, ThickLens, cells, contact, far, limits, vergence, vertex};
use ::words::optics::sums_lens as say;

const LENS: Ask = Ask::new("lens", say::ask_lens, "−8.00 / −3.00 × 20", Kind::Lens);
const FROM: Ask = Ask::new(
    "from",
    say::ask_cornea_now,
    "12 mm",
    Kind::Number(limits::WORN_MM),
);
const TO: Ask = Ask::new(
    "to",
    say::ask_cornea_to_be,
    "0 mm",
    Kind::Number(limits::WORN_MM),
);

/// A lens worn nearer or farther away.
pub(super) const VERTEX: Sum = Sum {
    slug: "vertex",
    name: say::title_vertex,
    about: say::about_vertex,
    asks: &[LENS, FROM, TO],
    answer: moved,
};

fn moved(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let lens = asked.need(&LENS, lens)?;
    let (from, to) = (asked.need(&FROM, number)?, asked.need(&TO, number)?);
    let there = vertex::effective_sphero_cyl(&lens, from, to)?;
    let mut lines = Vec::new();
    for principal in lens.principal() {
        let becomes = vertex::effective(principal.power, from, to)?;
        lines.push(Line::new(
            say::along(&principal.meridian.name()),
            say::becomes(&dioptres(principal.power), &dioptres(becomes)),
        ));
    }
    lines.push(Line::new(say::lens_there(), there));
    lines.extend(nearest(&there));
    let apart = lens.vector().distance(&there.vector());
    lines.push(Line::new(say::left_as_is(), blur(apart)));
    Ok(lines)
}

const BACK: Ask = Ask::new("back", say::ask_lens_in_the_back_cell, "+10.00", Kind::Lens);
const MIDDLE: Ask = Ask::new(
    "middle",
    say::ask_lens_in_the_middle_cell,
    "−2.00 DC × 90",
    Kind::Lens,
)
.or(say::or_empty);
const FRONT: Ask = Ask::new(
    "front",
    say::ask_lens_in_the_front_cell,
    "+0.50",
    Kind::Lens,
)
.or(say::or_empty);
const SPACING: Ask = Ask::new(
    "spacing",
    say::ask_distance_between_cells,
    "4 mm",
    Kind::Number(limits::CELL_SPACING_MM),
)
.or(say::or_four_mm);

/// The three cells of a trial frame.
pub(super) const CELLS: Sum = Sum {
    slug: "cells",
    name: say::title_cells,
    about: say::about_cells,
    asks: &[BACK, MIDDLE, FRONT, SPACING],
    answer: in_cells,
};

fn in_cells(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let mut frame = vec![(asked.need(&BACK, lens)?, Cell::Back)];
    frame.extend(asked.find(&MIDDLE, lens)?.map(|lens| (lens, Cell::Middle)));
    frame.extend(asked.find(&FRONT, lens)?.map(|lens| (lens, Cell::Front)));
    let spacing = asked.find(&SPACING, number)?.unwrap_or(USUAL_SPACING_MM);
    let mut lines = Vec::new();
    for (lens, cell) in &frame {
        let alone = cells::at_back(lens, *cell, spacing)?;
        lines.push(Line::new(say::alone(&cell), alone));
    }
    let together = cells::combined(&frame, spacing)?;
    let engraved: Vec<_> = frame.iter().map(|(lens, _)| *lens).collect();
    let added = contact::together(&engraved)?;
    lines.push(Line::new(say::engraved(), added));
    lines.push(Line::new(say::together_back(), together));
    lines.extend(nearest(&together));
    let apart = added.vector().distance(&together.vector());
    lines.push(Line::new(say::adding_off(), blur(apart)));
    if together.strongest() >= CHECK_ON_FOCIMETER_FROM {
        lines.push(mind(say::check_focimeter()));
    }
    Ok(lines)
}

const FRONT_SURFACE: Ask = Ask::new("front", say::ask_front_surface, "+10.25", Kind::Surface);
const BACK_SURFACE: Ask = Ask::new("back", say::ask_back_surface, "−3.00", Kind::Surface);
const THICKNESS: Ask = Ask::new(
    "thickness",
    say::ask_thickness_at_the_middle,
    "4 mm",
    Kind::Number(limits::THICKNESS_MM),
);
const INDEX: Ask = Ask::new(
    "index",
    say::ask_refractive_index,
    "1.586",
    Kind::Number(limits::INDEX),
);

/// The powers of a thick lens.
pub(super) const THICK: Sum = Sum {
    slug: "thick",
    name: say::title_thick,
    about: say::about_thick,
    asks: &[FRONT_SURFACE, BACK_SURFACE, THICKNESS, INDEX],
    answer: thick,
};

fn thick(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let front = asked.need(&FRONT_SURFACE, surface)?;
    let back = asked.need(&BACK_SURFACE, surface)?;
    let (thickness, index) = (asked.need(&THICKNESS, number)?, asked.need(&INDEX, number)?);
    let lens = ThickLens::new(front, back, thickness, index)?;
    Ok(vec![
        Line::new(say::as_if_thin(), contact::together(&[front, back])?),
        Line::new(say::back_vertex(), lens.back_vertex_power()),
        Line::new(say::front_vertex(), lens.front_vertex_power()),
    ])
}

const OBJECT: Ask = Ask::new(
    "before",
    say::ask_distance_before_the_lens,
    "40 cm",
    Kind::Number(limits::OBJECT_CM),
)
.or(say::or_from_far);
const POWER: Ask = Ask::new(
    "power",
    say::ask_power,
    "+4.50",
    Kind::Power(limits::MERIDIAN_POWER),
);

/// Where light goes after a lens.
pub(super) const FOCUS: Sum = Sum {
    slug: "focus",
    name: say::title_focus,
    about: say::about_focus,
    asks: &[POWER, OBJECT],
    answer: focus,
};

fn focus(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let power = asked.need(&POWER, power)?;
    let object = asked.find(&OBJECT, number)?;
    let before = object.map_or(Ok(0.0), |cm| vergence::of_distance(-cm / 100.0))?;
    let after = vergence::after(before, power)?;
    let place = match vergence::distance(after)? {
        None => say::nowhere().to_owned(),
        Some(metres) if metres > 0.0 => say::behind(&length(100.0 * metres, "cm")),
        Some(metres) => say::seems_from(&length(-100.0 * metres, "cm")),
    };
    Ok(vec![
        Line::new(say::light_at(), dioptres(before)),
        Line::new(say::the_lens(), dioptres(power)),
        Line::new(say::light_after(), dioptres(after)),
        Line::new(say::focus(), place),
    ])
}

const FOUND: Ask = Ask::new(
    "lens",
    say::ask_lens_found,
    "−1.00 / −0.50 × 90",
    Kind::Lens,
);
const CHART: Ask = Ask::new(
    "chart",
    say::ask_distance_of_the_chart,
    "3 m",
    Kind::Number(limits::CHART_M),
);

/// For far from a near chart.
pub(super) const FAR: Sum = Sum {
    slug: "far",
    name: say::title_far,
    about: say::about_far,
    asks: &[FOUND, CHART],
    answer: for_far,
};

fn for_far(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let found = asked.need(&FOUND, lens)?;
    let chart = asked.need(&CHART, number)?;
    let lens = far::for_far(&found, chart)?;
    let mut lines = vec![
        Line::new(say::take_off_chart(), dioptres(-far::allowance(chart)?)),
        Line::new(say::for_far(), lens),
    ];
    lines.extend(nearest(&lens));
    Ok(lines)
}
