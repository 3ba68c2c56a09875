//! The working, opened line by line so that a person can follow it with a pencil.

use super::{Neutral, Setup};
use crate::format::{plain, power};
use crate::step::Step;
use crate::{Line, SphereCyl};
use ::words::optics::retinoscopy as say;

/// From what was observed to the net on the trial-lens step.
pub(super) fn lines(
    neutral: &Neutral,
    setup: &Setup,
    in_path: &SphereCyl,
    net: &SphereCyl,
) -> Vec<Line> {
    let mut lines = observed(neutral, setup);
    lines.push(working_lens(setup));
    lines.push(Line::new(say::everything_in_path(), in_path));
    lines.push(Line::new(
        say::take_off_distance(&setup.distance),
        power(-setup.distance.dioptres()),
    ));
    lines.push(Line::new(say::net(), net));
    lines.push(Line::new(
        say::net_rounded(),
        net.rounded(Step::Quarter).value,
    ));
    lines
}

fn observed(neutral: &Neutral, setup: &Setup) -> Vec<Line> {
    match neutral {
        Neutral::InFrame(_) | Neutral::OverLens(_) => {
            vec![Line::new(say::lens_in_frame(), neutral.lens())]
        }
        Neutral::TwoMeridians { first, second } => {
            let meridian = |degrees: f64| say::neutral_in(&plain(degrees, 1));
            vec![
                Line::new(meridian(first.meridian.degrees()), power(first.power)),
                Line::new(meridian(first.meridian.crossed().degrees()), power(*second)),
                Line::new(say::together(), neutral.lens_with(setup.cylinders)),
            ]
        }
    }
}

fn working_lens(setup: &Setup) -> Line {
    let Some(lens) = setup.working_lens else {
        return Line::new(say::working_lens(), say::working_lens_none());
    };
    let label = if lens.cell().places_forward() == 0 {
        say::working_lens_back().to_owned()
    } else {
        say::working_lens_at_back(&power(lens.power()), &lens.cell())
    };
    Line::new(label, power(lens.at_back(setup.cell_spacing_mm)))
}
