//! The working, opened line by line so that a person can follow it with a pencil.

use super::{Neutral, Setup};
use crate::format::{plain, power};
use crate::step::Step;
use crate::{Line, SphereCyl};

/// From what was observed to the net on the trial-lens step.
pub(super) fn lines(
    neutral: &Neutral,
    setup: &Setup,
    in_path: &SphereCyl,
    net: &SphereCyl,
) -> Vec<Line> {
    let mut lines = observed(neutral, setup);
    lines.push(working_lens(setup));
    lines.push(Line::new("everything in the light’s path", in_path));
    lines.push(Line::new(
        format!("take off the distance: {}", setup.distance),
        power(-setup.distance.dioptres()),
    ));
    lines.push(Line::new("net", net));
    lines.push(Line::new(
        "net to the nearest quarter",
        net.rounded(Step::Quarter).value,
    ));
    lines
}

fn observed(neutral: &Neutral, setup: &Setup) -> Vec<Line> {
    match neutral {
        Neutral::InFrame(_) | Neutral::OverLens(_) => {
            vec![Line::new("lens in the frame", neutral.lens())]
        }
        Neutral::TwoMeridians { first, second } => {
            let meridian = |degrees: f64| format!("neutral in the meridian {}", plain(degrees, 1));
            vec![
                Line::new(meridian(first.meridian.degrees()), power(first.power)),
                Line::new(meridian(first.meridian.crossed().degrees()), power(*second)),
                Line::new("together", neutral.lens_with(setup.cylinders)),
            ]
        }
    }
}

fn working_lens(setup: &Setup) -> Line {
    let Some(lens) = setup.working_lens else {
        return Line::new("working lens", "none");
    };
    let label = if lens.cell().places_forward() == 0 {
        "working lens in the back cell".to_owned()
    } else {
        format!(
            "working lens {} in the {} cell, at the back cell",
            power(lens.power()),
            lens.cell()
        )
    };
    Line::new(label, power(lens.at_back(setup.cell_spacing_mm)))
}
