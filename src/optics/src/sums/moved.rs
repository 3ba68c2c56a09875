//! Sums of lenses that stand before one another, before the eye, or before a chart.

use super::Sum;
use super::asked::{Ask, Asked, Kind};
use super::error::SumError;
use super::read::{lens, number, power, surface};
use super::shared::{blur, dioptres, length, nearest};
use crate::cells::{CHECK_ON_FOCIMETER_FROM, USUAL_SPACING_MM};
use crate::{Cell, Line, ThickLens, cells, contact, far, limits, vergence, vertex};

const LENS: Ask = Ask::new("lens", "lens", "−8.00 / −3.00 × 20", Kind::Lens);
const FROM: Ask = Ask::new(
    "from",
    "distance from the cornea now",
    "12 mm",
    Kind::Number(limits::WORN_MM),
);
const TO: Ask = Ask::new(
    "to",
    "distance from the cornea to be",
    "0 mm",
    Kind::Number(limits::WORN_MM),
);

/// A lens worn nearer or farther away.
pub(super) const VERTEX: Sum = Sum {
    slug: "vertex",
    name: "Moving a lens before the eye",
    about: "The lens that does the same at another vertex distance; a contact lens is at 0.",
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
            format!("along {}", principal.meridian.name()),
            format!(
                "{} becomes {}",
                dioptres(principal.power),
                dioptres(becomes)
            ),
        ));
    }
    lines.push(Line::new("the lens there", there));
    lines.extend(nearest(&there));
    let apart = lens.vector().distance(&there.vector());
    lines.push(Line::new("left as it is, it would be off by", blur(apart)));
    Ok(lines)
}

const BACK: Ask = Ask::new("back", "lens in the back cell", "+10.00", Kind::Lens);
const MIDDLE: Ask = Ask::new(
    "middle",
    "lens in the middle cell",
    "−2.00 DC × 90",
    Kind::Lens,
)
.or("the cell is empty");
const FRONT: Ask =
    Ask::new("front", "lens in the front cell", "+0.50", Kind::Lens).or("the cell is empty");
const SPACING: Ask = Ask::new(
    "spacing",
    "distance between cells",
    "4 mm",
    Kind::Number(limits::CELL_SPACING_MM),
)
.or("4 mm is taken");

/// The three cells of a trial frame.
pub(super) const CELLS: Sum = Sum {
    slug: "cells",
    name: "Lenses in the three cells",
    about: "What the lenses of a trial frame do together at the back cell, beside their engraved powers added up.",
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
        lines.push(Line::new(
            format!("the {cell} one alone, at the back cell"),
            alone,
        ));
    }
    let together = cells::combined(&frame, spacing)?;
    let engraved: Vec<_> = frame.iter().map(|(lens, _)| *lens).collect();
    let added = contact::together(&engraved)?;
    lines.push(Line::new("engraved powers added up", added));
    lines.push(Line::new("together at the back cell", together));
    lines.extend(nearest(&together));
    let apart = added.vector().distance(&together.vector());
    lines.push(Line::new("adding up is off by", blur(apart)));
    if together.strongest() >= CHECK_ON_FOCIMETER_FROM {
        lines.push(Line::new(
            "mind",
            "strong: check the combination on a focimeter",
        ));
    }
    Ok(lines)
}

const FRONT_SURFACE: Ask = Ask::new("front", "front surface", "+10.25", Kind::Surface);
const BACK_SURFACE: Ask = Ask::new("back", "back surface", "−3.00", Kind::Surface);
const THICKNESS: Ask = Ask::new(
    "thickness",
    "thickness at the middle",
    "4 mm",
    Kind::Number(limits::THICKNESS_MM),
);
const INDEX: Ask = Ask::new(
    "index",
    "refractive index",
    "1.586",
    Kind::Number(limits::INDEX),
);

/// The powers of a thick lens.
pub(super) const THICK: Sum = Sum {
    slug: "thick",
    name: "A thick lens",
    about: "Back and front vertex power from the two surfaces, the thickness and the index.",
    asks: &[FRONT_SURFACE, BACK_SURFACE, THICKNESS, INDEX],
    answer: thick,
};

fn thick(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let front = asked.need(&FRONT_SURFACE, surface)?;
    let back = asked.need(&BACK_SURFACE, surface)?;
    let (thickness, index) = (asked.need(&THICKNESS, number)?, asked.need(&INDEX, number)?);
    let lens = ThickLens::new(front, back, thickness, index)?;
    Ok(vec![
        Line::new(
            "the surfaces added up, as if thin",
            contact::together(&[front, back])?,
        ),
        Line::new("back vertex power", lens.back_vertex_power()),
        Line::new("front vertex power", lens.front_vertex_power()),
    ])
}

const OBJECT: Ask = Ask::new(
    "before",
    "distance before the lens",
    "40 cm",
    Kind::Number(limits::OBJECT_CM),
)
.or("the light comes from far away");
const POWER: Ask = Ask::new(
    "power",
    "power",
    "+4.50",
    Kind::Power(limits::MERIDIAN_POWER),
);

/// Where light goes after a lens.
pub(super) const FOCUS: Sum = Sum {
    slug: "focus",
    name: "Where a lens focuses",
    about: "Light before and after a lens, in dioptres, and where it comes to a focus.",
    asks: &[POWER, OBJECT],
    answer: focus,
};

fn focus(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let power = asked.need(&POWER, power)?;
    let object = asked.find(&OBJECT, number)?;
    let before = object.map_or(Ok(0.0), |cm| vergence::of_distance(-cm / 100.0))?;
    let after = vergence::after(before, power)?;
    let place = match vergence::distance(after)? {
        None => "nowhere: it leaves parallel".to_owned(),
        Some(metres) if metres > 0.0 => format!("{} behind the lens", length(100.0 * metres, "cm")),
        Some(metres) => format!(
            "it seems to come from {} before the lens",
            length(-100.0 * metres, "cm")
        ),
    };
    Ok(vec![
        Line::new("light at the lens", dioptres(before)),
        Line::new("the lens", dioptres(power)),
        Line::new("light after it", dioptres(after)),
        Line::new("focus", place),
    ])
}

const FOUND: Ask = Ask::new("lens", "lens found", "−1.00 / −0.50 × 90", Kind::Lens);
const CHART: Ask = Ask::new(
    "chart",
    "distance of the chart",
    "3 m",
    Kind::Number(limits::CHART_M),
);

/// For far from a near chart.
pub(super) const FAR: Sum = Sum {
    slug: "far",
    name: "Found with a near chart, for far",
    about: "The lens for far from one found with a chart that is nearer.",
    asks: &[FOUND, CHART],
    answer: for_far,
};

fn for_far(asked: &Asked) -> Result<Vec<Line>, SumError> {
    let found = asked.need(&FOUND, lens)?;
    let chart = asked.need(&CHART, number)?;
    let lens = far::for_far(&found, chart)?;
    let mut lines = vec![
        Line::new("take off for the chart", dioptres(-far::allowance(chart)?)),
        Line::new("for far", lens),
    ];
    lines.extend(nearest(&lens));
    Ok(lines)
}
