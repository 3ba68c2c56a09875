//! The working, opened line by line so that a person can follow it with a pencil.

use super::{Neutral, Setup};
use crate::SphereCyl;
use crate::format::{plain, power};
use crate::step::Step;

/// One line of the working.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WorkingLine {
    /// What the line is, in plain words.
    pub label: String,
    /// Its value as written: a lens or a power in dioptres.
    pub value: String,
}

impl WorkingLine {
    pub(super) fn new(label: impl Into<String>, value: impl ToString) -> Self {
        Self {
            label: label.into(),
            value: value.to_string(),
        }
    }
}

/// From what was observed to the net on the trial-lens step.
pub(super) fn lines(
    neutral: &Neutral,
    setup: &Setup,
    in_path: &SphereCyl,
    net: &SphereCyl,
) -> Vec<WorkingLine> {
    let mut lines = observed(neutral);
    lines.push(working_lens(setup));
    lines.push(WorkingLine::new("everything in the light’s path", in_path));
    lines.push(WorkingLine::new(
        format!("take off the distance: {}", setup.distance),
        power(-setup.distance.dioptres()),
    ));
    lines.push(WorkingLine::new("net", net));
    lines.push(WorkingLine::new(
        "net to the nearest quarter",
        net.rounded(Step::Quarter).value,
    ));
    lines
}

fn observed(neutral: &Neutral) -> Vec<WorkingLine> {
    match neutral {
        Neutral::InFrame(lens) => vec![WorkingLine::new("lens in the frame", lens)],
        Neutral::TwoMeridians { first, second } => {
            let meridian = |degrees: f64| format!("neutral in the meridian {}", plain(degrees, 1));
            vec![
                WorkingLine::new(meridian(first.meridian.degrees()), power(first.power)),
                WorkingLine::new(meridian(first.meridian.crossed().degrees()), power(*second)),
                WorkingLine::new("together", neutral.lens()),
            ]
        }
    }
}

fn working_lens(setup: &Setup) -> WorkingLine {
    let Some(lens) = setup.working_lens else {
        return WorkingLine::new("working lens", "none");
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
    WorkingLine::new(label, power(lens.at_back(setup.cell_spacing_mm)))
}
